"""A place in a document from which a reader takes what is well formed, and leaves the rest to the schema's findings."""

from collections.abc import Iterator
from typing import Any

from spreadwright.document.pointer import pointer
from spreadwright.errors import Finding, UnreadableLength, error
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, ticks


class Cursor:
    """One value with its pointer. Whatever has the wrong type reads as absent, since the schema has reported it."""

    def __init__(self, value: Any, unit: Unit, findings: list[Finding], where: str = "") -> None:
        self._value = value
        self._unit = unit
        self._findings = findings
        self.where = where

    def has(self, name: str) -> bool:
        """Whether the value is an object with that member."""
        return isinstance(self._value, dict) and name in self._value

    def child(self, name: str) -> "Cursor":
        """The member of that name, absent or not."""
        member = self._value.get(name) if isinstance(self._value, dict) else None
        return Cursor(member, self._unit, self._findings, self.where + pointer(name))

    def items(self) -> Iterator["Cursor"]:
        """The objects of a list; anything else in it is passed over."""
        for index, item in enumerate(self._value if isinstance(self._value, list) else ()):
            if isinstance(item, dict):
                yield Cursor(item, self._unit, self._findings, self.where + pointer(index))

    def members(self) -> Iterator[tuple[str, "Cursor"]]:
        """The members of an object that are objects themselves."""
        for name in self._value if isinstance(self._value, dict) else ():
            if isinstance(self._value[name], dict):
                yield name, self.child(name)

    def text(self, name: str, default: str = "") -> str:
        """A text member."""
        member = self.child(name)._value
        return member if isinstance(member, str) else default

    def texts(self, name: str) -> tuple[str, ...]:
        """The texts of a list member."""
        member = self.child(name)._value
        return tuple(each for each in member if isinstance(each, str)) if isinstance(member, list) else ()

    def flag(self, name: str) -> bool:
        """A member that is true or false; false where it is absent."""
        return self.child(name)._value is True

    def count(self, name: str, default: int, least: int, most: int) -> int:
        """A whole number within bounds."""
        member = self.child(name)._value
        fits = isinstance(member, int) and not isinstance(member, bool) and least <= member <= most
        return member if fits else default

    def length(self, name: str, default: str | None = None, *, least: int = 0) -> int | None:
        """A length, ticks; None where it is absent or cannot be read. Shorter than `least` ticks is a finding."""
        member = self.child(name)
        written = member._value if self.has(name) else default
        return member._length(written, least) if isinstance(written, str) else None

    def size(self, name: str) -> Size | None:
        """Width and height, both more than nothing; None where either cannot be read."""
        member = self.child(name)
        written = member._value
        if not isinstance(written, list) or len(written) != 2:
            return None
        sides = [
            Cursor(side, self._unit, self._findings, member.where + pointer(i))._length(side, 1)
            for i, side in enumerate(written)
            if isinstance(side, str)
        ]
        return Size(sides[0], sides[1]) if len(sides) == 2 and sides[0] and sides[1] else None

    def _length(self, written: str, least: int) -> int | None:
        if not written:
            return None
        try:
            length = ticks(written, self._unit)
        except UnreadableLength as reason:
            code = type(reason).code
            self._findings.append(error(code, self.where, str(reason), reason.remedy))
            return None
        if length < least:
            wanted = "more than nothing" if least else "nothing or more"
            message = f"“{written}” is too short."
            self._findings.append(error("too-short", self.where, message, f"A length here is {wanted}."))
            return None
        return length
