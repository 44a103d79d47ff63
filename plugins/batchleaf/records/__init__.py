"""From YAML text to facts: what the maker wrote, then what it means."""
