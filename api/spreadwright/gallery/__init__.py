"""One recipe, one page and its pictures."""
