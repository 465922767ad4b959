"""Many recipes at once: the index with its choices, paper sets, tags, authors, feeds."""
