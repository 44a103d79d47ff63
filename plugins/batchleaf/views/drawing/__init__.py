"""Drawings as shapes in millimetres; the templates turn them into SVG."""
