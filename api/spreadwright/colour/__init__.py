"""Comparing and choosing papers."""
