"""The parameters of queries: what may stand after the question mark."""

from marshmallow.validate import Range

from spreadwright.rest.parameters import Decimal, Query, one_of, several, text, whole, whole_or_range
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.draw import NARROWEST_PX, WIDEST_PX
from spreadwright.tasks.photos import Border
from spreadwright.words import LANGUAGES

FURTHEST = 250_000
"""How far into a list one can reach: each colourway before it must be passed over, and so many are within a second."""


LEAST_SECONDS, MOST_SECONDS = 0.1, 20.0
"""Of a search for a plan: a request must not hold a worker for longer."""


_ORDERS = ("id", "title", "created", "changed", "pages", "sheets", "photos", "cuts")


class PageQuery(Query):
    """Which stretch of a list."""

    start = whole("How many items to pass over first.", load_default=0, least=0, most=FURTHEST)
    limit = whole("The most items to list.", load_default=20, least=1, most=100)


STATES = ("published", "draft", "withdrawn")
SORTS = tuple(f"{sign}{name}" for name in _ORDERS for sign in ("", "-"))


class FilterQuery(Query):
    """Which documents of a kind, in which order, and what of each."""

    class Meta:
        """`fields` is taken as a name by the class."""

        include = {  # noqa: RUF012 - the base's type
            "fields": text("Members of each item, parted by commas; the id is always there.")
        }

    limit = whole("The most items to list.", load_default=20, least=1, most=100)
    after = text("Where the page begins, as the link to it says; made by the service.", 500)
    q = text("Words that all stand in it, or begin a word that does.", 200)
    tag = several("A tag")
    author = several("An author")
    licence = text("The licence (SPDX).")
    lang = text("The language that it is written in.")
    state = one_of(
        "How far it is from its readers: {known}. Others than published are for owners and reviewers.",
        STATES,
        load_default="published",
    )
    owner = text("Who made it.")
    sort = one_of("The order: {known}.", SORTS, load_default="id")


class RecipesQuery(FilterQuery):
    """Which recipes."""

    role = several("The id of a role")
    page_size = text("The size of its pages, such as `12x12` (inches) or `297 mm x 210 mm`.")
    pages = whole_or_range("How many pages")
    sheets = whole_or_range("How many sheets are cut")
    photos = whole_or_range("How many photos")
    cuts = whole_or_range("How many cuts at the trimmer")


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

    bench = text("The id of the bench: whose trimmer and ruler. When left out: one in the unit of the document.")


class LanguageQuery(Query):
    """In which language instructions speak."""

    language = one_of(
        "In which it speaks: {known}. When left out: what the client accepts, else the recipe's, else English.",
        LANGUAGES,
    )


class InstructionsQuery(BenchQuery, LanguageQuery):
    """On whose bench, and in which language."""


class PapersQuery(Query):
    """In which papers."""

    set = text("The id of the paper set. When left out: the colourway's, or the first set that fills every role.")
    colourway = text("The id of one colourway of the set. When left out: the best one.")


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

    page = one_of("The paper that it is printed on: {known}.", [each.value for each in Format], load_default="a4")


class PhotosQuery(InstructionsQuery):
    """On whose bench, in which language, and with which border."""

    border = one_of(
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

    page = one_of("The paper that is printed on: {known}.", [each.value for each in Format], load_default="a4")


class ColourwaysQuery(LanguageQuery):
    """Of which paper set, how many, and in which language they are told about."""

    set = text("The id of the paper set. When left out: the best of all sets.")
    n = whole("How many, the best one first; fewer where no others look different.", load_default=12, least=1, most=100)


class PrintedQuery(LanguageQuery, PictureQuery):
    """In which language, how wide, and on which paper."""

    page = one_of("The paper that a PDF is printed on: {known}.", [each.value for each in Format], load_default="a4")


class ContactSheetQuery(PrintedQuery):
    """Of which paper set, and how many."""

    set = text("The id of the paper set. When left out: the best of all sets.")
    n = whole("How many, the best one first; fewer where no others look different.", load_default=12, least=1, most=24)


class SetSheetQuery(PrintedQuery):
    """Which stretch of the recipes."""

    after = text("Where the stretch begins, as the link to it says; made by the service.", 500)
    limit = whole("The most recipes to show.", load_default=24, least=1, most=24)


class StripQuery(PapersQuery, PrintedQuery):
    """Of which colourway."""


class AllColourwaysQuery(PageQuery):
    """Of which paper set, and which stretch of the list."""

    set = text("The id of the paper set. When left out: the first set that fills every role.")


class CheckQuery(BenchQuery, PapersQuery):
    """On whose bench, and in which papers."""

    set = text("The id of a paper set that should fill the roles of a recipe.")
    colourway = text("The id of one colourway of that set, to be checked too.")


class PlanQuery(Query):
    """Within which limits, how long, and how many plans."""

    bench = text("The id of the bench whose limits are kept. When left out: no limits.")
    stock = text(
        "Sheets in place of the document's own, like `12x12*2; 8x10 print`: a size, how many "
        "(otherwise as many as are needed), and a role (otherwise there are so many in every role).",
        2000,
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

    recipe = text("The id of the recipe on whose mats the photographs are to lie.")
    set = text("The id of the paper set; several of its colourways are given. When left out: the best of every set.")
    n = whole("How many sets or colourways, at most.", load_default=4, least=1, most=12)
    focus = text(
        "Points to crop about, like `30,40` for one photo, else `beach.jpg=30,40; 2=50,10`: percent "
        "from the left and from the top.",
        2000,
    )


class EmbedQuery(Query):
    """Which page, and how large."""

    url = text("The address of the page of a recipe.", 1000, required=True)
    maxwidth = whole("The greatest width, pixels.", load_default=1200, least=16, most=6000)
    maxheight = whole("The greatest height, pixels.", load_default=1200, least=16, most=6000)
    format = one_of("Only `{known}` is served.", ["json"], load_default="json")


class NoteQuery(Query):
    """Why."""

    note = text("Why, in a sentence; kept with the revision.", 500, is_line=True)


class NewQuery(NoteQuery):
    """Under which id, and why."""

    id = text(
        "The id that it is to have. When left out: made from its title, and numbered where that is taken.",
        60,
        is_line=True,
    )


class ReasonQuery(Query):
    """Why not."""

    note = text("What its author should change.", 2000, is_line=True, required=True)
