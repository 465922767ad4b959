"""Documents written over HTTP: made, put, patched, deleted, published, withdrawn, refused."""

from hashlib import sha256
from typing import Any

from flask import Response, request
from marshmallow.fields import String
from marshmallow.validate import Length, Regexp
from werkzeug.exceptions import UnsupportedMediaType

from spreadwright.document import canonical
from spreadwright.errors import UnknownName
from spreadwright.rest.bodies import document_bytes
from spreadwright.rest.conditions import Exists, makes_new
from spreadwright.rest.documents import operation, variable
from spreadwright.rest.envelopes import Status
from spreadwright.rest.forms import JSON, Arguments
from spreadwright.rest.links import address
from spreadwright.rest.openapi import component
from spreadwright.rest.patches import merged
from spreadwright.rest.permissions import own, own_or_reviewed, reviewed, writer
from spreadwright.rest.queries import BadQuery, Query, WrongParameter
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.statuses import status_of
from spreadwright.rest.writing import IDEMPOTENCY_KEY, Write, write
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Document, RequestKey

MERGE_PATCH = "application/merge-patch+json"
_LONGEST_KEY = 128


def _words(description: str, most: int, **options: Any) -> String:
    length = Length(1, most, error="has no or too many characters")
    plain = Regexp(r"[^\x00-\x1f\x7f]*\Z", error="has control characters")
    return String(validate=[length, plain], metadata={"description": description}, **options)


class NoteQuery(Query):
    """Why."""

    note = _words("Why, in a sentence; kept with the revision.", 500)


class NewQuery(NoteQuery):
    """Under which id, and why."""

    id = _words("The id that it is to have. When left out: made from its title, and numbered where that is taken.", 60)


class ReasonQuery(Query):
    """Why not."""

    note = _words("What its author should change.", 2000, required=True)


class Writes:
    """The writes of one kind of document."""

    def __init__(self, kind: str) -> None:
        self.kind = kind

    def create(self, arguments: Arguments) -> Response:
        """A new draft."""
        token = writer()
        data = document_bytes()
        documents = service().store.documents
        name, note = arguments.get("id"), arguments.get("note", "")
        made = documents.create(self.kind, data, token.owner, name=name, note=note, key=self._key(token.owner, data))
        response = told(made.document, 201)
        response.headers["Location"] = place(made.document)
        return response

    def put(self, arguments: Arguments, **ids: str) -> Response:
        """Other content, or a new draft where `If-None-Match: *` asks for one."""
        (name,) = ids.values()
        note = arguments.get("note", "")
        if makes_new():
            return self._made(name, note)
        turn = own(self.kind, name)
        data = document_bytes()
        changed = service().store.documents.change(self.kind, name, data, turn.who, expected=turn.expected, note=note)
        return told(changed)

    def patch(self, arguments: Arguments, **ids: str) -> Response:
        """Some members changed, as RFC 7396 says."""
        (name,) = ids.values()
        turn = own(self.kind, name)
        if request.mimetype not in (MERGE_PATCH, JSON):
            raise UnsupportedMediaType(f"Send the patch as {MERGE_PATCH}.")
        patch = document_bytes()
        documents = service().store.documents
        data = merged(documents.get(self.kind, name).content, patch)
        note = arguments.get("note", "")
        return told(documents.change(self.kind, name, data, turn.who, expected=turn.expected, note=note))

    def delete(self, arguments: Arguments, **ids: str) -> Response:
        """Nothing is left but its revisions."""
        (name,) = ids.values()
        turn = own(self.kind, name)
        note = arguments.get("note", "")
        service().store.documents.delete(self.kind, name, turn.who, expected=turn.expected, note=note)
        response = Response(status=204)
        del response.headers["Content-Type"]
        return response

    def publish(self, arguments: Arguments, **ids: str) -> Response:
        """Everybody may read it."""
        (name,) = ids.values()
        turn = (reviewed if service().settings.review_first else own_or_reviewed)(self.kind, name)
        publish = service().store.publishing.publish
        return told(publish(self.kind, name, turn.who, expected=turn.expected, note=arguments.get("note", "")))

    def withdraw(self, arguments: Arguments, **ids: str) -> Response:
        """Nobody but its owner and reviewers may read it any more."""
        (name,) = ids.values()
        turn = own_or_reviewed(self.kind, name)
        withdraw = service().store.publishing.withdraw
        return told(withdraw(self.kind, name, turn.who, expected=turn.expected, note=arguments.get("note", "")))

    def refuse(self, arguments: Arguments, **ids: str) -> Response:
        """It is a draft, and its author reads why."""
        (name,) = ids.values()
        turn = reviewed(self.kind, name)
        refuse = service().store.publishing.refuse
        return told(refuse(self.kind, name, turn.who, expected=turn.expected, note=arguments["note"]))

    def _made(self, name: str, note: str) -> Response:
        token = writer()
        try:
            raise Exists(collection().head(self.kind, name))
        except UnknownName:
            data = document_bytes()
        made = service().store.documents.create(self.kind, data, token.owner, name=name, note=note)
        response = told(made.document, 201)
        response.headers["Location"] = place(made.document)
        return response

    def _key(self, owner: str, data: bytes) -> RequestKey | None:
        key = request.headers.get("Idempotency-Key", "").strip()
        if not key:
            return None
        if len(key) > _LONGEST_KEY or not key.isascii() or not key.isprintable():
            message = "The header Idempotency-Key is none."
            raise BadQuery([WrongParameter("wrong-header", "Idempotency-Key", message, "Send 1 to 128 characters.")])
        asked = b"\n".join((request.full_path.encode(), data))
        return RequestKey(owner, key, sha256(asked).hexdigest())


