"""What a record means besides what it says: each default and each thing that follows from another."""
