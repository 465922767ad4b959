"""Part of *test-strip*: what can be said of any colourway beforehand, for pages in which papers are exchanged."""

from enum import StrEnum
from functools import lru_cache

import numpy as np

from spreadwright.colour.contrast import LARGE_TEXT
from spreadwright.colour.legible import Sight, lost, meeting_lengths
from spreadwright.colour.measure import Look
from spreadwright.colour.parts.calm import kept
from spreadwright.colour.parts.captions import pencil_ratio
from spreadwright.colour.scene import Meeting
from spreadwright.model import BLANK, Choice, PaperSet, Recipe, Side
from spreadwright.tasks.ranking import face_look, seen

_CALM_ENOUGH = 0.5
"""Of the calm of a plain paper: on less, writing is lost in the print."""


def faces_of(papers: PaperSet) -> tuple[Choice, ...]:
    """Both faces of every paper, in the order of the set, fronts first."""
    return tuple(Choice(paper, side) for paper in papers.papers for side in Side)


@lru_cache(maxsize=256)
def lost_pairs(papers: PaperSet) -> dict[tuple[int, int], tuple[Sight, ...]]:
    """The faces of a set that are lost on each other, and in which kinds of sight.

    A face is meant by its number in `faces_of`; the number after the last one means the bare page.
    """
    looks = [*(face_look(choice.face) for choice in faces_of(papers)), face_look(BLANK)]
    found = {sight: lost(looks, sight) for sight in Sight}
    pairs = [(one, other) for other in range(len(looks)) for one in range(other)]
    in_sights = {pair: tuple(sight for sight in Sight if found[sight][pair]) for pair in pairs}
    return {pair: sights for pair, sights in in_sights.items() if sights}


def meetings(recipe: Recipe) -> tuple[Meeting, ...]:
    """The surfaces of a proven recipe that meet or face each other, those that do so longest first."""
    return tuple(meeting for meeting in meeting_lengths(seen(recipe)) if meeting[0] != meeting[1])


class Writing(StrEnum):
    """How a face is written on with a pencil."""

    DARK = "dark"
    WHITE = "white"
    LOST = "lost"


@lru_cache(maxsize=256)
def writing_on(papers: PaperSet) -> tuple[Writing, ...]:
    """Which pencil shows on each of `faces_of`: a dark one, only a white one, or none for all the print."""
    looks = [face_look(choice.face) for choice in faces_of(papers)]
    ratios = pencil_ratio(looks).tolist()
    return tuple(_writing(look, ratio) for look, ratio in zip(looks, ratios, strict=True))


def _writing(look: Look, ratio: float) -> Writing:
    if kept(np.array(look.busyness), np.array(look.busyness)) < _CALM_ENOUGH:
        return Writing.LOST
    return Writing.DARK if ratio >= LARGE_TEXT else Writing.WHITE