def told(document: Document, status: int = 200) -> Response:
    """What has become of a document, with the ETag for the next write."""
    response = Response(canonical(status_of(document)), status, content_type=JSON)
    response.set_etag(document.head.etag)
    response.headers["Cache-Control"] = UNKEPT
    response.headers["Content-Location"] = address(
        f"{document.kind}.{operation('status_of', document.kind)}", **_ids(document)
    )
    return response


def place(document: Document) -> str:
    """The address of a document."""
    name = kind_named(document.kind).schema.replace("-", "_")
    return address(f"{document.kind}.{name}", **_ids(document))


def _ids(document: Document) -> dict[str, str]:
    return {variable(document.kind): document.id}


def _body(kind: str) -> dict[str, Any]:
    schema = component(kind_named(kind).schema)
    words = f"The {kind_named(kind).word}."
    return {"description": words, "required": True, "content": {JSON: {"schema": schema}}}


_PATCH_BODY = {
    "description": "The members that change (RFC 7396); null removes one.",
    "required": True,
    "content": {MERGE_PATCH: {"schema": {"type": "object"}, "example": {"tags": ["home", "quick"]}}},
}


def add_writes(blueprint: Resources, kind: str) -> None:
    """Adds the routes that write documents of a kind to its blueprint."""
    writes = Writes(kind)
    word = kind_named(kind).word
    many, one = f"/{kind}", f"/{kind}/<{variable(kind)}>"
    done = {200: (Status, "What has become of it.")}
    made = {201: (Status, "What has become of it.")}
    named = {
        what: operation(what, kind) for what in ("create", "put", "patch", "delete", "publish", "withdraw", "refuse")
    }
    specs = (
        (
            Write(
                "POST",
                many,
                named["create"],
                f"A new {word}, as a draft.",
                made,
                _CREATES,
                _body(kind),
                is_conditional=False,
                parameters=(IDEMPOTENCY_KEY,),
                query=NewQuery,
            ),
            writes.create,
        ),
        (
            Write(
                "PUT",
                one,
                named["put"],
                f"Other content for a {word}.",
                {**done, **made},
                _PUTS,
                _body(kind),
                query=NoteQuery,
            ),
            writes.put,
        ),
        (
            Write(
                "PATCH",
                one,
                named["patch"],
                f"Some members of a {word} changed.",
                done,
                body=_PATCH_BODY,
                query=NoteQuery,
            ),
            writes.patch,
        ),
        (
            Write(
                "DELETE",
                one,
                named["delete"],
                f"A {word} deleted; its id stays taken.",
                {204: (None, "It is gone; its revisions remain.")},
                query=NoteQuery,
            ),
            writes.delete,
        ),
        (
            Write(
                "POST",
                f"{one}/publish",
                named["publish"],
                f"A {word} for everybody to read.",
                done,
                _PUBLISHES,
                query=NoteQuery,
            ),
            writes.publish,
        ),
        (
            Write(
                "POST", f"{one}/withdraw", named["withdraw"], f"A {word} back from its readers.", done, query=NoteQuery
            ),
            writes.withdraw,
        ),
        (
            Write(
                "POST",
                f"{one}/refuse",
                named["refuse"],
                f"A {word} back to its author, with a note.",
                done,
                "Needs the scope `review`.",
                query=ReasonQuery,
            ),
            writes.refuse,
        ),
    )
    for spec, view in specs:
        write(blueprint, spec, view)


_CREATES = "Whoever makes it owns it. With an Idempotency-Key the same request may be sent again."
_PUTS = "Its owner may. With `If-None-Match: *` in place of If-Match it makes a document of that id."
_PUBLISHES = "The check must find no error. Its owner may, unless the service has reviewers do it."
