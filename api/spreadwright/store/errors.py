"""What the store cannot give: one class for each reason, each with its values.

SpreadwrightError
  Gone           was here and has been deleted
  StaleWrite     somebody else wrote first
  IdTaken        another document has this id, or had it
  BadId          text that is no id
  KeyReused      the key of an earlier request, with another request
  WrongState     nothing of that state can become what was asked for
  BadCursor      text that marks no place in this list
  InvalidToken   a token that opens nothing
  BadAddress     an address at which there is no store
  Busy           the database does not answer, or not in time
"""

from datetime import datetime

from spreadwright.errors import SpreadwrightError


class Gone(SpreadwrightError):
    """A document that was here and has been deleted; its revisions remain.

    Attributes:
        etag: Names the revision that deleted it, for whoever brings it back.
    """

    def __init__(self, kind: str, name: str, deleted_at: datetime, etag: str) -> None:
        super().__init__(kind, name)
        self.kind, self.name, self.deleted_at, self.etag = kind, name, deleted_at, etag

    def __str__(self) -> str:
        return f"The {self.kind} “{self.name}” was deleted on {self.deleted_at:%Y-%m-%d}. Its revisions remain."


class StaleWrite(SpreadwrightError):
    """A write that would have overwritten somebody else's."""

    def __init__(self, kind: str, name: str, expected: int | None, current: int) -> None:
        super().__init__(kind, name)
        self.kind, self.name, self.expected, self.current = kind, name, expected, current

    def __str__(self) -> str:
        meant = "another revision" if self.expected is None else f"revision {self.expected}"
        return (
            f"The {self.kind} “{self.name}” is at revision {self.current} by now, and {meant} was meant. "
            "Read it again, and make the change in what is there."
        )


class IdTaken(SpreadwrightError):
    """An id that another document has, or had before it was deleted."""

    def __init__(self, kind: str, name: str) -> None:
        super().__init__(kind, name)
        self.kind, self.name = kind, name

    def __str__(self) -> str:
        return f"There is a {self.kind} “{self.name}” already, or was one. Choose another id."


class BadId(SpreadwrightError):
    """Text that is no id."""

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"“{self.name[:60]}” is no id. Use small letters, digits and single hyphens, 60 at most."


class KeyReused(SpreadwrightError):
    """The key of an earlier request, with a request that says something else."""

    def __init__(self, key: str) -> None:
        super().__init__(key)
        self.key = key

    def __str__(self) -> str:
        return f"The key “{self.key[:60]}” belongs to another request. Take a new one."


class WrongState(SpreadwrightError):
    """A document that cannot become what was asked for."""

    def __init__(self, kind: str, name: str, state: str, wanted: str) -> None:
        super().__init__(kind, name)
        self.kind, self.name, self.state, self.wanted = kind, name, state, wanted

    def __str__(self) -> str:
        return f"The {self.kind} “{self.name}” is {self.state}, so it cannot be {self.wanted}."


class BadCursor(SpreadwrightError):
    """Text that marks no place in this list."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.text = text

    def __str__(self) -> str:
        return "This marks no place in this list. Follow the link to the next page, or begin without one."


class InvalidToken(SpreadwrightError):
    """A token that opens nothing.

    Attributes:
        reason: ``unknown``, ``expired`` or ``revoked``.
    """

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason

    def __str__(self) -> str:
        return f"The token is {self.reason}. Make a new one with: spreadwright token create."


class BadAddress(SpreadwrightError):
    """An address of a database or of a place for files that is not understood."""

    def __init__(self, address: str, reason: str) -> None:
        super().__init__(address)
        self.address, self.reason = address, reason

    def __str__(self) -> str:
        return f"“{self.address}” cannot be used: {self.reason}"


class Busy(SpreadwrightError):
    """A database that does not answer, or not in time; the library's error is the cause."""

    def __str__(self) -> str:
        return "The database does not answer in time. Try again in a moment."
