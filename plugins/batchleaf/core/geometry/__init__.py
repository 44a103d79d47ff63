"""What one make looks like: its faces, and where each part lies on them. Exact, in mm."""
