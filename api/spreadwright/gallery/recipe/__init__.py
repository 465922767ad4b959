"""One recipe: what its page shows, in any papers and either unit, and the files that lie beside it."""
