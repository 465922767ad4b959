"""The JSON form of a placement: the same on the command line and over HTTP; lengths are whole ticks beside words."""

from spreadwright.lengths import Unit, with_unit
from spreadwright.model import Adhesive
from spreadwright.photos import MattedPhoto
from spreadwright.placing import Line, Move, PlaceStep, Sticking
from spreadwright.tasks.answers import SCALE, Json, bench_answer, finding_answer, length_answer, rect_answer
from spreadwright.tasks.place import Placing
from spreadwright.words import spoken


def placement_answer(placing: Placing) -> Json:
    """Where every piece and photograph lies in gluing order, the moves of the ruler, and the adhesive."""
    unit = placing.bench.unit
    photos = {photo.on: photo for photo in placing.photos}
    return {
        "recipe": placing.recipe.id,
        "bench": bench_answer(placing.bench),
        **SCALE,
        "language": spoken(),
        "cautions": list(placing.cautions),
        "rounding": placing.rounding,
        "findings": [finding_answer(finding) for finding in placing.findings],
        "adhesive": _adhesive(placing),
        "steps": [_step(step, photos.get(step.placed.piece.id), unit) for step in placing.steps],
    }


def _step(step: PlaceStep, photo: MattedPhoto | None, unit: Unit) -> Json:
    return {
        "number": step.number,
        "piece": step.placed.piece.id,
        "mark": step.placed.piece.mark,
        "page": step.placed.page,
        "layer": step.placed.layer,
        "turned": step.placed.is_turned,
        "face": step.placed.side.value,
        "joined_to": step.located.base.piece.id if step.located.base else None,
        "place": rect_answer(step.placed.rect, unit),
        "lands": rect_answer(step.located.lands, unit),
        "photo": rect_answer(photo.rect_on(step.placed.rect), unit) if photo else None,
        "moves": [_move(move, unit) for move in step.located.moves],
        "sentences": list(step.sentences),
        "words": step.sentence,
    }


def _move(move: Move, unit: Unit) -> Json:
    """Of the edge of the piece, and the edges that it is laid by; `reading` is None where nothing is measured."""
    reading = {"ticks": move.reading, "exact_ticks": move.exact, "text": with_unit(move.reading, unit)}
    return {
        "kind": move.kind.value,
        "cost": move.cost,
        "axis": move.axis.value if move.axis else None,
        "end": move.end.value if move.end else None,
        "lines": [_line(line) for line in move.lines],
        "reading": reading if move.exact else None,
    }


def _line(line: Line) -> Json:
    return {"piece": line.piece or None, "axis": line.axis.value, "end": line.end.value}


def _adhesive(placing: Placing) -> Json:
    found, unit = placing.adhesive, placing.bench.unit
    return {
        "tape": length_answer(found.tape, unit),
        "bead": length_answer(found.bead, unit),
        "glue_microlitres": found.volume,
        "pieces": [_sticking(each, unit) for each in found.pieces],
        "photos": [_sticking(each, unit) for each in found.photos],
        "words": list(found.words),
    }


def _sticking(each: Sticking, unit: Unit) -> Json:
    return {
        "piece": each.stick.id,
        "adhesive": _named(each.adhesive, unit) if each.adhesive else None,
        "runs": each.runs,
        "length": length_answer(each.length, unit),
        "microlitres": each.volume,
    }


def _named(adhesive: Adhesive, unit: Unit) -> Json:
    return {"kind": adhesive.wetness.value, "width": with_unit(adhesive.width, unit)}
