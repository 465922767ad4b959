"""Each kind of document as frozen values; no behaviour beyond looking up by id."""

from spreadwright.model.bench import INCH_BENCH, Bench, Measures, Trimmer
from spreadwright.model.cut_tree import Axis, Branch, Content, Leaf, Split, Use, leaf_count, leaves, mirrored
from spreadwright.model.papers import BLANK, Choice, Colourway, Core, Face, Paper, PaperSet, Pattern
from spreadwright.model.piece import Piece, piece_hint
from spreadwright.model.recipe import (
    Caption,
    Edge,
    Kind,
    Offset,
    Photo,
    Placement,
    Recipe,
    Role,
    Sheet,
    Side,
    Spread,
)

__all__ = [
    "BLANK",
    "INCH_BENCH",
    "Axis",
    "Bench",
    "Branch",
    "Caption",
    "Choice",
    "Colourway",
    "Content",
    "Core",
    "Edge",
    "Face",
    "Kind",
    "Leaf",
    "Measures",
    "Offset",
    "Paper",
    "PaperSet",
    "Pattern",
    "Photo",
    "Piece",
    "Placement",
    "Recipe",
    "Role",
    "Sheet",
    "Side",
    "Split",
    "Spread",
    "Trimmer",
    "Use",
    "leaf_count",
    "leaves",
    "mirrored",
    "piece_hint",
]
