"""The shapes of what is answered about a placement; `tasks.placement_answers` fills them."""

from marshmallow.fields import Boolean, Integer, List, Nested, String

from spreadwright.rest.envelopes import BenchName, Envelope, Finding, Place, said


class RulerReading(Envelope):
    """What the ruler shows: `ticks` lies on a mark of it, `exact_ticks` is the distance of the design."""

    ticks = Integer()
    exact_ticks = Integer()
    text = String()


class EdgeLine(Envelope):
    """An edge that is there already."""

    piece = String(allow_none=True, metadata=said("Whose edge; null for the page."))
    axis = String(metadata=said("`columns` for a left or right edge, `rows` for a top or bottom one."))
    end = String(metadata=said("`start` is left or top, `end` is right or bottom."))


class PlacingMove(Envelope):
    """One move with the ruler, or by hand and eye."""

    kind = String()
    cost = Integer(metadata=said("How hard it is; see the page on placing."))
    axis = String(allow_none=True, metadata=said("What it settles; null for both directions at once."))
    end = String(allow_none=True, metadata=said("Which edge of the piece is laid."))
    lines = List(Nested(EdgeLine), metadata=said("The edges that it is laid by."))
    reading = Nested(RulerReading, allow_none=True)


class PlaceStep(Envelope):
    """One piece, the moves that locate it, and the photo on it."""

    number = Integer()
    piece = String()
    mark = String()
    page = String()
    layer = Integer()
    turned = Boolean()
    face = String()
    joined_to = String(allow_none=True, metadata=said("The piece that it is joined to before that is glued down."))
    place = Nested(Place)
    lands = Nested(Place, metadata=said("Where the readings of the ruler put it."))
    photo = Nested(Place, allow_none=True)
    moves = List(Nested(PlacingMove))
    sentences = List(String())
    words = String()


class AdhesiveLength(Envelope):
    """A length of adhesive."""

    ticks = Integer()
    text = String()


class AdhesiveName(Envelope):
    """One adhesive of the bench."""

    kind = String()
    width = String()


class Sticking(Envelope):
    """What holds one piece or photograph; no adhesive where all of them are too wide."""

    piece = String()
    adhesive = Nested(AdhesiveName, allow_none=True)
    runs = Integer()
    length = Nested(AdhesiveLength)
    microlitres = Integer()


class AdhesiveAmounts(Envelope):
    """What a layout takes in adhesive."""

    tape = Nested(AdhesiveLength)
    bead = Nested(AdhesiveLength)
    glue_microlitres = Integer()
    pieces = List(Nested(Sticking))
    photos = List(Nested(Sticking))
    words = List(String())


class Placement(Envelope):
    """Where every piece and photograph lies in gluing order, and what holds them."""

    recipe = String()
    bench = Nested(BenchName)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    language = String()
    cautions = List(String())
    rounding = String(metadata=said("What the marks of the ruler do to the places; empty where they show all."))
    findings = List(Nested(Finding), metadata=said("What the bench lacks to hold a piece."))
    adhesive = Nested(AdhesiveAmounts)
    steps = List(Nested(PlaceStep))
