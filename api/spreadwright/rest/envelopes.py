"""The shapes of the answers, as OpenAPI describes them; `tasks.answers` fills them, and a test holds the two together.

Every member is always there. Lengths are whole ticks, 320 to the millimetre and 8128 to the inch.
"""

from typing import Any

from marshmallow import RAISE, Schema
from marshmallow.fields import Boolean, Dict, Field, Float, Integer, List, Nested, Raw, String
from marshmallow.validate import OneOf

from spreadwright.errors import Severity


class Envelope(Schema):
    """A closed object whose members are all required unless they say otherwise."""

    class Meta:
        """Nothing beyond what is described."""

        unknown = RAISE

    def on_bind_field(self, field_name: str, field_obj: Field[Any]) -> None:
        """Requires the member."""
        field_obj.required = not field_obj.metadata.get("optional", False)


def _said(description: str, **more: Any) -> dict[str, Any]:
    return {"description": description, **more}


def _texts() -> List[str]:
    return List(String())


def _links() -> Dict:
    return Dict(keys=String(), values=String(), metadata=_said("Where more of it is, as absolute paths, by relation."))


class ProblemError(Envelope):
    """One thing that is wrong: in a document at a JSON Pointer, or in a parameter of the query."""

    code = String(metadata=_said("Permanent name.", example="row-does-not-fill"))
    severity = String(validate=OneOf([each.value for each in Severity]))
    pointer = String(metadata={"optional": True, **_said("JSON Pointer (RFC 6901) into the document.")})
    parameter = String(metadata={"optional": True, **_said("Name of the parameter.")})
    detail = String(metadata=_said("What was measured."))
    remedy = String(metadata=_said("What would be right."))


class Problem(Envelope):
    """A problem document (RFC 9457)."""

    type = String(metadata=_said("Permanent name of the kind of problem.", format="uri"))
    title = String()
    status = Integer()
    detail = String(metadata={"optional": True, **_said("What went wrong this time.")})
    instance = String(metadata=_said("The path that was asked for."))
    request_id = String(
        metadata={"optional": True, **_said("Names the request, as the header X-Request-Id and the log do.")}
    )
    errors = List(Nested(ProblemError))
    available = List(String(), metadata={"optional": True, **_said("With 406: the media types that exist.")})


class Finding(Envelope):
    """One thing that a check has to say about a document."""

    code = String(metadata=_said("Permanent name.", example="row-does-not-fill"))
    severity = String(validate=OneOf([each.value for each in Severity]))
    where = String(metadata=_said("JSON Pointer (RFC 6901) into the document."))
    message = String()
    remedy = String()


class Report(Envelope):
    """What a check found out about one document."""

    kind = String()
    title = String()
    fine = Boolean(metadata=_said("Whether no finding is an error."))
    findings = List(Nested(Finding))


class Item(Envelope):
    """What a list tells of each document; where `fields` are named, those and the id."""

    id = String()
    title = String()
    summary = String()
    authors = _texts()
    licence = String(metadata=_said("SPDX identifier."))
    language = String()
    tags = _texts()
    state = String(metadata=_said("published, draft or withdrawn."))
    revision = Integer()
    changed_at = String(metadata=_said("When (RFC 3339).", format="date-time"))
    links = _links()

    def on_bind_field(self, field_name: str, field_obj: Field[Any]) -> None:
        """Requires the id alone."""
        field_obj.required = field_name == "id"


class RecipeFigures(Item):
    """What somebody wants to know of a recipe when choosing."""

    pages = Integer()
    sheets = Integer()
    photos = Integer()
    cuts = Integer(metadata=_said("At the trimmer, on a bench of its unit; 0 for what cannot be cut."))
    roles = _texts()


class RecipeList(Envelope):
    """One page of the list of recipes."""

    count = Integer(metadata=_said("How many there are in all; 1000 stands for that many or more."))
    recipes = List(Nested(RecipeFigures))


class PaperFigures(Envelope):
    """One paper of a set: its sides, its weight, how many sheets there are."""

    id = String()
    title = String()
    front = String(metadata=_said("What this side shows.", example="stripe, one-way"))
    back = String(metadata=_said("What the other side shows.", example="plain"))
    grammage_g_per_m2 = Float(metadata=_said("Mass in g/m².", example=216))
    sheet_g = Float(metadata=_said("Mass of one sheet in g.", example=20.07))
    core = String(metadata=_said("What a cut edge shows.", example="white"))
    sheets = Integer(allow_none=True, metadata=_said("Sheets at hand; null where nobody counts them."))
    links = _links()


