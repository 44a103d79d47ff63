"""Page models to HTML, SVG, JSON and photos."""
