"""The JSON form of a match: the same on the command line and over HTTP."""

from collections.abc import Sequence

from spreadwright.colour.names import colour_name
from spreadwright.colour.palette import Tone
from spreadwright.lengths import Unit
from spreadwright.tasks.answers import SCALE, Json, colourway_answer, finding_answer, share_answer, size_answer
from spreadwright.tasks.match import Match, Photograph, PhotographInMat
from spreadwright.tasks.suiting import Suit, SuitingFace


def match_answer(match: Match) -> Json:
    """The palettes, what suits them, and where each photograph lies."""
    unit = match.recipe.unit if match.recipe else Unit.INCH
    return {
        "recipe": match.recipe.id if match.recipe else None,
        **SCALE,
        "photographs": [_photograph(each) for each in match.photographs],
        "palette": _palette(match.tones),
        "suits": [_suit(each) for each in match.suits],
        "in_mats": [_in_mat(each, unit) for each in match.in_mats],
        "left_over": list(match.left_over),
        "empty": list(match.empty),
        "findings": [finding_answer(each) for each in match.findings],
    }


def _photograph(each: Photograph) -> Json:
    return {
        "name": each.name,
        "pixels": {"width": each.size.width, "height": each.size.height},
        "palette": _palette(each.tones),
    }


def _palette(tones: Sequence[Tone]) -> list[Json]:
    return [{"colour": tone.hex, "name": colour_name(tone.hex), "share": round(tone.share, 4)} for tone in tones]


def _suit(suit: Suit) -> Json:
    return {
        "set": suit.papers.id,
        "title": suit.papers.title,
        "score": round(suit.score, 2),
        "photos": round(suit.fit, 2),
        "parts": {name: round(points, 2) for name, points in suit.parts},
        "colourway": colourway_answer(suit.colourway) if suit.colourway else None,
        "papers": [_face(each) for each in suit.faces],
        "words": suit.words,
        "reason": suit.reason,
    }


def _face(each: SuitingFace) -> Json:
    return {
        "paper": each.choice.paper.id,
        "title": each.choice.paper.title,
        "side": each.choice.side.value,
        "photos": round(100 * each.fit.value, 2),
        "nearest": each.fit.nearest.hex,
        "likeness": round(each.fit.likeness, 4),
    }


def _in_mat(each: PhotographInMat, unit: Unit) -> Json:
    crop, pixels = each.crop, each.photograph.size
    return {
        "photograph": each.number,
        "name": each.photograph.name,
        "on": each.on,
        "mark": each.mark,
        "page": each.page,
        "size": size_answer(each.size, unit),
        "crop": {
            "left": round(crop.left * pixels.width),
            "top": round(crop.top * pixels.height),
            "width": round(crop.width * pixels.width),
            "height": round(crop.height * pixels.height),
        },
        "lost": share_answer(crop.lost),
        "kept": round(crop.kept, 4),
        "pixels_per_inch": round(float(each.laid.per_inch), 1),
    }
