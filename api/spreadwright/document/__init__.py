"""Text to model and back; the only room that knows JSON."""

from spreadwright.document.pointer import position
from spreadwright.document.read import AnyReading, Reading, read_any, read_bench, read_paper_set, read_recipe, slug
from spreadwright.document.schema import KINDS, schema, schema_bytes
from spreadwright.document.text import MOST_BYTES
from spreadwright.document.write import canonical

__all__ = [
    "KINDS",
    "MOST_BYTES",
    "AnyReading",
    "Reading",
    "canonical",
    "position",
    "read_any",
    "read_bench",
    "read_paper_set",
    "read_recipe",
    "schema",
    "schema_bytes",
    "slug",
]
