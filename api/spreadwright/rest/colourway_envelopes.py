"""The shapes of what is answered about colourways; `tasks.answers` and `tasks.ranking_answers` fill them."""

from marshmallow.fields import Boolean, Dict, Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import ChosenPaper, Envelope, Finding, relations, said

_PARTS = "`separation`, `grey`, `calm`, `balance`, `captions`; those by which the recipe can be judged."


class ColourwayItem(Envelope):
    """One colourway."""

    id = String()
    set = String()
    roles = Dict(keys=String(), values=Nested(ChosenPaper))
    links = relations()


class ColourwayList(Envelope):
    """One page of the list of colourways."""

    recipe = String()
    set = String()
    count = Integer(metadata=said("How many there are in all."))
    start = Integer()
    colourways = List(Nested(ColourwayItem))


class RankedColourway(ColourwayItem):
    """One colourway, what it is worth, and why it ranks where it does."""

    rank = Integer(metadata=said("1 is the best."))
    score = Float(metadata=said("0 to 100, the weighted sum of the parts."))
    parts = Dict(keys=String(), values=Float(), metadata=said(f"0 to 100 each: {_PARTS}"))
    reason = String(metadata=said("In the language of the answer."))


class ColourwayRanking(Envelope):
    """The colourways that please most, different from one another, the best one first."""

    recipe = String()
    language = String()
    sets = List(String(), metadata=said("Those in which the recipe can be laid."))
    count = Integer(metadata=said("How many colourways there are in them."))
    pool = Integer(metadata=said("How many of the best these were chosen from for being different."))
    proved = Boolean(metadata=said("Whether no colourway is better than the first."))
    lacks_sheets = Boolean(metadata=said("No colourway gets along with the sheets at hand."))
    weights = Dict(keys=String(), values=Float(), metadata=said(f"Hundredths of the score: {_PARTS}"))
    findings = List(Nested(Finding), metadata=said("Sets that fill no role, or have few papers."))
    colourways = List(Nested(RankedColourway))
