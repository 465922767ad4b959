"""Papers, paper sets, and colourways: which paper plays which role."""

from dataclasses import dataclass, field
from enum import StrEnum

from spreadwright.geometry import Size
from spreadwright.lengths import Unit
from spreadwright.model.recipe import Kind, Side


class Pattern(StrEnum):
    """What is printed on a face, or pressed into it."""

    PLAIN = "plain"
    LINEN = "linen"
    STRIPE = "stripe"
    GINGHAM = "gingham"
    DOTS = "dots"
    CHEVRON = "chevron"
    LEAF = "leaf"
    CONTOUR = "contour"

    @property
    def kind(self) -> Kind:
        """Linen is a texture, not a print."""
        return Kind.PLAIN if self in (Pattern.PLAIN, Pattern.LINEN) else Kind.PATTERNED


class Core(StrEnum):
    """What a cut edge shows."""

    WHITE = "white"
    DYED = "dyed"


@dataclass(frozen=True, slots=True)
class Face:
    """One face of a paper.

    Attributes:
        colours: ``#rrggbb``, the ground first, then what is printed on it.
        repeat: Distance after which the print repeats, ticks.
        is_directional: A one-way print, with an up and a down.
    """

    pattern: Pattern
    colours: tuple[str, ...]
    repeat: int
    is_directional: bool = False

    @property
    def kind(self) -> Kind:
        """Plain or patterned."""
        return self.pattern.kind


BLANK = Face(Pattern.PLAIN, ("#fdfcf9",), 0)
"""The unprinted back of a one-sided paper."""


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper of a set, as bought."""

    id: str
    title: str
    size: Size
    front: Face
    back: Face = BLANK
    grammage_g_per_m2: int = 200
    core: Core = Core.WHITE
    where: str = field(default="", compare=False)

    def face(self, side: Side) -> Face:
        """The face of one side."""
        return self.front if side is Side.FRONT else self.back


@dataclass(frozen=True, slots=True)
class PaperSet:
    """Papers that belong together."""

    id: str
    title: str
    unit: Unit
    papers: tuple[Paper, ...]
    summary: str = ""
    authors: tuple[str, ...] = ()
    licence: str = ""
    language: str = "en"
    tags: tuple[str, ...] = ()

    def paper(self, paper_id: str) -> Paper | None:
        """The paper of that name, or None."""
        return next((paper for paper in self.papers if paper.id == paper_id), None)


@dataclass(frozen=True, slots=True)
class Choice:
    """One paper, with one of its sides up."""

    paper: Paper
    side: Side = Side.FRONT

    @property
    def face(self) -> Face:
        """The face that is up."""
        return self.paper.face(self.side)

    def shown(self, side: Side) -> Face:
        """The face that a piece shows which is placed with its front or its back up."""
        return self.paper.face(self.side if side is Side.FRONT else self.side.other)

    @property
    def id(self) -> str:
        """``fog`` for the front, ``fog~back`` for the back: unreserved in web addresses."""
        return self.paper.id if self.side is Side.FRONT else f"{self.paper.id}~back"


@dataclass(frozen=True, slots=True)
class Colourway:
    """One recipe's roles, each with one face of a paper of one set."""

    set_id: str
    choices: tuple[tuple[str, Choice], ...]

    @property
    def id(self) -> str:
        """The set and the choices in the order of the recipe's roles, so it never depends on a list."""
        return ".".join((self.set_id, *(choice.id for _, choice in self.choices)))

    def choice(self, role_id: str) -> Choice:
        """What plays a role.

        Raises:
            KeyError: The colourway does not know the role.
        """
        return dict(self.choices)[role_id]
