"""How one make goes by post: in which envelope, as what, for how much."""