class PaperSetFigures(Item):
    """What somebody wants to know of a paper set when choosing."""

    papers = List(Nested(PaperFigures))


class PaperSetList(Envelope):
    """One page of the list of paper sets."""

    count = Integer(metadata=_said("How many there are in all; 1000 stands for that many or more."))
    paper_sets = List(Nested(PaperSetFigures))


class BenchFigures(Item):
    """What somebody wants to know of a bench when choosing."""

    unit = String()


class BenchList(Envelope):
    """One page of the list of benches."""

    count = Integer(metadata=_said("How many there are in all; 1000 stands for that many or more."))
    benches = List(Nested(BenchFigures))


class BenchName(Envelope):
    """The bench for which an answer is worded."""

    id = String()
    title = String()
    unit = String()


class Place(Envelope):
    """A rectangle from the top left corner of its sheet or page, ticks, and its size in words."""

    left = Integer()
    top = Integer()
    width = Integer()
    height = Integer()
    text = String()


class Part(Envelope):
    """One part of a sheet: a piece, a spare or scrap."""

    id = String()
    use = String()
    mark = String(allow_none=True)
    pile = String(allow_none=True)
    place = Nested(Place)


class CutSheet(Envelope):
    """One sheet and its parts, in the order in which they fall."""

    number = Integer()
    role = String()
    size = Nested(Place, allow_none=True)
    parts = List(Nested(Part))


class TrimmerReading(Envelope):
    """What to set at the trimmer; `ticks` lies on a mark of its scale, `exact_ticks` is what was wanted."""

    ticks = Integer()
    exact_ticks = Integer()
    text = String()


class Share(Envelope):
    """What falls or stays: a part that is done, or one to be cut on."""

    fate = String()
    id = String(allow_none=True)
    ids = _texts()
    until = Integer(allow_none=True)
    place = Nested(Place)


class CutWords(Envelope):
    """One step in words; the caution comes first."""

    caution = String(allow_none=True)
    board = String()
    setting = String()
    falls = String()
    stays = String()
    mark = String(metadata=_said("What to pencil on pieces that would not show later which way up they lay."))
    together = String()


class CutStep(Envelope):
    """One cut at the trimmer."""

    number = Integer()
    sheet = Integer()
    sheets = List(Integer())
    on_board = Nested(Place)
    arrival = String()
    set_aside_at = Integer(allow_none=True)
    axis = String()
    quarter_turns_left = Integer()
    turned_now = Boolean()
    turned = Integer()
    measures = String()
    reading = Nested(TrimmerReading)
    set_now = Boolean()
    falls = Nested(Share)
    stays = Nested(Share)
    words = Nested(CutWords)


class PieceName(Envelope):
    """A piece and its mark in instructions."""

    id = String()
    mark = String()


class Pile(Envelope):
    """The pieces of one page."""

    page = String()
    pieces = List(Nested(PieceName))


class Effort(Envelope):
    """What cutting costs: narrow strips held, settings, quarter turns, and parts picked up again."""

    narrow_held = Integer()
    settings = Integer()
    quarter_turns = Integer()
    pick_ups = Integer()
    reach_ticks = Integer()
    sum = Integer()


class Cuts(Envelope):
    """The cut sheets, the steps at the trimmer and the piles."""

    recipe = String()
    bench = Nested(BenchName)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    language = String()
    effort = Nested(Effort)
    cautions = _texts()
    rounding = String(metadata=_said("What the marks of the scale do to the sizes; empty where they show all."))
    sheets = List(Nested(CutSheet))
    steps = List(Nested(CutStep))
    piles = List(Nested(Pile))


class ChosenPaper(Envelope):
    """What plays a role."""

    paper = String()
    title = String()
    side = String()


class ColourwayItem(Envelope):
    """One colourway."""

    id = String()
    set = String()
    roles = Dict(keys=String(), values=Nested(ChosenPaper))
    links = _links()


class ColourwayList(Envelope):
    """One page of the list of colourways."""

    recipe = String()
    set = String()
    count = Integer(metadata=_said("How many there are in all."))
    start = Integer()
    colourways = List(Nested(ColourwayItem))


class SpareSize(Envelope):
    """Width and height of a spare, ticks, and in words."""

    width = Integer()
    height = Integer()
    text = String()


