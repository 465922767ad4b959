"""The JSON form of contact sheets and test strips, on the command line and over HTTP."""

from spreadwright.drawing.contact import ContactSheet
from spreadwright.tasks.answers import Json
from spreadwright.tasks.strip import Exposed, Pair, Strip, sentences, sight_name
from spreadwright.words import spoken


def contact_answer(sheet: ContactSheet) -> Json:
    """What stands on a contact sheet, and what does not."""
    return {
        "title": sheet.title,
        "language": spoken(),
        "about": sheet.about,
        "notes": list(sheet.notes),
        "frames": [
            {
                "number": int(frame.number),
                "title": frame.title,
                "recipe": frame.layout.recipe.id,
                "colourway": frame.id,
                "score": round(frame.points, 2),
                "papers": [{"role": role, "paper": paper} for role, paper in frame.papers],
                "reason": frame.reason,
            }
            for frame in sheet.frames
        ],
        "left_out": [{"name": each.name, "reason": each.reason} for each in sheet.left_out],
    }


def strip_answer(shown: Strip) -> Json:
    """How one colourway is seen in every way."""
    return {
        "recipe": shown.reading.model.id,
        "language": spoken(),
        "set": shown.papers.id,
        "colourway": shown.colourway.id,
        "sights": [_exposed(each) for each in shown.exposed],
    }


def _exposed(exposed: Exposed) -> Json:
    return {
        "sight": exposed.sight.value,
        "title": sight_name(exposed.sight),
        "pairs": exposed.pairs,
        "lost": [_pair(pair) for pair in exposed.lost],
        "closest": _pair(exposed.closest) if exposed.closest else None,
        "words": list(sentences(exposed)),
    }


def _pair(pair: Pair) -> Json:
    return {
        "papers": list(pair.ids),
        "titles": list(pair.papers),
        "contrast": round(pair.meet.contrast, 3),
        "difference": round(pair.meet.difference, 2),
        "difference_in_colour": round(pair.was, 2),
    }
