"""From placements to pieces on pages and steps with the ruler."""

from spreadwright.placing.adhesive import Adhesives, Stick, Sticking, adhesive_findings, adhesives, glued, sticking
from spreadwright.placing.adhesive_words import adhesive_words, millilitres
from spreadwright.placing.check import placing_findings
from spreadwright.placing.draft import draft_findings, role_of
from spreadwright.placing.layers import PlacedPiece, placed_pieces
from spreadwright.placing.locate import Located
from spreadwright.placing.marked import marked
from spreadwright.placing.measures import EQUAL, Measure
from spreadwright.placing.moves import COSTS, PAGE, End, Line, Move, MoveKind, cost_of
from spreadwright.placing.steps import PlaceStep, in_layers, place_steps
from spreadwright.placing.words import cautions, distance, edge_name, rounding

__all__ = [
    "COSTS",
    "EQUAL",
    "PAGE",
    "Adhesives",
    "End",
    "Line",
    "Located",
    "Measure",
    "Move",
    "MoveKind",
    "PlaceStep",
    "PlacedPiece",
    "Stick",
    "Sticking",
    "adhesive_findings",
    "adhesive_words",
    "adhesives",
    "cautions",
    "cost_of",
    "distance",
    "draft_findings",
    "edge_name",
    "glued",
    "in_layers",
    "marked",
    "millilitres",
    "place_steps",
    "placed_pieces",
    "placing_findings",
    "role_of",
    "rounding",
    "sticking",
]
