"""What is done at the bench besides cutting: how many strokes, in which order, how long."""
