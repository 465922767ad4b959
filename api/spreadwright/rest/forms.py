"""The forms in which a thing is served: JSON, pictures, tables, paths, each with the function that makes its bytes."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from marshmallow import Schema

from spreadwright.document import canonical
from spreadwright.tasks.draw import as_pdf, as_png

Arguments = Mapping[str, Any]
"""The parameters of a query, read and with their defaults."""

Make = Callable[..., bytes]
"""Takes the arguments, then the documents that the view found."""

Shape = type[Schema] | Mapping[str, Any]
"""A marshmallow schema, or a JSON Schema as it stands in OpenAPI."""

JSON, SCHEMA_JSON, SVG, PNG, JPEG, PDF = (
    "application/json",
    "application/schema+json",
    "image/svg+xml",
    "image/png",
    "image/jpeg",
    "application/pdf",
)
CSV, DXF, ZIP = "text/csv", "image/vnd.dxf", "application/zip"
HTML = "text/html"
_BINARY = {"type": "string", "format": "binary"}


@dataclass(frozen=True, slots=True)
class Form:
    """One representation: how it is asked for, and how it is made.

    Attributes:
        is_work: Whether making it takes work worth counting.
        is_quick: Whether it is made at once, however long other representations of the same take.
    """

    suffix: str
    media_type: str
    make: Make
    shape: Shape
    is_work: bool = True
    is_quick: bool = False


def json_form(answer: Callable[..., Any], shape: Shape, *, is_work: bool = True, is_quick: bool = False) -> Form:
    """The JSON of what `answer` returns."""
    return Form("json", JSON, lambda *found: canonical(answer(*found)), shape, is_work, is_quick)


def pdf_form(make: Make) -> Form:
    """A PDF that is more than pictures."""
    return Form("pdf", PDF, make, _BINARY)


def html_form(make: Make) -> Form:
    """A page for people."""
    return Form("html", HTML, make, {"type": "string"})


def csv_form(make: Make) -> Form:
    """A table for spreadsheets."""
    return Form("csv", CSV, make, {"type": "string"})


def path_forms(make: Callable[..., bytes], every: Make) -> tuple[Form, ...]:
    """SVG and DXF of one sheet's cut paths, whose format `make` takes first; an archive of all of them."""
    return (
        Form("svg", SVG, partial(make, "svg"), {"type": "string"}),
        Form("dxf", DXF, partial(make, "dxf"), _BINARY),
        Form("zip", ZIP, every, _BINARY),
    )


def picture_forms(one: Callable[..., bytes], printed: Make | None = None) -> tuple[Form, ...]:
    """SVG, PNG and PDF of one picture; where it is printed in another way than as it is, `printed` makes the PDF."""
    return (
        Form("svg", SVG, one, {"type": "string"}),
        Form("png", PNG, lambda arguments, *found: as_png(one(arguments, *found), arguments["width"]), _BINARY),
        Form("pdf", PDF, printed or (lambda *found: as_pdf((one(*found),))), _BINARY),
    )
