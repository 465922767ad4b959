"""Papers, paper sets, and colourways: which paper plays which role."""

from dataclasses import dataclass, field
from enum import StrEnum

from spreadwright.geometry import Size
from spreadwright.lengths import Unit
from spreadwright.model.recipe import Kind, Side
from spreadwright.model.swatch import Swatch
from spreadwright.model.weight import COMMON_WEIGHT, Weight


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
    PICTURE = "picture"

    @property
    def kind(self) -> Kind:
        """Linen is a texture, not a print."""
        return Kind.PLAIN if self in (Pattern.PLAIN, Pattern.LINEN) else Kind.PATTERNED


class Texture(StrEnum):
    """How a surface feels."""

    SMOOTH = "smooth"
    LINEN = "linen"
    CANVAS = "canvas"
    LAID = "laid"
    FELT = "felt"


class Core(StrEnum):
    """What a cut edge shows."""

    WHITE = "white"
    DYED = "dyed"


@dataclass(frozen=True, slots=True)
class Face:
    """One face of a paper.

    Attributes:
        colours: ``#rrggbb``, the ground first, then what is printed on it; of a picture at least its average.
        repeat: Distance after which the print repeats, ticks; the width of a picture on paper.
        is_directional: A one-way print, with an up and a down.
        texture: How the surface feels, whatever is printed on it.
        picture: What is seen, where the pattern is a picture and its file came along.
    """

    pattern: Pattern
    colours: tuple[str, ...]
    repeat: int
    is_directional: bool = False
    texture: Texture = Texture.SMOOTH
    picture: Swatch | None = None

    @property
    def kind(self) -> Kind:
        """Plain or patterned."""
        return self.pattern.kind

    def __str__(self) -> str:
        """In words: ``stripe``, ``printed, one-way, canvas texture``."""
        seen = ["printed" if self.pattern is Pattern.PICTURE else self.pattern.value]
        seen += ["one-way"] if self.is_directional else []
        is_felt = self.texture is not Texture.SMOOTH and self.texture.value != self.pattern.value
        return ", ".join(seen + ([f"{self.texture.value} texture"] if is_felt else []))


BLANK = Face(Pattern.PLAIN, ("#fdfcf9",), 0)
"""The unprinted back of a one-sided paper."""


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper of a set, as bought.

    Attributes:
        sheets: How many are at hand; None where nobody counts them.
    """

    id: str
    title: str
    size: Size
    front: Face
    back: Face = BLANK
    weight: Weight = COMMON_WEIGHT
    core: Core = Core.WHITE
    sheets: int | None = None
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

    def lying(self, side: Side) -> "Choice":
        """What is up of a piece that is placed with its front or its back up."""
        return self if side is Side.FRONT else Choice(self.paper, self.side.other)

    def shown(self, side: Side) -> Face:
        """The face of `lying`."""
        return self.lying(side).face

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
