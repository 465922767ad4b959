"""What is kept: the shipped collection."""
