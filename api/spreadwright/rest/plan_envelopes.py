"""The shapes of what is answered about plans; `tasks.plan_answers` fills them."""

from marshmallow.fields import Boolean, Dict, Integer, List, Nested, String

from spreadwright.rest.envelopes import BenchName, Envelope, said, texts


class SpareSize(Envelope):
    """Width and height of a spare, ticks, and in words."""

    width = Integer()
    height = Integer()
    text = String()


class Certificate(Envelope):
    """What is proved about the sheets of one role."""

    role = String()
    standing = String(metadata=said("`optimal` in cost and value, or `stopped` where a better plan may exist."))
    cost = Integer(metadata=said("Of the sheets that are cut; where none has a cost, their number."))
    lower_bound = Integer(metadata=said("No plan costs less."))
    gap = Integer()
    value = Integer(metadata=said("Of the optional pieces that are cut."))
    most_value = Integer(metadata=said("No plan of that cost has optional pieces of more value."))
    gathered = Boolean(metadata=said("Whether it is proved that no plan of that cost and value leaves a larger spare."))
    reason = String()
    binding = texts()


class Plan(Envelope):
    """How every sheet is cut, what is left over, and what is proved."""

    optimal = Boolean()
    sheet_count = Integer()
    sheets = List(Dict(), metadata=said("As the `sheets` of a recipe in the unit of the document."))
    spares = List(Nested(SpareSize), metadata=said("The largest first."))
    left_out = List(String(), metadata=said("Names of optional pieces that are not cut."))
    certificates = List(Nested(Certificate))
    recipe = Dict(allow_none=True, metadata=said("The posted recipe with these sheets, if one was posted."))


class Plans(Envelope):
    """Plans of the same cost."""

    title = String()
    unit = String()
    bench = Nested(BenchName, allow_none=True)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    objective = List(String(), metadata=said("What makes a plan better, the first in which two differ."))
    plans = List(Nested(Plan))
