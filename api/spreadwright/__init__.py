"""Spreadwright: recipes for album layouts, proved, cut, placed, coloured and drawn."""

__version__ = "0.1.0"
