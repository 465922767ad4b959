"""One short function per verb of the tool."""
