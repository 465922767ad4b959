"""What the shapes of answers have in common, as OpenAPI describes them; a test holds them and the answers together.

Those of one kind of answer have a file of their own. Every member is always there. Lengths are whole ticks, 320 to the
millimetre and 8128 to the inch.
"""

from typing import Any

from marshmallow import RAISE, Schema
from marshmallow.fields import Boolean, Dict, Field, Integer, List, Nested, String
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


def said(description: str, **more: Any) -> dict[str, Any]:
    """What a member means, and whatever else OpenAPI may tell of it."""
    return {"description": description, **more}


def texts() -> List[str]:
    """A list of texts."""
    return List(String())


def relations() -> Dict:
    """Where to go on from here."""
    return Dict(keys=String(), values=String(), metadata=said("Where more of it is, as absolute paths, by relation."))


class ProblemError(Envelope):
    """One thing that is wrong: in a document at a JSON Pointer, or in a parameter of the query."""

    code = String(metadata=said("Permanent name.", example="row-does-not-fill"))
    severity = String(validate=OneOf([each.value for each in Severity]))
    pointer = String(metadata={"optional": True, **said("JSON Pointer (RFC 6901) into the document.")})
    parameter = String(metadata={"optional": True, **said("Name of the parameter.")})
    detail = String(metadata=said("What was measured."))
    remedy = String(metadata=said("What would be right."))


class Problem(Envelope):
    """A problem document (RFC 9457)."""

    type = String(metadata=said("Permanent name of the kind of problem.", format="uri"))
    title = String()
    status = Integer()
    detail = String(metadata={"optional": True, **said("What went wrong this time.")})
    instance = String(metadata=said("The path that was asked for."))
    request_id = String(
        metadata={"optional": True, **said("Names the request, as the header X-Request-Id and the log do.")}
    )
    errors = List(Nested(ProblemError))
    available = List(String(), metadata={"optional": True, **said("With 406: the media types that exist.")})


class Finding(Envelope):
    """One thing that a check has to say about a document."""

    code = String(metadata=said("Permanent name.", example="row-does-not-fill"))
    severity = String(validate=OneOf([each.value for each in Severity]))
    where = String(metadata=said("JSON Pointer (RFC 6901) into the document."))
    message = String()
    remedy = String()


class Report(Envelope):
    """What a check found out about one document."""

    kind = String()
    title = String()
    fine = Boolean(metadata=said("Whether no finding is an error."))
    findings = List(Nested(Finding))


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


class ChosenPaper(Envelope):
    """What plays a role."""

    paper = String()
    title = String()
    side = String()


class SchemaItem(Envelope):
    """One kind of document and the schema of its current version."""

    kind = String()
    title = String()
    version = Integer()
    links = relations()


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
    links = relations()
