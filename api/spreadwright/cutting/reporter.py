"""Who is told how a search for plans goes on."""

from typing import Protocol


class Reporter(Protocol):
    """Is told how a search goes on."""

    def bounded(self, paper: str, lower_bound: int) -> None:
        """No plan for this paper costs less."""

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """A better plan: its cost, and the area of its largest spare in square ticks."""

    def searched(self, paper: str, sheets: int, rounds: int) -> None:
        """Another round of the search on so many sheets has begun."""


class Silent:
    """A reporter that keeps everything to itself."""

    def bounded(self, paper: str, lower_bound: int) -> None:
        """Says nothing."""

    def improved(self, paper: str, cost: int, largest_spare: int) -> None:
        """Says nothing."""

    def searched(self, paper: str, sheets: int, rounds: int) -> None:
        """Says nothing."""
