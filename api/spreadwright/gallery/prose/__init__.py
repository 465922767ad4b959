"""What MkDocs builds: the written pages, and the reference read from schemas and commands."""
