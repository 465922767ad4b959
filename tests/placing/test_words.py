"""What is told of single moves, on small layouts."""

from dataclasses import replace

from builder import spoilt
from placing.layouts import INCH, inches, layout
from spreadwright.document import read_recipe
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import INCH_BENCH, Adhesive, Wetness
from spreadwright.placing import EQUAL, MoveKind, PlaceStep, place_steps, rounding
from spreadwright.store import Collection
from spreadwright.tasks import place
from spreadwright.words import speaking

MM = TICKS[Unit.MILLIMETRE]
METRIC = Collection().bench("bench-metric")
CORNER = [inches(0, 4, 4, 8), inches(4, 4, 8, 8), inches(4, 0, 8, 4), inches(0, 0, 4, 4)]


def steps_of(rects, bench=INCH_BENCH, **sizes: Size) -> dict[str, PlaceStep]:
    steps = place_steps(*layout(rects), bench, {name.replace("_", "-"): size for name, size in sizes.items()})
    return {step.placed.piece.id: step for step in steps}


def fitted(rects) -> PlaceStep:
    """The one that is laid last, into what the others leave."""
    return next(step for step in steps_of(rects).values() if step.located.moves[0].kind is MoveKind.FRAME)


def test_piece_that_fills_a_corner_is_flush_with_the_page_there():
    assert fitted(CORNER).sentences[-1] == (
        "It fits into the space that is left, without a gap. Right edge: flush with the edge of the page. "
        "Bottom edge: flush with the edge of the page."
    )


def test_piece_that_fills_a_corner_of_another_is_flush_with_that():
    panel = inches(0.5, 0.5, 11, 11)
    corner = [inches(0.5, 4, 4, 7.5), inches(4.5, 4, 7, 7.5), inches(4.5, 0.5, 7, 3.5), inches(0.5, 0.5, 4, 3.5)]
    assert "edge: flush with the same edge of “p-0” (P0)." in fitted([panel, *corner]).sentences[-1]


def test_piece_that_others_frame_is_flush_with_none_of_them():
    around = [inches(0, 0, 8, 4), inches(8, 0, 4, 8), inches(4, 8, 8, 4), inches(0, 4, 4, 8), inches(4, 4, 4, 4)]
    assert fitted(around).sentences[-1] == "It fits into the space that is left, without a gap."


def test_equal_gaps_are_measured_as_both_of_them():
    row = [inches(0, 3, 2, 2), inches(2.25, 3, 2, 2), inches(4.5, 3, 2, 2)]
    step = steps_of(row)["p-2"]
    own, repeated = (m for m in step.measures if m.figure == EQUAL)
    assert (own.start, own.end, own.is_repeated) == (INCH * 17 // 4, INCH * 9 // 2, False)
    assert (repeated.start, repeated.end, repeated.is_repeated) == (2 * INCH, INCH * 9 // 4, True)
    assert own.beside == repeated.beside == (3 * INCH, 5 * INCH)


def test_gap_that_is_repeated_between_two_marks_is_told_as_about():
    row = [inches(0, 3, 4.75, 2), inches(5, 3, 2, 2), inches(7.25, 3, 4, 2)]
    assert steps_of(row)["p-2"].sentences[1].endswith("as that lies from “p-0” (P0), 1/4 in.")
    assert steps_of(row, METRIC)["p-2"].sentences[1].endswith("as that lies from “p-0” (P0), about 6 mm.")


def test_middle_names_the_readings_of_page_and_piece():
    told = steps_of([inches(2, 2.5, 8, 3)])["p-0"].sentences[1]
    assert told.endswith("both side edges of the page are at 6 in; lay those of the piece at 4 in.")


def test_half_that_lies_between_marks_is_told_as_about():
    told = steps_of([inches(2, 2.5, 8, 3)], METRIC, p_0=Size(203 * MM, 76 * MM))["p-0"].sentences[1]
    assert told.endswith("the page are at about 152.5 mm; lay those of the piece at about 101.5 mm.")


def test_border_by_eye_is_about_what_no_mark_shows():
    framed = [inches(2, 2, 5, 5), inches(2.125, 2.125, 4.75, 4.75)]
    assert steps_of(framed, METRIC)["p-1"].sentences[-1].endswith("the same border of about 3 mm all round.")
    assert steps_of(framed)["p-1"].sentences[-1].endswith("the same border of 1/8 in all round.")


def test_rounding_of_places_is_told_with_the_largest_error():
    done = place(Collection().recipe("rain-until-four"), METRIC)
    assert done.rounding.endswith("by them no piece lies more than 0.3 mm from its designed place.")
    assert rounding(0, METRIC) == place(Collection().recipe("rain-until-four"), INCH_BENCH).rounding == ""


def test_piece_too_narrow_for_every_adhesive_is_told_with_what_holds_it():
    tape_alone = replace(INCH_BENCH, adhesives=(Adhesive(Wetness.DRY, INCH // 2),))
    strips = [inches(1, 1, 6, 0.5), inches(1, 3, 6, 0.125), inches(1, 5, 6, 2)]
    heads = {name: step.sentences[0] for name, step in steps_of(strips, tape_alone).items()}
    assert heads["p-0"].endswith("use liquid glue with a bead of at most 1/8 in.")
    assert heads["p-1"].endswith("No adhesive of this bench is narrow enough for it: use glue from a fine brush.")
    assert "adhesive" not in heads["p-2"]


def narrow(document):
    document["sheets"][2]["rows"] = [
        {"height": "1/8", "piece": "strip", "times": 2},
        {"height": "9", "columns": [{"width": "6", "piece": "block", "times": 2}]},
        {"height": "rest", "spare": True},
    ]
    document["placements"][7]["bottom"] = document["placements"][6]["top"] = "0"


def test_what_a_bench_lacks_is_a_finding_in_the_language_spoken():
    (finding,) = place(read_recipe(spoilt(narrow)), INCH_BENCH).findings
    assert (finding.code, finding.where) == ("adhesive-too-wide", "/placements/2")
    assert finding.message.endswith("Nor does it fit 1 more piece.")
    assert finding.remedy == "Use glue from a fine brush for it, or cut the piece wider."
    with speaking("de"):
        (spoken,) = place(read_recipe(spoilt(narrow)), INCH_BENCH).findings
    assert spoken.remedy.endswith("oder das Teil breiter schneiden.")
