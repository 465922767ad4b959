"""The parameters of queries: what may stand after the question mark, and what is said when something else does."""

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
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.draw import NARROWEST_PX, WIDEST_PX
from spreadwright.tasks.photos import Border
from spreadwright.words import LANGUAGES

FURTHEST = 250_000
"""How far into a list one can reach: each colourway before it must be passed over, and so many are within a second."""


LEAST_SECONDS, MOST_SECONDS = 0.1, 20.0
"""Of a search for a plan: a request must not hold a worker for longer."""


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


def _name(description: str, **options: Any) -> String:
    length = Length(1, 300, error="has no or too many characters")
    return String(validate=length, metadata={"description": description}, **options)


def _one_of(description: str, known: Sequence[str], **options: Any) -> String:
    described = description.format(known=", ".join(known))
    return String(
        validate=OneOf(known, error="has a value that is not known"), metadata={"description": described}, **options
    )


def whole(description: str, *, least: int, most: int, **options: Any) -> Whole:
    """A parameter that is a whole number from least to most."""
    between = Range(least, most, error="is not from {min} to {max}")
    return Whole(validate=between, metadata={"description": description}, **options)


_ORDERS = ("id", "title", "created", "changed", "pages", "sheets", "photos", "cuts")


class Query(Schema):
    """No parameters."""


class PageQuery(Query):
    """Which stretch of a list."""

    start = whole("How many items to pass over first.", load_default=0, least=0, most=FURTHEST)
    limit = whole("The most items to list.", load_default=20, least=1, most=100)


RANGE = r"\d{1,6}|\d{1,6}\.\.(\d{1,6})?|\.\.\d{1,6}"
"""A number, or a range of which either side may be open."""
STATES = ("published", "draft", "withdrawn")
SORTS = tuple(f"{sign}{name}" for name in _ORDERS for sign in ("", "-"))


def _range(what: str) -> String:
    matches = Regexp(f"({RANGE})\\Z", error="is no number or range")
    return String(validate=matches, metadata={"description": f"{what}: a number, or a range like `2..4` or `3..`."})


def _labels(what: str) -> String:
    return String(
        validate=Length(1, 300, error="has no or too many characters"),
        metadata={"description": f"{what}; several, parted by commas, must all be there."},
    )


class FilterQuery(Query):
    """Which documents of a kind, in which order, and what of each."""

    class Meta:
        """`fields` is taken as a name by the class."""

        include = {  # noqa: RUF012 - the base's type
            "fields": String(
                validate=Length(1, 300, error="has no or too many characters"),
                metadata={"description": "Members of each item, parted by commas; the id is always there."},
            )
        }

    limit = whole("The most items to list.", load_default=20, least=1, most=100)
    after = String(
        validate=Length(1, 500, error="has no or too many characters"),
        metadata={"description": "Where the page begins, as the link to it says; made by the service."},
    )
    q = String(
        validate=Length(1, 200, error="has no or too many characters"),
        metadata={"description": "Words that all stand in it, or begin a word that does."},
    )
    tag = _labels("A tag")
    author = _labels("An author")
    licence = _name("The licence (SPDX).")
    lang = _name("The language that it is written in.")
    state = _one_of(
        "How far it is from its readers: {known}. Others than published are for owners and reviewers.",
        STATES,
        load_default="published",
    )
    owner = _name("Who made it.")
    sort = _one_of("The order: {known}.", SORTS, load_default="id")


class RecipesQuery(FilterQuery):
    """Which recipes."""

    role = _labels("The id of a role")
    page_size = _name("The size of its pages, such as `12x12` (inches) or `297 mm x 210 mm`.")
    pages = _range("How many pages")
    sheets = _range("How many sheets are cut")
    photos = _range("How many photos")
    cuts = _range("How many cuts at the trimmer")


class RevisionsQuery(Query):
    """Which stretch of the revisions."""

    before = whole("Only those with smaller numbers.", least=1, most=2**31 - 1)
    limit = whole("The most revisions to list.", load_default=50, least=1, most=100)


class ChangesQuery(Query):
    """Since when."""

    since = whole("The number of the revision to compare with. When left out: the one before.", least=1, most=10**9)


class PictureQuery(Query):
    """How a picture is rendered."""

    width = whole(
        f"Width of a PNG in pixels, {NARROWEST_PX} to {WIDEST_PX}.",
        load_default=1200,
        least=NARROWEST_PX,
        most=WIDEST_PX,
    )


class BenchQuery(Query):
    """On whose bench."""

    bench = _name("The id of the bench: whose trimmer and ruler. When left out: one in the unit of the document.")


class LanguageQuery(Query):
    """In which language instructions speak."""

    language = _one_of(
        "In which it speaks: {known}. When left out: what the client accepts, else the recipe's, else English.",
        LANGUAGES,
    )


class InstructionsQuery(BenchQuery, LanguageQuery):
    """On whose bench, and in which language."""


class PapersQuery(Query):
    """In which papers."""

    set = _name("The id of the paper set. When left out: the colourway's, or the first set that fills every role.")
    colourway = _name("The id of one colourway of the set. When left out: the best one.")


