"""Each kind of document as frozen values; no behaviour beyond looking up by id."""

from spreadwright.model.bench import INCH_BENCH, Bench, Measures, Trimmer
from spreadwright.model.cut_tree import Axis, Branch, Content, Leaf, Split, Use, leaf_count, leaves, mirrored
from spreadwright.model.naming import MOST_PARTS, Namer, is_too_large, leaf_name, part_count, piece_roles
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
from spreadwright.model.wanted import PieceList, Stock, Wanted

__all__ = [
    "BLANK",
    "INCH_BENCH",
    "MOST_PARTS",
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
    "Namer",
    "Offset",
    "Paper",
    "PaperSet",
    "Pattern",
    "Photo",
    "Piece",
    "PieceList",
    "Placement",
    "Recipe",
    "Role",
    "Sheet",
    "Side",
    "Split",
    "Spread",
    "Stock",
    "Trimmer",
    "Use",
    "Wanted",
    "is_too_large",
    "leaf_count",
    "leaf_name",
    "leaves",
    "mirrored",
    "part_count",
    "piece_hint",
    "piece_roles",
]
