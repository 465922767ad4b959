"""The forms in which one thing is served: JSON, SVG, PNG and PDF, each with the function that makes its bytes."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
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

JSON, SCHEMA_JSON, SVG, PNG, PDF = (
    "application/json",
    "application/schema+json",
    "image/svg+xml",
    "image/png",
    "application/pdf",
)
_BINARY = {"type": "string", "format": "binary"}


@dataclass(frozen=True, slots=True)
class Form:
    """One representation: how it is asked for, and how it is made."""

    suffix: str
    media_type: str
    make: Make
    shape: Shape


def json_form(answer: Callable[..., Any], shape: Shape) -> Form:
    """The JSON of what `answer` returns."""
    return Form("json", JSON, lambda *found: canonical(answer(*found)), shape)


def pdf_form(make: Make) -> Form:
    """A PDF that is more than pictures."""
    return Form("pdf", PDF, make, _BINARY)


def picture_forms(one: Callable[..., bytes], every: Callable[..., Sequence[bytes]] | None = None) -> tuple[Form, ...]:
    """SVG, PNG and PDF of one picture; the PDF has `every` picture, a page each, where there are several."""
    pages = every or (lambda *found: (one(*found),))
    return (
        Form("svg", SVG, one, {"type": "string"}),
        Form("png", PNG, lambda arguments, *found: as_png(one(arguments, *found), arguments["width"]), _BINARY),
        Form("pdf", PDF, lambda *found: as_pdf(pages(*found)), _BINARY),
    )
