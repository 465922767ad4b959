"""The shapes of what is answered about cutting; `tasks.answers` fills them."""

from marshmallow.fields import Boolean, Integer, List, Nested, String

from spreadwright.rest.envelopes import BenchName, Envelope, Place, said, texts


class Part(Envelope):
    """One part of a sheet: a piece, a spare or scrap."""

    id = String()
    use = String()
    mark = String(allow_none=True)
    pile = String(allow_none=True)
    place = Nested(Place)


class CutSheet(Envelope):
    """One sheet and its parts, in the order in which they fall."""

    number = Integer()
    role = String()
    size = Nested(Place, allow_none=True)
    parts = List(Nested(Part))


class TrimmerReading(Envelope):
    """What to set at the trimmer; `ticks` lies on a mark of its scale, `exact_ticks` is what was wanted."""

    ticks = Integer()
    exact_ticks = Integer()
    text = String()


class Share(Envelope):
    """What falls or stays: a part that is done, or one to be cut on."""

    fate = String()
    id = String(allow_none=True)
    ids = texts()
    until = Integer(allow_none=True)
    place = Nested(Place)


class CutWords(Envelope):
    """One step in words; the caution comes first."""

    caution = String(allow_none=True)
    board = String()
    setting = String()
    falls = String()
    stays = String()
    mark = String(metadata=said("What to pencil on pieces that would not show later which way up they lay."))
    together = String()


class CutStep(Envelope):
    """One cut at the trimmer."""

    number = Integer()
    sheet = Integer()
    sheets = List(Integer())
    on_board = Nested(Place)
    arrival = String()
    set_aside_at = Integer(allow_none=True)
    axis = String()
    quarter_turns_left = Integer()
    turned_now = Boolean()
    turned = Integer()
    measures = String()
    reading = Nested(TrimmerReading)
    set_now = Boolean()
    falls = Nested(Share)
    stays = Nested(Share)
    words = Nested(CutWords)


class PieceName(Envelope):
    """A piece and its mark in instructions."""

    id = String()
    mark = String()


class Pile(Envelope):
    """The pieces of one page."""

    page = String()
    pieces = List(Nested(PieceName))


class Effort(Envelope):
    """What cutting costs: narrow strips held, settings, quarter turns, and parts picked up again."""

    narrow_held = Integer()
    settings = Integer()
    quarter_turns = Integer()
    pick_ups = Integer()
    reach_ticks = Integer()
    sum = Integer()


class Cuts(Envelope):
    """The cut sheets, the steps at the trimmer and the piles."""

    recipe = String()
    bench = Nested(BenchName)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    language = String()
    effort = Nested(Effort)
    cautions = texts()
    rounding = String(metadata=said("What the marks of the scale do to the sizes; empty where they show all."))
    sheets = List(Nested(CutSheet))
    steps = List(Nested(CutStep))
    piles = List(Nested(Pile))
