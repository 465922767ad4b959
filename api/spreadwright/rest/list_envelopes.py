"""The shapes of lists of documents; `lists` and the views of each kind fill them."""

from typing import Any

from marshmallow.fields import Field, Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import Envelope, relations, said, texts


class Item(Envelope):
    """What a list tells of each document; where `fields` are named, those and the id."""

    id = String()
    title = String()
    summary = String()
    authors = texts()
    licence = String(metadata=said("SPDX identifier."))
    language = String()
    tags = texts()
    state = String(metadata=said("published, draft or withdrawn."))
    revision = Integer()
    changed_at = String(metadata=said("When (RFC 3339).", format="date-time"))
    links = relations()

    def on_bind_field(self, field_name: str, field_obj: Field[Any]) -> None:
        """Requires the id alone."""
        field_obj.required = field_name == "id"


class RecipeFigures(Item):
    """What somebody wants to know of a recipe when choosing."""

    pages = Integer()
    sheets = Integer()
    photos = Integer()
    cuts = Integer(metadata=said("At the trimmer, on a bench of its unit; 0 for what cannot be cut."))
    roles = texts()


class RecipeList(Envelope):
    """One page of the list of recipes."""

    count = Integer(metadata=said("How many there are in all; 1000 stands for that many or more."))
    recipes = List(Nested(RecipeFigures))


class PaperFigures(Envelope):
    """One paper of a set: its sides, its weight, how many sheets there are."""

    id = String()
    title = String()
    front = String(metadata=said("What this side shows.", example="stripe, one-way"))
    back = String(metadata=said("What the other side shows.", example="plain"))
    grammage_g_per_m2 = Float(metadata=said("Mass in g/m².", example=216))
    sheet_g = Float(metadata=said("Mass of one sheet in g.", example=20.07))
    core = String(metadata=said("What a cut edge shows.", example="white"))
    sheets = Integer(allow_none=True, metadata=said("Sheets at hand; null where nobody counts them."))
    links = relations()


class PaperSetFigures(Item):
    """What somebody wants to know of a paper set when choosing."""

    papers = List(Nested(PaperFigures))


class PaperSetList(Envelope):
    """One page of the list of paper sets."""

    count = Integer(metadata=said("How many there are in all; 1000 stands for that many or more."))
    paper_sets = List(Nested(PaperSetFigures))


class BenchFigures(Item):
    """What somebody wants to know of a bench when choosing."""

    unit = String()


class BenchList(Envelope):
    """One page of the list of benches."""

    count = Integer(metadata=said("How many there are in all; 1000 stands for that many or more."))
    benches = List(Nested(BenchFigures))
