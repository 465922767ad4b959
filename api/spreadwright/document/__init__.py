"""Text to model and back; the only room that knows JSON."""

from spreadwright.document.pictures import (
    MOST_PICTURE_PIXELS,
    PICTURE_SUFFIXES,
    Pictures,
    bare_picture,
    is_plain_name,
)
from spreadwright.document.pointer import position
from spreadwright.document.read import (
    AnyReading,
    Reading,
    read_any,
    read_bench,
    read_paper_set,
    read_pieces,
    read_recipe,
    slug,
)
from spreadwright.document.schema import KINDS, schema, schema_bytes
from spreadwright.document.short import is_short, pieces_in_short, stock_in_short
from spreadwright.document.text import MOST_BYTES
from spreadwright.document.write import canonical, content_document, sheet_document

__all__ = [
    "KINDS",
    "MOST_BYTES",
    "MOST_PICTURE_PIXELS",
    "PICTURE_SUFFIXES",
    "AnyReading",
    "Pictures",
    "Reading",
    "bare_picture",
    "canonical",
    "content_document",
    "is_plain_name",
    "is_short",
    "pieces_in_short",
    "position",
    "read_any",
    "read_bench",
    "read_paper_set",
    "read_pieces",
    "read_recipe",
    "schema",
    "schema_bytes",
    "sheet_document",
    "slug",
    "stock_in_short",
]
