"""How we say that something is wrong: the Finding, and the exception tree.

SpreadwrightError
  UnreadableDocument   not JSON, or too large to be a document
  InvalidDocument      JSON, but carries findings of severity error
  InvalidDocuments     several of these
  UnreadablePicture    bytes that are no picture of a sensible size
  UnknownName          no such recipe, paper set, bench, role, piece ...
  UnreadableLength     text that is no length
    BetweenMarks       a length that no ruler shows
  NoColourway          paper sets that cannot fill a role
  NoPlan               proved impossible to cut; carries its causes
  PlanTooLong          a search that stopped at its bound; proves nothing
  PrintTooLong         a print of more pieces or pages than are printed for anybody who asks
  CannotDraw           keeps the library's error as its cause
  CannotWrite          a file or folder that the system refuses to write; likewise
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from enum import StrEnum
from itertools import islice
from typing import Any


class Severity(StrEnum):
    """How bad a finding is. Only errors stop a recipe from being cut, drawn or published."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that a check has to say about a document.

    Attributes:
        code: Permanent kebab-case name, like ``row-does-not-fill``.
        where: JSON Pointer (RFC 6901) into the document.
        message: One sentence with what was measured.
        remedy: What would be right.
    """

    code: str
    severity: Severity
    where: str
    message: str
    remedy: str


def error(code: str, where: str, message: str, remedy: str) -> Finding:
    """A finding that stops the recipe from being used."""
    return Finding(code, Severity.ERROR, where, message, remedy)


def warning(code: str, where: str, message: str, remedy: str) -> Finding:
    """A finding that the maker should know of before cutting."""
    return Finding(code, Severity.WARNING, where, message, remedy)


def note(code: str, where: str, message: str, remedy: str) -> Finding:
    """A finding that is only worth knowing."""
    return Finding(code, Severity.NOTE, where, message, remedy)


def has_errors(findings: Iterable[Finding]) -> bool:
    """Whether any of the findings is an error."""
    return any(finding.severity is Severity.ERROR for finding in findings)


class SpreadwrightError(Exception):
    """The caller cannot have what it asked for. It travels whole from one process to another."""

    def __reduce__(self) -> tuple[Any, ...]:
        return _remade, (type(self), self.args), self.__dict__


def _remade(kind: type[SpreadwrightError], args: tuple[Any, ...]) -> SpreadwrightError:
    """An error without being told anew what it says, which its arguments alone may not do."""
    return kind.__new__(kind, *args)


class UnreadableDocument(SpreadwrightError):
    """Bytes that are no JSON document of a sensible size."""

    def __init__(self, reason: str, remedy: str, *, where: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.remedy = remedy
        self.where = where

    def __str__(self) -> str:
        return f"{self.reason} {self.remedy}"


class InvalidDocument(SpreadwrightError):
    """A document that carries findings of severity error."""

    def __init__(self, name: str, findings: Sequence[Finding]) -> None:
        super().__init__(name)
        self.name = name
        self.findings = tuple(findings)

    def __str__(self) -> str:
        errors = [f for f in self.findings if f.severity is Severity.ERROR]
        return f"“{self.name}” has {len(errors)} error{'s' if len(errors) != 1 else ''}: {errors[0].message}"


class InvalidDocuments(SpreadwrightError):
    """Several documents that carry findings of severity error."""

    def __init__(self, documents: Sequence[InvalidDocument]) -> None:
        super().__init__(tuple(documents))
        self.documents = tuple(documents)

    def __str__(self) -> str:
        return " ".join(str(document) for document in self.documents)


class UnreadablePicture(SpreadwrightError):
    """Bytes that are no picture of a sensible size.

    Attributes:
        code: Permanent kebab-case name: ``not-a-picture``, ``picture-damaged``, ``picture-moves`` or
            ``picture-too-large``.
        reason: One sentence.
        remedy: What would be right.
        name: Of the file, where it has one.
    """

    def __init__(self, code: str, reason: str, remedy: str, *, name: str = "") -> None:
        super().__init__(code, reason)
        self.code = code
        self.reason = reason
        self.remedy = remedy
        self.name = name

    def __str__(self) -> str:
        return f"{self.name}: {self.reason} {self.remedy}" if self.name else f"{self.reason} {self.remedy}"


class PictureNotSent(UnreadablePicture):
    """A picture that is not there yet, and may still come."""

    def __init__(self, name: str) -> None:
        super().__init__("picture-not-sent", "The picture did not come along.", "Send it, too.", name=name)


class UnknownName(SpreadwrightError):
    """A name that stands for nothing, with the nearest one that does.

    Args:
        kind: What it is the name of.
        name: The name.
        known: Those that stand for something; None where they are nobody's business, or too many.
    """

    def __init__(self, kind: str, name: str, known: Iterable[str] | None) -> None:
        super().__init__(kind, name)
        self.kind = kind
        self.name = name
        self.hint = "" if known is None else nearest_hint(name, known)

    def __str__(self) -> str:
        return f"There is no {self.kind} “{self.name}”. {self.hint}".rstrip()


class UnreadableLength(SpreadwrightError):
    """Text that is no length."""

    code = "not-a-length"

    def __init__(self, text: str, reason: str = "is not a length") -> None:
        super().__init__(text)
        self.text = text
        self.reason = reason
        self.remedy = "Write it like 11 1/2, 11.5, 11½, 29.2 cm or 292 mm."

    def __str__(self) -> str:
        return f"“{self.text}” {self.reason}."


class BetweenMarks(UnreadableLength):
    """A length that no ruler shows, with the marks on either side of it."""

    code = "between-marks"

    def __init__(self, text: str, below: str, above: str) -> None:
        super().__init__(text, "falls between the marks of every ruler")
        self.below = below
        self.above = above
        self.remedy = f"The nearest marks are {below} and {above}."


class NoColourway(SpreadwrightError):
    """Paper sets in none of which a recipe can be laid, with every role that nothing fits."""

    def __init__(self, findings: Sequence[Finding]) -> None:
        super().__init__(tuple(findings))
        self.findings = tuple(findings)

    def __str__(self) -> str:
        return " ".join(finding.message for finding in self.findings)


class NoPlan(SpreadwrightError):
    """Pieces that no plan can cut from this stock, with every cause that was proved."""

    def __init__(self, causes: Sequence[Finding]) -> None:
        super().__init__(tuple(causes))
        self.causes = tuple(causes)

    def __str__(self) -> str:
        return f"There is no plan: {self.causes[0].message} {self.causes[0].remedy}"


class PlanTooLong(SpreadwrightError):
    """A search that ended at its bound without a plan; there may be one all the same."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what

    def __str__(self) -> str:
        return f"The search stopped {self.what} without a plan; that proves nothing. Give it more time."


