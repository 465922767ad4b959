"""The shapes of what is told about the life of documents; `statuses` and `document_history` fill them."""

from marshmallow.fields import Integer, List, Nested, Raw, String

from spreadwright.rest.envelopes import Envelope, relations, said


class Relative(Envelope):
    """A document that another is derived from, or that is derived from it."""

    id = String()
    state = String()
    links = relations()


class Status(Envelope):
    """What is known of a document beside what stands in it."""

    kind = String(metadata=said("As addresses name it.", example="recipes"))
    id = String()
    title = String()
    state = String(metadata=said("draft, published or withdrawn."))
    revision = Integer(metadata=said("The number of its latest revision, from 1, without gaps."))
    etag = String(metadata=said("What If-Match takes for the next write."))
    sha256 = String(metadata=said("Of its content, hexadecimal."))
    owner = String()
    created_at = String(metadata=said("When (RFC 3339).", format="date-time"))
    changed_at = String(metadata=said("When (RFC 3339).", format="date-time"))
    published_at = String(allow_none=True, metadata=said("When it was first; null before.", format="date-time"))
    review_note = String(metadata=said("What a reviewer asks its author to change; empty otherwise."))
    derived_from = List(Nested(Relative), metadata=said("Its parents."))
    derived = List(Nested(Relative), metadata=said("What is published and derived from it."))
    links = relations()


class RevisionItem(Envelope):
    """One step in the life of a document."""

    number = Integer()
    action = String(metadata=said("created, changed, restored, deleted, published, withdrawn or refused."))
    state = String(metadata=said("Of the document since then."))
    sha256 = String(metadata=said("Of what stood in it, hexadecimal."))
    who = String()
    at = String(metadata=said("When (RFC 3339).", format="date-time"))
    note = String()
    links = relations()


class RevisionList(Envelope):
    """Revisions of a document, the newest first."""

    id = String()
    revisions = List(Nested(RevisionItem))


class ChangeItem(Envelope):
    """One difference between two revisions."""

    op = String(metadata=said("added, removed or changed."))
    path = String(metadata=said("JSON Pointer (RFC 6901)."))
    was = Raw(allow_none=True, metadata=said("What stood there; null where nothing did."))
    now = Raw(allow_none=True, metadata=said("What stands there; null where nothing does."))


class ChangeList(Envelope):
    """What differs between two revisions of a document."""

    id = String()
    first = Integer()
    second = Integer()
    changes = List(Nested(ChangeItem))
