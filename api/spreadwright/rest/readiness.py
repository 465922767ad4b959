"""What keeps a process from answering for now."""

from spreadwright.errors import SpreadwrightError


class NotReady(SpreadwrightError):
    """The database does not answer."""

    def __str__(self) -> str:
        return "The database does not answer; the service waits for it."
