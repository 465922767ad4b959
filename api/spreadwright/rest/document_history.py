"""The life of documents: their status, their revisions read, compared and brought back."""

from collections.abc import Iterable
from typing import Any

from flask import Response

from spreadwright.errors import InvalidDocument
from spreadwright.rest.components import component
from spreadwright.rest.document_envelopes import ChangeList, RevisionList, Status
from spreadwright.rest.document_writes import done, serve_write, told
from spreadwright.rest.documents import address_about, operation, rule_of
from spreadwright.rest.forms import JSON, Arguments, Form, json_form
from spreadwright.rest.links import address, here
from spreadwright.rest.permissions import is_public_only, latest, own_or_gone
from spreadwright.rest.queries import ChangesQuery, RevisionsQuery
from spreadwright.rest.replies import IMMUTABLE
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.statuses import Relatives, relatives_of, status_of
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Change, Document, Head, Revision


def add_history(blueprint: Resources, kind: str) -> None:
    """Adds the routes about the life of documents of a kind to its blueprint."""
    History(blueprint, kind).add()


class History:
    """What has become of the documents of one kind."""

    def __init__(self, blueprint: Resources, kind: str) -> None:
        self._blueprint, self._kind = blueprint, kind
        self._word = kind_named(kind).word

    def add(self) -> None:
        """Adds its routes."""
        self._read("/status", json_form(_status, Status, is_work=False), "status_of", self._status)
        listed = json_form(_revisions, RevisionList, is_work=False)
        self._read("/revisions", listed, "revisions_of", self._revisions, query=RevisionsQuery, links=_older)
        content = Form("json", JSON, _content, component(kind_named(self._kind).schema), is_work=False)
        self._read("/revisions/<number>", content, "revision_of", self._revision, cache=IMMUTABLE)
        compared = json_form(_changes, ChangeList, is_work=False)
        self._read("/revisions/<number>/changes", compared, "changes_of", self._changes, query=ChangesQuery)
        rule = f"{rule_of(self._kind)}/revisions/<number>/restore"
        words = f"An earlier revision of a {self._word} as the latest one."
        more = "What was deleted comes back as a draft; the 410 of a deleted document has the ETag."
        serve_write(self._blueprint, self._kind, self.restore, "POST", rule, words, more=more)

    def restore(self, arguments: Arguments, name: str, number: str) -> Response:
        """An earlier revision once more."""
        turn = own_or_gone(self._kind, name)
        return told(done(service().store.documents.restore, turn, arguments, _whole(number)))

    def _read(self, rule: str, form: Form, what: str, fetch: Any, **options: Any) -> None:
        def found(arguments: Arguments, **ids: str) -> Documents:
            documents: Documents = fetch(arguments, *ids.values())
            return documents

        found.__name__ = operation(what, self._kind)
        found.__doc__ = fetch.__doc__.replace("a document", f"a {self._word}")
        self._blueprint.resource(f"{rule_of(self._kind)}{rule}", form, **options)(found)

    def _status(self, _: Arguments, name: str) -> Documents:
        """What is known of a document beside what stands in it: its state, owner, lineage."""
        document = collection().document(self._kind, name)
        return document, relatives_of(document)

    def _revisions(self, arguments: Arguments, name: str) -> Documents:
        """The revisions of a document, the newest first; of a deleted one, too.

        Everybody reads those that were published; those of drafts are for its owner and for reviewers, for ever.
        """
        head = latest(self._kind, name)
        history = service().store.history
        most = arguments["limit"]
        found = history.revisions(
            self._kind, name, before=arguments.get("before"), limit=most, public=is_public_only(head)
        )
        return head, found, most

    def _revision(self, _: Arguments, name: str, number: str) -> Documents:
        """What stood in a document at a revision, which never changes."""
        head = latest(self._kind, name)
        public = is_public_only(head)
        revision, data = service().store.history.revision(self._kind, name, _whole(number), public=public)
        return head.kind, name, revision, data

    def _changes(self, arguments: Arguments, name: str, number: str) -> Documents:
        """What changed in a document up to a revision, since the one before or the one named."""
        public = is_public_only(latest(self._kind, name))
        second = _whole(number)
        history = service().store.history
        first = arguments.get("since") or self._before(name, second, public=public)
        return name, first, second, tuple(history.compare(self._kind, name, first, second, public=public))

    def _before(self, name: str, number: int, *, public: bool) -> int:
        """The revision before, among those that whoever asks may read; the same one where there is none."""
        earlier = service().store.history.revisions(self._kind, name, before=number, limit=1, public=public)
        return earlier[0].number if earlier else number


def _whole(number: str) -> int:
    """The number of a revision; 0, which none has, for what is no number."""
    return int(number) if number.isascii() and number.isdigit() and len(number) < 10 else 0


def _status(_: Arguments, document: Document, relatives: Relatives) -> dict[str, Any]:
    return status_of(document, relatives)


def _revisions(_: Arguments, head: Head, revisions: tuple[Revision, ...], __: int) -> dict[str, Any]:
    return {"id": head.id, "revisions": [_item(head, each) for each in revisions]}


def _item(head: Head, revision: Revision) -> dict[str, Any]:
    links = {
        "self": address_about("revision_of", head.kind, head.id, number=revision.number),
        "changes": address_about("changes_of", head.kind, head.id, number=revision.number),
        "content": address("contents.content", digest=revision.digest),
    }
    return {
        "number": revision.number,
        "action": revision.action.value,
        "state": revision.state.value,
        "sha256": revision.digest,
        "who": revision.who,
        "at": revision.at.isoformat(),
        "note": revision.note,
        "links": links,
    }


def _older(_: Arguments, head: Head, revisions: tuple[Revision, ...], most: int) -> Iterable[str]:
    is_more = len(revisions) == most and revisions[-1].number > 1
    return here("before", ("next", revisions[-1].number)) if is_more else ()


def _content(_: Arguments, kind: str, name: str, revision: Revision, data: bytes) -> bytes:
    if not data:
        raise InvalidDocument(name, kind_named(kind).read(data, name, None).findings)
    return data


def _changes(_: Arguments, name: str, first: int, second: int, changes: tuple[Change, ...]) -> dict[str, Any]:
    listed = [{"op": each.op, "path": each.path, "was": each.was, "now": each.now} for each in changes]
    return {"id": name, "first": first, "second": second, "changes": listed}
