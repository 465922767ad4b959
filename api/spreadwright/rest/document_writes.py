"""Documents written over HTTP: made, put, patched, deleted, published, withdrawn, refused."""

from collections.abc import Callable
from functools import partial
from hashlib import sha256
from typing import Any

from flask import Response, request
from werkzeug.exceptions import UnsupportedMediaType

from spreadwright.document import canonical
from spreadwright.errors import UnknownName
from spreadwright.rest.bodies import document_bytes
from spreadwright.rest.components import component
from spreadwright.rest.conditions import Exists, makes_new, require_condition
from spreadwright.rest.document_envelopes import Status
from spreadwright.rest.documents import address_about, document_address, operation, rule_of
from spreadwright.rest.forms import JSON, Arguments
from spreadwright.rest.parameters import BadQuery, WrongParameter
from spreadwright.rest.patches import merged
from spreadwright.rest.permissions import Turn, own, own_or_reviewed, reviewed, writer
from spreadwright.rest.queries import NewQuery, NoteQuery, ReasonQuery
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.statuses import status_of
from spreadwright.rest.writing import IDEMPOTENCY_KEY, IF_NONE_MATCH, View, Write, write
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Document, RequestKey

MERGE_PATCH = "application/merge-patch+json"
_LONGEST_KEY = 128


_TOLD = (Status, "What has become of it.")
_GONE = (None, "It is gone; its revisions remain.")
_CREATES: dict[str, Any] = {
    "answers": {201: _TOLD},
    "more": "Whoever makes it owns it. With an Idempotency-Key the same request may be sent again.",
    "is_conditional": False,
    "parameters": (IDEMPOTENCY_KEY,),
    "query": NewQuery,
}
_PUTS: dict[str, Any] = {
    "answers": {200: _TOLD, 201: _TOLD},
    "more": "Its owner may. With `If-None-Match: *` in place of If-Match it makes a document of that id.",
    "parameters": (IF_NONE_MATCH,),
}
_PUBLISHES = "The check must find no error. Its owner may, unless the service has reviewers do it."
_REFUSES = "Needs the scope `review`."
_PATCH_BODY = {
    "description": "The members that change (RFC 7396); null removes one.",
    "required": True,
    "content": {MERGE_PATCH: {"schema": {"type": "object"}, "example": {"tags": ["home", "quick"]}}},
}


def add_writes(blueprint: Resources, kind: str) -> None:
    """Adds the routes that write documents of a kind to its blueprint."""
    writes, word, many, one = Writes(kind), kind_named(kind).word, f"/{kind}", rule_of(kind)
    serve, body = partial(serve_write, blueprint, kind), _body(kind)
    serve(writes.create, "POST", many, f"A new {word}, as a draft.", body=body, **_CREATES)
    serve(writes.put, "PUT", one, f"Other content for a {word}.", body=body, **_PUTS)
    serve(writes.patch, "PATCH", one, f"Some members of a {word} changed.", body=_PATCH_BODY)
    serve(writes.delete, "DELETE", one, f"A {word} deleted; its id stays taken.", answers={204: _GONE})
    serve(writes.publish, "POST", f"{one}/publish", f"A {word} for everybody to read.", more=_PUBLISHES)
    serve(writes.withdraw, "POST", f"{one}/withdraw", f"A {word} back from its readers.")
    words = f"A {word} back to its author, with a note."
    serve(writes.refuse, "POST", f"{one}/refuse", words, more=_REFUSES, query=ReasonQuery)


def serve_write(
    blueprint: Resources, kind: str, view: View, method: str, rule: str, summary: str, **options: Any
) -> None:
    """Adds one route that writes documents of a kind, named after its view.

    Args:
        blueprint: Where it is added.
        kind: Of the documents.
        view: What answers.
        method: Of HTTP.
        rule: The path, with its variables.
        summary: What it does, in a sentence.
        options: Of the `Write`, where it is not like most.
    """
    like_most: dict[str, Any] = {"answers": {200: _TOLD}, "query": NoteQuery}
    spec = Write(method, rule, operation(view.__name__, kind), summary, **{**like_most, **options})
    write(blueprint, spec, view)


