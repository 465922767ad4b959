"""The command line: results on stdout, progress and diagnostics on stderr.

Exit codes: 0 fine, 1 findings of severity error, 2 unusable input.
"""

from spreadwright.cli.commands import main

__all__ = ["main"]
