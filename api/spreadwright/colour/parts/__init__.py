"""The parts of a colourway's score, one formula a file; each is from 0 to 1.

A part adds up values of single surfaces and values of two surfaces that meet, each with its share of the whole, so that
a search can judge a colourway before all of it is known.
"""

from spreadwright.colour.parts.balance import balance
from spreadwright.colour.parts.calm import calm
from spreadwright.colour.parts.captions import captions
from spreadwright.colour.parts.grey import grey
from spreadwright.colour.parts.part import Part
from spreadwright.colour.parts.separation import separation

WEIGHTS = {"separation": 28, "grey": 18, "calm": 12, "balance": 27, "captions": 15}
"""How much each part counts, in hundredths; where a recipe has nothing to judge by one, the others share its weight."""

FORMULAS = {"separation": separation, "grey": grey, "calm": calm, "balance": balance, "captions": captions}

__all__ = ["FORMULAS", "WEIGHTS", "Part", "balance", "calm", "captions", "grey", "separation"]
