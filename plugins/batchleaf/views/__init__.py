"""Figures to page models: what is shown, in which order, at which address."""
