"""The spread of a recipe's page, in which papers are exchanged while it is looked at, and what may be exchanged."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup, escape

from spreadwright.colour.colourways import options
from spreadwright.colour.legible import Sight, sight_matrix
from spreadwright.document import Reading
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Choice, Colourway, PaperSet, Recipe, Role
from spreadwright.model.titles import face_title, role_title
from spreadwright.tasks.apart import faces_of
from spreadwright.tasks.draw import exchangeable_spread, face_svg
from spreadwright.tasks.ranking import Proposal
from spreadwright.tasks.strip import sight_name
from spreadwright.words import gettext as _
from spreadwright.words import ngettext

_FOLDER = "pictures"
_ROOT = "@pictures"
"""Stands for the way from a page to that folder: pages of other languages lie deeper."""
_SHOWN = re.compile(rf'href="{_ROOT}/([^"]+)"')


@dataclass(frozen=True, slots=True)
class Offer:
    """One paper set in which a recipe can be laid: its best colourways, and the faces that fit each role."""

    proposal: Proposal
    options: Mapping[str, tuple[Choice, ...]]

    @property
    def papers(self) -> PaperSet:
        """The paper set."""
        return self.proposal.sets[0]

    @property
    def best(self) -> Colourway:
        """The colourway that stands for the set."""
        return self.proposal.colourways[0].colourway


@dataclass(frozen=True, slots=True)
class Part:
    """The paper of one role, as it is shown first; the size of its sheet in millimetres."""

    role: Role
    choice: Choice
    picture: str
    width_mm: float
    height_mm: float

    @property
    def title(self) -> str:
        """The paper with the side that is up."""
        return face_title(self.choice)

    @property
    def role_title(self) -> str:
        """What the role is called."""
        return role_title(self.role)


@dataclass(frozen=True, slots=True)
class SightView:
    """One way of seeing: what it is called, and the values of `feColorMatrix` that show it."""

    sight: Sight
    name: str
    matrix: str


@dataclass(frozen=True, slots=True)
class Exchange:
    """The spread in its first colourway, and all that it can be shown in instead.

    Attributes:
        offers: The one that is shown first comes first; at least one.
        bleed_percent: How far the picture reaches beyond the pages on either side, in hundredths of their width.
        ratio: The width of all pages by their height.
    """

    recipe: Recipe
    offers: tuple[Offer, ...]
    drawing: str
    bleed_percent: float
    ratio: float

    @property
    def first(self) -> Offer:
        """What is shown first."""
        return self.offers[0]

    @property
    def parts(self) -> tuple[Part, ...]:
        """The papers that are shown first, in the order of the roles."""
        roles = {role.id: role for role in self.recipe.roles}
        return tuple(_part(self.first.papers, roles[role], choice) for role, choice in self.first.best.choices)

    @property
    def pictures(self) -> tuple[str, ...]:
        """Where the pictures lie that are shown first, in the site; of a piece that lies back up, the other side."""
        return tuple(dict.fromkeys(f"{_FOLDER}/{file}" for file in _SHOWN.findall(self.drawing)))

    @property
    def seen(self) -> str:
        """What is seen, in words, with a gap for the papers."""
        pages = _("Two pages side by side") if len(self.recipe.spread.pages) == 2 else _("One page")
        count = len(self.recipe.photos)
        if not count:
            return _("{pages}, laid in {papers}.").format(pages=pages, papers="{papers}")
        photos = ngettext("{count} photo", "{count} photos", count).format(count=count)
        return _("{pages}, laid in {papers}, with {photos}.").format(pages=pages, papers="{papers}", photos=photos)

    @property
    def sights(self) -> tuple[SightView, ...]:
        """How the spread can be seen, in colour first."""
        return tuple(SightView(sight, sight_name(sight), _matrix(sight)) for sight in Sight)

    def spread(self, pictures: str) -> Markup:
        """The spread as it lies in a page; `pictures` is the way from there to the folder of that name."""
        papers = ", ".join(part.title for part in self.parts)
        label = escape(self.seen.format(papers=papers))
        drawn = self.drawing.replace(' role="img"', f' role="img" aria-label="{label}"', 1)
        return Markup(drawn.replace(f'href="{_ROOT}/', f'href="{escape(pictures)}/'))


def exchange(reading: Reading[Recipe], proposals: tuple[Proposal, ...]) -> Exchange | None:
    """What the page of a recipe shows of its papers; None where no paper set fills its roles.

    Args:
        reading: The recipe.
        proposals: Its best colourways in each paper set that fills its roles; what is shown first comes first.
    """
    if not proposals:
        return None
    offers = tuple(Offer(each, options(reading.model, each.sets[0])) for each in proposals)
    first = offers[0]
    drawing = exchangeable_spread(
        reading, first.best, lambda choice: f"{_ROOT}/{_file(first.papers, choice)}", prefix="spread-"
    )
    page, pages = reading.model.spread.size or Size(1, 1), len(reading.model.spread.pages)
    bleed_percent = round(page.height // 16 / (page.width * pages) * 100, 3)
    return Exchange(reading.model, offers, drawing, bleed_percent, round(page.width * pages / page.height, 3))


def face_path(papers: PaperSet, choice: Choice) -> str:
    """Where the picture of a whole face lies in the site."""
    return f"{_FOLDER}/{_file(papers, choice)}"


def face_files(papers: PaperSet) -> dict[str, bytes]:
    """The pictures of every whole face of a set, which all recipes share."""
    return {face_path(papers, choice): face_svg(choice.paper, choice.side) for choice in faces_of(papers)}


def _file(papers: PaperSet, choice: Choice) -> str:
    return f"{papers.id}/face-{choice.paper.id}-{choice.side.value}.svg"


def _matrix(sight: Sight) -> str:
    rows = [[*(f"{share:.6g}" for share in row), "0", "0"] for row in sight_matrix(sight).tolist()]
    return " ".join(" ".join(row) for row in [*rows, ["0", "0", "0", "1", "0"]])


def _part(papers: PaperSet, role: Role, choice: Choice) -> Part:
    size = choice.paper.size
    return Part(role, choice, face_path(papers, choice), _mm(size.width), _mm(size.height))


def _mm(ticks: int) -> float:
    return ticks / TICKS[Unit.MILLIMETRE]