class PreviewQuery(PapersQuery, PictureQuery):
    """In which papers, and how wide."""


class CutsQuery(InstructionsQuery, PictureQuery):
    """On whose bench, in which language, which sheet, and how wide."""

    sheet = whole(
        "The number of the sheet to draw, for SVG and PNG. When left out: the first that is cut.",
        least=1,
        most=10_000,
    )


class PlacementQuery(InstructionsQuery, PictureQuery):
    """On whose bench, in which language, and how wide."""


class BookletQuery(InstructionsQuery, PapersQuery):
    """On whose bench, in which papers, on which paper it is printed, and in which language."""

    page = _one_of("The paper that it is printed on: {known}.", [each.value for each in Format], load_default="a4")


class PhotosQuery(InstructionsQuery):
    """On whose bench, in which language, and with which border."""

    border = _one_of(
        "The border round every photo: {known}; as the recipe says, 1/8 in, or 1/4 in.",
        [each.value for each in Border],
        load_default="recipe",
    )


class CutPathsQuery(BenchQuery):
    """In the order of whose bench, and which sheet."""

    sheet = whole(
        "The number of the sheet, for SVG and DXF. When left out: the first that is cut.", least=1, most=10_000
    )


class TemplatesQuery(InstructionsQuery):
    """On whose bench, in which language, and on which paper it is printed."""

    page = _one_of("The paper that is printed on: {known}.", [each.value for each in Format], load_default="a4")


class ColourwaysQuery(LanguageQuery):
    """Of which paper set, how many, and in which language they are told about."""

    set = _name("The id of the paper set. When left out: the best of all sets.")
    n = whole("How many, the best one first; fewer where no others look different.", load_default=12, least=1, most=100)


class PrintedQuery(LanguageQuery, PictureQuery):
    """In which language, how wide, and on which paper."""

    page = _one_of("The paper that a PDF is printed on: {known}.", [each.value for each in Format], load_default="a4")


class ContactSheetQuery(PrintedQuery):
    """Of which paper set, and how many."""

    set = _name("The id of the paper set. When left out: the best of all sets.")
    n = whole("How many, the best one first; fewer where no others look different.", load_default=12, least=1, most=24)


class SetSheetQuery(PrintedQuery):
    """Which stretch of the recipes."""

    after = String(
        validate=Length(1, 500, error="has no or too many characters"),
        metadata={"description": "Where the stretch begins, as the link to it says; made by the service."},
    )
    limit = whole("The most recipes to show.", load_default=24, least=1, most=24)


class StripQuery(PapersQuery, PrintedQuery):
    """Of which colourway."""


class AllColourwaysQuery(PageQuery):
    """Of which paper set, and which stretch of the list."""

    set = _name("The id of the paper set. When left out: the first set that fills every role.")


class CheckQuery(BenchQuery, PapersQuery):
    """On whose bench, and in which papers."""

    set = _name("The id of a paper set that should fill the roles of a recipe.")
    colourway = _name("The id of one colourway of that set, to be checked too.")


class PlanQuery(Query):
    """Within which limits, how long, and how many plans."""

    bench = _name("The id of the bench whose limits are kept. When left out: no limits.")
    stock = String(
        validate=Length(1, 2000, error="is not from {min} to {max} characters long"),
        metadata={
            "description": "Sheets in place of the document's own, like `12x12*2; 8x10 print`: a size, how many "
            "(otherwise as many as are needed), and a role (otherwise there are so many in every role)."
        },
    )
    seconds = Decimal(
        validate=Range(LEAST_SECONDS, MOST_SECONDS, error="is not from {min} to {max}"),
        load_default=5.0,
        metadata={"description": "The longest time to search."},
    )
    seed = whole("Where chance begins; the same seed gives the same plan.", load_default=1, least=1, most=2**31 - 1)
    n = whole("How many plans of the same cost, if so many are found.", load_default=1, least=1, most=10)


class MatchQuery(LanguageQuery, PictureQuery):
    """On whose mats, in which papers, cropped about which points, and how wide."""

    recipe = _name("The id of the recipe on whose mats the photographs are to lie.")
    set = _name("The id of the paper set; several of its colourways are given. When left out: the best of every set.")
    n = whole("How many sets or colourways, at most.", load_default=4, least=1, most=12)
    focus = String(
        validate=Length(1, 2000, error="is not from {min} to {max} characters long"),
        metadata={
            "description": "Points to crop about, like `30,40` for one photo, else `beach.jpg=30,40; 2=50,10`: percent "
            "from the left and from the top."
        },
    )


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
        raise BadQuery(_wrong(name, found, schema) for name, found in messages.get("query", messages).items())


def _wrong(name: str, found: Any, schema: Schema) -> WrongParameter:
    if name not in schema.fields:
        message = f"The parameter “{name[:60]}” is not known here."
        return WrongParameter("unknown-parameter", name[:60], message, nearest_hint(name[:60], schema.fields))
    reason = found[0] if isinstance(found, list) else str(found)
    described = schema.fields[name].metadata.get("description", "")
    return WrongParameter("wrong-parameter", name, f"The parameter “{name}” {reason}.", described)
