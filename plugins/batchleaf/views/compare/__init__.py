"""Batches side by side: what is told of each, and in what they differ."""
