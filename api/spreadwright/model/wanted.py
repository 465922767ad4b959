"""The piece list: what is to be cut, and the stock to cut it from, before anybody has said how. Lengths in ticks."""

from dataclasses import dataclass, field

from spreadwright.geometry import Size
from spreadwright.lengths import Unit


@dataclass(frozen=True, slots=True)
class Wanted:
    """A piece that is wanted, once or several times.

    Attributes:
        name: What its leaf in the cut tree is called.
        may_turn: No for a one-way print.
        paper: The role or paper it must be cut from.
        together: Pieces with the same word here come from one sheet; empty for no such wish.
        value: What an optional piece is worth; 0 for a piece that must be cut.
    """

    name: str
    size: Size
    count: int = 1
    may_turn: bool = True
    paper: str = ""
    together: str = ""
    value: int = 0
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Stock:
    """Sheets or offcuts of one size that may be cut.

    Attributes:
        count: How many there are; None for as many as are needed.
        cost: Of each, in any unit; the plan with the least total is sought.
    """

    size: Size
    count: int | None = None
    paper: str = ""
    cost: int = 1
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class PieceList:
    """The document of one such wish; `unit` is the one that it is written in."""

    id: str
    title: str
    unit: Unit
    pieces: tuple[Wanted, ...]
    stock: tuple[Stock, ...]
