"""What parameters of queries are made of, and how a query is read: what is unknown, repeated or wrong is refused."""

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NoReturn

from flask import Request
from marshmallow import RAISE, Schema, ValidationError
from marshmallow.fields import Float, Integer, String
from marshmallow.validate import Length, OneOf, Range, Regexp
from webargs.flaskparser import FlaskParser

from spreadwright.errors import SpreadwrightError, nearest_hint

RANGE = r"\d{1,6}|\d{1,6}\.\.(\d{1,6})?|\.\.\d{1,6}"
"""A number, or a range of which either side may be open."""


@dataclass(frozen=True, slots=True)
class WrongParameter:
    """One thing that is wrong with a query."""

    code: str
    name: str
    message: str
    remedy: str


class BadQuery(SpreadwrightError):
    """A query with parameters that are unknown, repeated or wrong."""

    def __init__(self, wrong: Iterable[WrongParameter]) -> None:
        self.wrong = tuple(wrong)
        super().__init__(self.wrong)

    def __str__(self) -> str:
        return " ".join(f"{each.message} {each.remedy}" for each in self.wrong)


def wrong(name: str, message: str, remedy: str) -> BadQuery:
    """One parameter that is wrong, as the whole of it."""
    return BadQuery([WrongParameter("wrong-parameter", name, message, remedy)])


class Query(Schema):
    """No parameters."""


class Whole(Integer):
    """A whole number in plain digits."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if not re.fullmatch(r"-?[0-9]{1,300}", str(value)):
            raise ValidationError("is not a whole number")
        return super()._deserialize(value, attr, data, **kwargs)


class Decimal(Float):
    """A number in plain digits, with a point or without."""

    def _deserialize(self, value: Any, attr: str | None, data: Mapping[str, Any] | None, **kwargs: Any) -> Any:
        if not re.fullmatch(r"-?[0-9]{1,9}(\.[0-9]{1,9})?", str(value)):
            raise ValidationError("is not a number")
        return super()._deserialize(value, attr, data, **kwargs)


def text(description: str, most: int = 300, *, is_line: bool = False, **options: Any) -> String:
    """A parameter that is a text of at most so many characters; a line of it has no control characters."""
    length = Length(1, most, error="is not from {min} to {max} characters long")
    plain = Regexp(r"[^\x00-\x1f\x7f]*\Z", error="has control characters")
    return String(validate=[length, plain] if is_line else length, metadata={"description": description}, **options)


def one_of(description: str, known: Sequence[str], **options: Any) -> String:
    """A parameter that is one of those known, which the description tells."""
    described = description.format(known=", ".join(known))
    return String(
        validate=OneOf(known, error="has a value that is not known"), metadata={"description": described}, **options
    )


def whole(description: str, *, least: int, most: int, **options: Any) -> Whole:
    """A parameter that is a whole number from least to most."""
    between = Range(least, most, error="is not from {min} to {max}")
    return Whole(validate=between, metadata={"description": description}, **options)


def whole_or_range(what: str) -> String:
    """A parameter that is a whole number, or a range of them."""
    matches = Regexp(f"({RANGE})\\Z", error="is no number or range")
    return String(validate=matches, metadata={"description": f"{what}: a number, or a range like `2..4` or `3..`."})


def several(what: str) -> String:
    """A parameter that is one text or more, parted by commas."""
    return text(f"{what}; several, parted by commas, must all be there.")


class QueryParser(FlaskParser):
    """Refuses parameters that are unknown, repeated or wrong, all of them at once."""

    DEFAULT_VALIDATION_STATUS = 400
    DEFAULT_UNKNOWN_BY_LOCATION: dict[str, str | None] = {"query": RAISE}  # noqa: RUF012 - the base's type

    def load_querystring(self, req: Request, schema: Schema) -> Any:
        """The query, each parameter once."""
        repeated = [name for name, values in req.args.lists() if len(values) > 1 and name in schema.fields]
        if repeated:
            raise BadQuery(
                WrongParameter("parameter-twice", name, f"The parameter “{name}” stands twice.", "Keep one of them.")
                for name in repeated
            )
        return super().load_querystring(req, schema)

    def handle_error(self, error: ValidationError, req: Request, schema: Schema, **_: Any) -> NoReturn:
        """Says what is wrong with each parameter."""
        messages: Any = error.messages
        raise BadQuery(_wrong_one(name, found, schema) for name, found in messages.get("query", messages).items())


def _wrong_one(name: str, found: Any, schema: Schema) -> WrongParameter:
    if name not in schema.fields:
        message = f"The parameter “{name[:60]}” is not known here."
        return WrongParameter("unknown-parameter", name[:60], message, nearest_hint(name[:60], schema.fields))
    described = schema.fields[name].metadata.get("description", "")
    reason = found[0] if isinstance(found, list) else str(found)
    if schema.fields[name].required and reason == schema.fields[name].error_messages["required"]:
        return WrongParameter("missing-parameter", name, f"The parameter “{name}” is missing.", described)
    return WrongParameter("wrong-parameter", name, f"The parameter “{name}” {reason}.", described)