class Writes:
    """The writes of one kind of document."""

    def __init__(self, kind: str) -> None:
        self.kind = kind

    def create(self, arguments: Arguments) -> Response:
        """A new draft."""
        token = writer()
        data = document_bytes()
        return self._made(token.owner, data, arguments, name=arguments.get("id"), key=_key(token.owner, data))

    def put(self, arguments: Arguments, name: str) -> Response:
        """Other content, or a new draft where `If-None-Match: *` asks for one."""
        if makes_new():
            return self._put_new(arguments, name)
        try:
            turn = own(self.kind, name)
        except UnknownName:
            require_condition(new=name)
            raise
        return told(done(service().store.documents.change, turn, arguments, document_bytes()))

    def patch(self, arguments: Arguments, name: str) -> Response:
        """Some members changed, as RFC 7396 says."""
        turn = own(self.kind, name)
        if request.mimetype not in (MERGE_PATCH, JSON):
            raise UnsupportedMediaType(f"Send the patch as {MERGE_PATCH}.")
        patch = document_bytes()
        documents = service().store.documents
        return told(done(documents.change, turn, arguments, merged(documents.get(self.kind, name).content, patch)))

    def delete(self, arguments: Arguments, name: str) -> Response:
        """Nothing is left but its revisions."""
        done(service().store.documents.delete, own(self.kind, name), arguments)
        response = Response(status=204)
        del response.headers["Content-Type"]
        return response

    def publish(self, arguments: Arguments, name: str) -> Response:
        """Everybody may read it."""
        turn = (reviewed if service().settings.review_first else own_or_reviewed)(self.kind, name)
        return told(done(service().store.publishing.publish, turn, arguments))

    def withdraw(self, arguments: Arguments, name: str) -> Response:
        """Nobody but its owner and reviewers may read it any more."""
        return told(done(service().store.publishing.withdraw, own_or_reviewed(self.kind, name), arguments))

    def refuse(self, arguments: Arguments, name: str) -> Response:
        """It is a draft, and its author reads why."""
        return told(done(service().store.publishing.refuse, reviewed(self.kind, name), arguments))

    def _put_new(self, arguments: Arguments, name: str) -> Response:
        token = writer()
        try:
            raise Exists(collection().head(self.kind, name))
        except UnknownName:
            return self._made(token.owner, document_bytes(), arguments, name=name)

    def _made(self, owner: str, data: bytes, arguments: Arguments, **options: Any) -> Response:
        create = service().store.documents.create
        made = create(self.kind, data, owner, note=arguments.get("note", ""), **options)
        response = told(made.document, 201)
        response.headers["Location"] = document_address(self.kind, made.document.id)
        return response


def done(verb: Callable[..., Any], turn: Turn, arguments: Arguments, *content: Any) -> Any:
    """What comes of a write to a document that exists, by a verb of the store."""
    name, note = turn.head.id, arguments.get("note", "")
    return verb(turn.head.kind, name, *content, turn.who, expected=turn.expected, note=note)


def told(document: Document, status: int = 200) -> Response:
    """What has become of a document, with the ETag for the next write."""
    response = Response(canonical(status_of(document)), status, content_type=JSON)
    response.set_etag(document.head.etag)
    response.headers["Cache-Control"] = UNKEPT
    response.headers["Content-Location"] = address_about("status_of", document.kind, document.id)
    return response


def _key(owner: str, data: bytes) -> RequestKey | None:
    key = request.headers.get("Idempotency-Key", "").strip()
    if not key:
        return None
    if len(key) > _LONGEST_KEY or not key.isascii() or not key.isprintable():
        message = "The header Idempotency-Key is none."
        raise BadQuery([WrongParameter("wrong-header", "Idempotency-Key", message, "Send 1 to 128 characters.")])
    asked = b"\n".join((request.full_path.encode(), data))
    return RequestKey(owner, key, sha256(asked).hexdigest())


def _body(kind: str) -> dict[str, Any]:
    schema = component(kind_named(kind).schema)
    words = f"The {kind_named(kind).word}."
    return {"description": words, "required": True, "content": {JSON: {"schema": schema}}}
