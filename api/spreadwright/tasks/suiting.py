"""The paper sets, or the colourways of a recipe, that suit photographs best.

A set by itself is judged by `suitability.set_fit`. Of a recipe every colourway is judged as it always is, and by how
well its papers suit the photographs, which counts `WEIGHT` beside the 100 of all else: 60 % of the whole. Papers that
cannot be told from larger ones beside them do not count again.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache

from spreadwright.colour.names import colour_name
from spreadwright.colour.palette import Tone, palette, tally
from spreadwright.colour.suitability import Fit, face_fit, set_fit
from spreadwright.colour.worth import Ranked, Wish
from spreadwright.drawing import face_pixels
from spreadwright.errors import NoColourway
from spreadwright.model import BLANK, Choice, Colourway, Face, PaperSet, Recipe, Side
from spreadwright.photos import share_text
from spreadwright.tasks.ranking import propose
from spreadwright.words import decimal, listed, title
from spreadwright.words import gettext as _

WEIGHT = 150.0
PHOTOS = "photos"
"""What the part is called beside the others of a colourway's score."""

CLOSE = 0.5
"""How alike a paper and a colour must be for the one to be said to be close to the other, 0 to 1."""
_MOST_NAMED = 3
_LEAST_SHARE = 0.0095


@dataclass(frozen=True, slots=True)
class SuitingFace:
    """A face, and how well it suits the photographs."""

    choice: Choice
    fit: Fit


@dataclass(frozen=True, slots=True, eq=False)
class Suit:
    """A set, or one of its colourways, and how well it suits the photographs.

    Attributes:
        score: Of the whole, 0 to 100.
        fit: Of the papers alone, 0 to 100.
        colourway: When a recipe was named.
        reason: Why it ranks where it does in its set, and how far behind the best of all sets, in the language spoken;
            empty without a recipe.
        parts: Of the colourway's score, 0 to 100 each.
        faces: Of the colourway in the order of the roles, or the best of the set.
        words: Which of its papers are close to which colour of the photographs, in the language spoken.
    """

    papers: PaperSet
    score: float
    fit: float
    faces: tuple[SuitingFace, ...]
    words: str
    colourway: Colourway | None = None
    reason: str = ""
    parts: tuple[tuple[str, float], ...] = ()


def suits(
    tones: Sequence[Tone], sets: Sequence[PaperSet], wanted: int, *, recipe: Recipe | None = None
) -> tuple[Suit, ...]:
    """What suits photographs of these colours best, at most so many; of a single set several colourways.

    Raises:
        NoColourway: None of the sets fills the roles of the recipe.
    """
    if recipe is None:
        found = [_suiting_set(papers, tones) for papers in sets]
    else:
        found = _suiting_colourways(recipe, sets, tones, wanted)
    best_first = sorted(found, key=lambda suit: -round(suit.score, 6))[:wanted]
    return tuple(_behind(suit, best_first[0]) for suit in best_first)


def _behind(suit: Suit, best: Suit) -> Suit:
    """One that is the best of its own set says that another set has a better one."""
    points = f"{best.score - suit.score:.1f}"
    if not suit.reason or suit.papers == best.papers or points == "0.0":
        return suit
    told = _("The best of all sets is {points} points ahead.").format(points=decimal(points))
    return replace(suit, reason=f"{suit.reason} {told}")


@lru_cache(maxsize=2048)
def face_tones(face: Face) -> tuple[Tone, ...]:
    """The palette of a face, from its picture."""
    return palette(tally(face_pixels(face)[::2, ::2]))


def _suiting_set(papers: PaperSet, tones: Sequence[Tone]) -> Suit:
    choices = [Choice(paper, side) for paper in papers.papers for side in Side if paper.face(side) != BLANK]
    value = 100 * set_fit([face_tones(choice.face) for choice in choices], tones)
    faces = sorted((_suiting(choice, tones) for choice in choices), key=lambda each: -each.fit.value)
    kept: dict[str, SuitingFace] = {}
    for each in faces:
        kept.setdefault(each.choice.paper.id, each)
    best = tuple(kept.values())[: 2 * _MOST_NAMED]
    return Suit(papers, value, value, best, _words(best))


def _suiting_colourways(recipe: Recipe, sets: Sequence[PaperSet], tones: Sequence[Tone], wanted: int) -> list[Suit]:
    wish = Wish(
        PHOTOS,
        WEIGHT,
        lambda _role, choice: face_fit(face_tones(choice.face), tones).value,
        praise=_("it takes up the colours of the photos"),
        blame=_("it takes up the colours of the photos only in part"),
    )
    found: list[Suit] = []
    refusals: list[NoColourway] = []
    for papers in sets:
        try:
            proposal = propose(recipe, [papers], wanted if len(sets) == 1 else 1, wish)
        except NoColourway as refusal:
            refusals.append(refusal)
        else:
            found += [_suiting_colourway(papers, each, tones, proposal.reason(each)) for each in proposal.colourways]
    if refusals and not found:
        raise refusals[0]
    return found


def _suiting_colourway(papers: PaperSet, each: Ranked, tones: Sequence[Tone], reason: str) -> Suit:
    faces = tuple(_suiting(choice, tones) for _role, choice in each.colourway.choices)
    parts = tuple(each.parts.items())
    return Suit(papers, each.score, each.parts[PHOTOS], faces, _words(faces), each.colourway, reason, parts)


def _suiting(choice: Choice, tones: Sequence[Tone]) -> SuitingFace:
    return SuitingFace(choice, face_fit(face_tones(choice.face), tones))


def share_words(tone: Tone) -> str:
    """How much of the photographs is of a colour, for people."""
    return share_text(round(Fraction(tone.share), 2)) if tone.share >= _LEAST_SHARE else _("under 1 %")


def _words(faces: Sequence[SuitingFace]) -> str:
    """The papers that are closest to colours of the photographs, each colour and each paper once."""
    named: dict[str, str] = {}
    papers: set[str] = set()
    for each in sorted(faces, key=lambda each: -each.fit.likeness):
        near, paper = each.fit.nearest, each.choice.paper
        if each.fit.likeness >= CLOSE and near.hex not in named and paper.id not in papers:
            told = _("{paper} to {colour} ({share})")
            named[near.hex] = told.format(
                paper=title(paper.title), colour=colour_name(near.hex), share=share_words(near)
            )
            papers.add(paper.id)
    if not named:
        return _("None of its papers is close to a colour of the photos; the quietest leave them the stage.")
    return _("Close to the photos: {pairs}.").format(pairs=listed(list(named.values())[:_MOST_NAMED]))
