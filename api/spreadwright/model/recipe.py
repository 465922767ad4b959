"""The recipe: the document of one layout."""

from dataclasses import dataclass, field
from enum import StrEnum

from spreadwright.geometry import Size
from spreadwright.lengths import Unit
from spreadwright.model.cut_tree import Content


class Kind(StrEnum):
    """Which faces a role takes."""

    PLAIN = "plain"
    PATTERNED = "patterned"
    ANY = "any"


class Side(StrEnum):
    """One of the two faces of a sheet."""

    FRONT = "front"
    BACK = "back"

    @property
    def other(self) -> "Side":
        """The opposite side."""
        return Side.BACK if self is Side.FRONT else Side.FRONT


class Edge(StrEnum):
    """What a placement is measured from."""

    LEFT = "left"
    RIGHT = "right"
    CENTRE = "centre"
    TOP = "top"
    BOTTOM = "bottom"
    MIDDLE = "middle"


@dataclass(frozen=True, slots=True)
class Role:
    """The part that a paper plays in a recipe: what a colourway fills.

    Attributes:
        is_directional: A one-way print may fill it, so no piece of it may be turned.
    """

    id: str
    kind: Kind
    is_directional: bool = False
    title: str = ""
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Sheet:
    """One whole sheet, or several equal ones, and how it is cut."""

    role: str
    size: Size | None
    content: Content
    times: int = 1
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Offset:
    """A distance from an edge of the page to the same edge of the piece, ticks.

    From `centre` and `middle` it is the distance between the two middles, positive to the right and down.
    """

    edge: Edge
    distance: int | None


@dataclass(frozen=True, slots=True)
class Placement:
    """Where one piece lies. Order in the list is order from the page upward.

    Attributes:
        size: Of the piece as cut, before any turn; None where only the cut tree says it.
        role: Of its paper; empty where only the sheet says it.
    """

    piece: str
    page: str
    across: Offset
    down: Offset
    is_turned: bool = False
    side: Side = Side.FRONT
    size: Size | None = None
    role: str = ""
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Photo:
    """A photograph on a mat, trimmed smaller than the mat by `border` on every side, ticks."""

    on: str
    border: int | None
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Caption:
    """A piece that is written on."""

    on: str
    where: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Spread:
    """One page or two that are seen together, each of the same size."""

    pages: tuple[str, ...]
    size: Size | None


@dataclass(frozen=True, slots=True)
class Recipe:
    """One layout: paper roles, cut trees, placements, photo and caption spots.

    A recipe that carries errors is as complete as its document allows; None stands where a length could not be read.
    """

    id: str
    title: str
    unit: Unit
    spread: Spread
    roles: tuple[Role, ...]
    sheets: tuple[Sheet, ...]
    placements: tuple[Placement, ...]
    photos: tuple[Photo, ...] = ()
    captions: tuple[Caption, ...] = ()
    summary: str = ""
    authors: tuple[str, ...] = ()
    licence: str = ""
    language: str = "en"
    tags: tuple[str, ...] = ()

    def role(self, role_id: str) -> Role | None:
        """The role of that name, or None."""
        return next((role for role in self.roles if role.id == role_id), None)
