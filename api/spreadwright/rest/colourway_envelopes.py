"""The shapes of what is answered about ranked colourways; `tasks.ranking_answers` fills them."""

from marshmallow.fields import Boolean, Dict, Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import ColourwayItem, Envelope, Finding

_PARTS = "`separation`, `grey`, `calm`, `balance`, `captions`; those by which the recipe can be judged."


class RankedColourway(ColourwayItem):
    """One colourway, what it is worth, and why it ranks where it does."""

    rank = Integer(metadata={"description": "1 is the best."})
    score = Float(metadata={"description": "0 to 100, the weighted sum of the parts."})
    parts = Dict(keys=String(), values=Float(), metadata={"description": f"0 to 100 each: {_PARTS}"})
    reason = String(metadata={"description": "In the language of the answer."})


class ColourwayRanking(Envelope):
    """The colourways that please most, different from one another, the best one first."""

    recipe = String()
    language = String()
    sets = List(String(), metadata={"description": "Those in which the recipe can be laid."})
    count = Integer(metadata={"description": "How many colourways there are in them."})
    pool = Integer(metadata={"description": "How many of the best these were chosen from for being different."})
    proved = Boolean(metadata={"description": "Whether no colourway is better than the first."})
    lacks_sheets = Boolean(metadata={"description": "No colourway gets along with the sheets at hand."})
    weights = Dict(keys=String(), values=Float(), metadata={"description": f"Hundredths of the score: {_PARTS}"})
    findings = List(Nested(Finding), metadata={"description": "Sets that fill no role, or have few papers."})
    colourways = List(Nested(RankedColourway))
