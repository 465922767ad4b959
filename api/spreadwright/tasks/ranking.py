"""The verb *colourways*: from a recipe and paper sets to the colourways that please most."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from spreadwright.colour import count, paper_findings
from spreadwright.colour.colourways import options
from spreadwright.colour.measure import Look, look
from spreadwright.colour.ranking import Ranking, ranking
from spreadwright.colour.reasons import reason
from spreadwright.colour.scene import PHOTO, Patch, Scene, Surface
from spreadwright.colour.scene import scene as scene_of
from spreadwright.colour.search import Supply
from spreadwright.colour.supply import is_enough, sheets_of_roles
from spreadwright.colour.tables import Cast, cast_of
from spreadwright.colour.worth import Ranked, Wish, Worth, worth
from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.errors import Finding, NoColourway, Severity, UnknownName, has_errors
from spreadwright.geometry import Size
from spreadwright.model import Choice, Face, PaperSet, Recipe, Side, role_titles
from spreadwright.placing import PlacedPiece
from spreadwright.tasks.layout import layout

MOST = 100
"""Colourways that may be asked for."""


@dataclass(frozen=True, slots=True)
class Proposal:
    """The colourways that please most, the best one first.

    Attributes:
        sets: Those in which the recipe can be laid.
        count: How many colourways there are in them.
        findings: What is to be said about the sets: which fill no role and why, which have too few papers.
        lacks_sheets: Whether no colourway gets along with the sheets at hand, so that they were not heeded.
        wish: What was wished for beside the parts that always count.
    """

    recipe: Recipe
    sets: tuple[PaperSet, ...]
    count: int
    ranking: Ranking
    findings: tuple[Finding, ...]
    lacks_sheets: bool = False
    wish: Wish | None = None

    @property
    def colourways(self) -> tuple[Ranked, ...]:
        """The best one first."""
        return self.ranking.colourways

    def reason(self, ranked: Ranked) -> str:
        """Why one of them ranks where it does, in the language spoken now."""
        names, is_proved = role_titles(self.recipe), self.ranking.is_proved
        return reason(ranked, self.colourways[0], self.count, self.wish, names, is_proved=is_proved)


def propose(recipe: Recipe, sets: Sequence[PaperSet], wanted: int, wish: Wish | None = None) -> Proposal:
    """The best colourways of a proven recipe in all of the sets together, different from one another.

    Args:
        recipe: The recipe.
        sets: Those that fill no role are left out and told about.
        wanted: How many, 1 to `MOST`; fewer come where no others look different.
        wish: A further part of the score.

    Raises:
        UnknownName: There is no set at all.
        NoColourway: No set fills every role.
    """
    findings = {papers.id: paper_findings(recipe, papers) for papers in sets}
    fitting = tuple(papers for papers in sets if not has_errors(findings[papers.id]))
    told = tuple(finding for papers in sets for finding in findings[papers.id])
    if not sets:
        raise UnknownName("paper set", "", ())
    if not fitting:
        raise NoColourway([finding for finding in told if finding.severity is Severity.ERROR])
    total = sum(count(recipe, papers) for papers in fitting)
    found = ranking([worth_in(recipe, papers, wish) for papers in fitting], wanted)
    if found.colourways:
        return Proposal(recipe, fitting, total, found, told, wish=wish)
    found = ranking([worth_in(recipe, papers, wish, heeds_supply=False) for papers in fitting], wanted)
    return Proposal(recipe, fitting, total, found, told, lacks_sheets=True, wish=wish)


def worth_in(recipe: Recipe, papers: PaperSet, wish: Wish | None = None, *, heeds_supply: bool = True) -> Worth:
    """What all colourways of a proven recipe in one set are worth.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    playing, scene = options(recipe, papers), seen(recipe)
    is_short = heeds_supply and not is_enough_of_all(recipe, papers)
    if not is_short and wish is None:
        playing = {role: _different(role, found, scene) for role, found in playing.items()}
    cast = cast_of([Surface(role, side) for role in playing for side in Side], playing, face_look)
    return worth(papers, scene, cast, _supply(recipe, papers, cast) if is_short else None, wish)


def _different(role: str, choices: Sequence[Choice], scene: Scene) -> tuple[Choice, ...]:
    """The first of each that look alike wherever they show, so that nothing is compared with its double."""
    sides = [side for side in Side if Surface(role, side) in scene.areas] or [Side.FRONT]
    first: dict[tuple[Look, ...], Choice] = {}
    for choice in choices:
        first.setdefault(tuple(face_look(choice.shown(side)) for side in sides), choice)
    return tuple(first.values())


def is_enough_of_all(recipe: Recipe, papers: PaperSet) -> bool:
    """Whether the sheets at hand allow every colourway."""
    whole = sum(sheets_of_roles(recipe).values())
    return all(is_enough(paper, whole) for paper in papers.papers)


def _supply(recipe: Recipe, papers: PaperSet, cast: Cast) -> Supply:
    sheets = sheets_of_roles(recipe)
    whole = sum(sheets.values())
    at_hand = np.array([whole if paper.sheets is None else paper.sheets for paper in papers.papers], np.int64)
    number = {paper.id: index for index, paper in enumerate(papers.papers)}
    numbers = tuple(np.array([number[each.paper.id] for each in found], np.int64) for found in cast.options)
    return Supply(numbers, tuple(sheets[role] for role in cast.roles), at_hand)


@lru_cache(maxsize=2048)
def face_look(face: Face) -> Look:
    """What a face amounts to, measured on its picture."""
    return look(face_pixels(face), PIXELS_PER_MM)


@lru_cache(maxsize=256)
def seen(recipe: Recipe) -> Scene:
    """What is seen of a proven recipe's papers."""
    pieces, photos = layout(recipe)
    placed = {each.piece.id: each for each in pieces}
    patches = [Patch(each.page, _surface(each), each.rect) for each in placed.values()]
    patches += [
        Patch(mat.page, PHOTO, photo.rect_on(mat.rect)) for photo in photos if (mat := placed.get(photo.on)) is not None
    ]
    captions = [_surface(placed[caption.on]) for caption in recipe.captions if caption.on in placed]
    return scene_of(recipe.spread.size or Size(0, 0), patches, captions)


def _surface(piece: PlacedPiece) -> Surface:
    return Surface(piece.piece.role, piece.side)
