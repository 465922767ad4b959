"""Searches for guillotine cuts on whole numbers without a unit; knows nothing of paper."""