class Certificate(Envelope):
    """What is proved about the sheets of one role."""

    role = String()
    standing = String(metadata=_said("`optimal` in cost and value, or `stopped` where a better plan may exist."))
    cost = Integer(metadata=_said("Of the sheets that are cut; where none has a cost, their number."))
    lower_bound = Integer(metadata=_said("No plan costs less."))
    gap = Integer()
    value = Integer(metadata=_said("Of the optional pieces that are cut."))
    most_value = Integer(metadata=_said("No plan of that cost has optional pieces of more value."))
    gathered = Boolean(
        metadata=_said("Whether it is proved that no plan of that cost and value leaves a larger spare.")
    )
    reason = String()
    binding = _texts()


class Plan(Envelope):
    """How every sheet is cut, what is left over, and what is proved."""

    optimal = Boolean()
    sheet_count = Integer()
    sheets = List(Dict(), metadata=_said("As the `sheets` of a recipe in the unit of the document."))
    spares = List(Nested(SpareSize), metadata=_said("The largest first."))
    left_out = List(String(), metadata=_said("Names of optional pieces that are not cut."))
    certificates = List(Nested(Certificate))
    recipe = Dict(allow_none=True, metadata=_said("The posted recipe with these sheets, if one was posted."))


class Plans(Envelope):
    """Plans of the same cost."""

    title = String()
    unit = String()
    bench = Nested(BenchName, allow_none=True)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    objective = List(String(), metadata=_said("What makes a plan better, the first in which two differ."))
    plans = List(Nested(Plan))


class SchemaItem(Envelope):
    """One kind of document and the schema of its current version."""

    kind = String()
    title = String()
    version = Integer()
    links = _links()


class SchemaList(Envelope):
    """The kinds of documents."""

    schemas = List(Nested(SchemaItem))


class Health(Envelope):
    """That the service answers, and what it serves."""

    status = String()
    version = String()
    recipes = Integer()
    paper_sets = Integer()
    benches = Integer()


class Home(Envelope):
    """Where to begin."""

    title = String()
    version = String()
    links = _links()


class Relative(Envelope):
    """A document that another is derived from, or that is derived from it."""

    id = String()
    state = String()
    links = _links()


class Status(Envelope):
    """What is known of a document beside what stands in it."""

    kind = String(metadata=_said("As addresses name it.", example="recipes"))
    id = String()
    title = String()
    state = String(metadata=_said("draft, published or withdrawn."))
    revision = Integer(metadata=_said("The number of its latest revision, from 1, without gaps."))
    etag = String(metadata=_said("What If-Match takes for the next write."))
    sha256 = String(metadata=_said("Of its content, hexadecimal."))
    owner = String()
    created_at = String(metadata=_said("When (RFC 3339).", format="date-time"))
    changed_at = String(metadata=_said("When (RFC 3339).", format="date-time"))
    published_at = String(allow_none=True, metadata=_said("When it was first; null before.", format="date-time"))
    review_note = String(metadata=_said("What a reviewer asks its author to change; empty otherwise."))
    derived_from = List(Nested(Relative), metadata=_said("Its parents."))
    derived = List(Nested(Relative), metadata=_said("What is published and derived from it."))
    links = _links()


class RevisionItem(Envelope):
    """One step in the life of a document."""

    number = Integer()
    action = String(metadata=_said("created, changed, restored, deleted, published, withdrawn or refused."))
    state = String(metadata=_said("Of the document since then."))
    sha256 = String(metadata=_said("Of what stood in it, hexadecimal."))
    who = String()
    at = String(metadata=_said("When (RFC 3339).", format="date-time"))
    note = String()
    links = _links()


class RevisionList(Envelope):
    """Revisions of a document, the newest first."""

    id = String()
    revisions = List(Nested(RevisionItem))


class ChangeItem(Envelope):
    """One difference between two revisions."""

    op = String(metadata=_said("added, removed or changed."))
    path = String(metadata=_said("JSON Pointer (RFC 6901)."))
    was = Raw(allow_none=True, metadata=_said("What stood there; null where nothing did."))
    now = Raw(allow_none=True, metadata=_said("What stands there; null where nothing does."))


class ChangeList(Envelope):
    """What differs between two revisions of a document."""

    id = String()
    first = Integer()
    second = Integer()
    changes = List(Nested(ChangeItem))
