"""The commands, one function each; ``cli`` says how they are typed."""
