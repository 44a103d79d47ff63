"""Charts, drawn like the rest: pieces of paper and measures on a rule that starts at nothing."""
