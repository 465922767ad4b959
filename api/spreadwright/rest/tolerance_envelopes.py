"""The shapes of what is answered about tolerance; `tasks.tolerance_answers` fills them."""

from marshmallow.fields import Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import BenchName, Envelope, Finding, said


class ErrorLength(Envelope):
    """A length or an error, ticks and in words."""

    ticks = Integer()
    text = String()


class CutCount(Envelope):
    """How often the error of one cut counts, with its sign."""

    cut = Integer()
    times = Integer()


class ExpectedSide(Envelope):
    """What to expect of one direction of a piece."""

    ticks = Integer(metadata=said("What the recipe says."))
    edges = List(
        Integer(allow_none=True),
        metadata=said("The cuts that made its first and last edge; null for an edge that came with the sheet."),
    )
    shift_ticks = Integer(metadata=said("What rounding to the marks of the scale adds for everybody."))
    cuts = List(Nested(CutCount), metadata=said("The errors that add up in it."))
    worst = Nested(ErrorLength, metadata=said("Shift and all errors at their bounds."))
    typical = Nested(ErrorLength, metadata=said("Shift and root-sum-square of the bounds."))
    expanded = Nested(ErrorLength, metadata=said("Shift and expanded uncertainty, coverage factor 2."))
    standard_ticks = Float(metadata=said("The combined standard uncertainty."))
    why = String()


class ExpectedPiece(Envelope):
    """What to expect of one piece, as cut, before any turn."""

    id = String()
    mark = String()
    text = String(metadata=said("Its size in words."))
    width = Nested(ExpectedSide)
    height = Nested(ExpectedSide)
    words = String(metadata=said("Both in one sentence; empty when nothing can go wrong."))


class Tolerance(Envelope):
    """How far every piece may come out off, and what could come out wrong by it."""

    recipe = String()
    bench = Nested(BenchName)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    accuracy = Nested(ErrorLength, metadata=said("How far one cut may lie from its reading."))
    pieces = List(Nested(ExpectedPiece))
    findings = List(Nested(Finding))
