"""Text to model and back; the only room that knows JSON."""