class PrintTooLong(SpreadwrightError):
    """A print of more pieces or pages than whoever was asked for it prints."""

    def __init__(self, count: int, most: int, unit: str = "pieces") -> None:
        super().__init__(count, most, unit)
        self.count, self.most, self.unit = count, most, unit

    def __str__(self) -> str:
        return (
            f"The print would have {self.count} {self.unit}; at most {self.most} are printed here. "
            "Print it on the command line, which has no such bound, or ask for cuts and placement one by one."
        )


class CannotDraw(SpreadwrightError):
    """A picture that the drawing library refused; its error is the cause."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what

    def __str__(self) -> str:
        return f"{self.what} could not be drawn."


class CannotWrite(SpreadwrightError):
    """A file or folder that the system refuses to write; its error is the cause."""

    def __init__(self, what: str, reason: str) -> None:
        super().__init__(what)
        self.what = what
        self.reason = reason

    def __str__(self) -> str:
        return f"{self.what} cannot be written: {self.reason}."


def nearest_hint(name: str, known: Iterable[str]) -> str:
    """A sentence that names the nearest known name, or some of them when none is near.

    >>> nearest_hint("widht", ["width", "height"])
    'Did you mean “width”?'
    """
    names = list(islice(known, _MOST_COMPARED))
    close = get_close_matches(name[:_LONGEST_COMPARED].lower(), names, n=1, cutoff=0.6)
    if close:
        return f"Did you mean “{close[0]}”?"
    if not names:
        return "None is known here."
    return "Known: " + ", ".join(names[:_MOST_LISTED]) + ("." if len(names) <= _MOST_LISTED else " …")


_MOST_COMPARED, _MOST_LISTED, _LONGEST_COMPARED = 2000, 20, 80
"""A hint is worth some work, but never much."""
