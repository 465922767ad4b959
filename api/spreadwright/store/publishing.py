"""From draft to published to withdrawn: who may read a document, and why it was refused."""

from typing import Any

from spreadwright.store.database import Database
from spreadwright.store.documents import Documents
from spreadwright.store.errors import WrongState
from spreadwright.store.kinds import kind_named
from spreadwright.store.prepared import prepared
from spreadwright.store.rows import advance, content_of, document_of
from spreadwright.store.values import Action, Document, Head, State
from spreadwright.store.words import clean
from spreadwright.store.writes import current

_FROM: dict[Action, tuple[State, ...]] = {
    Action.PUBLISHED: (State.DRAFT, State.WITHDRAWN),
    Action.WITHDRAWN: (State.PUBLISHED,),
    Action.REFUSED: (State.DRAFT, State.PUBLISHED, State.WITHDRAWN),
}
"""What can become of which state."""


class Publishing:
    """The states of documents; each change of state is a revision with the same content."""

    def __init__(self, database: Database, documents: Documents) -> None:
        self._database = database
        self._documents = documents

    def publish(self, kind: str, name: str, who: str, *, expected: int | None, note: str = "") -> Document:
        """A draft, or what was withdrawn, for everybody to read.

        Raises:
            UnknownName, Gone, StaleWrite: As `Documents.change`.
            WrongState: It is published already.
            InvalidDocument: The check has errors.
        """

        def written(head: Head) -> Document:
            _refuse(head, Action.PUBLISHED)
            before = self._documents.get(kind, name)
            found = self._documents.found(before.pictures, public=True)
            prepared(kind, before.data, name, pictures=before.pictures, found=found, public=True)
            first = before.published_at or self._database.now()
            new = {"state": State.PUBLISHED.value, "published_at": first, "review_note": ""}
            return self._written(head, Action.PUBLISHED, who, note, new)

        return self._documents.at(kind, name, expected, written)

    def withdraw(self, kind: str, name: str, who: str, *, expected: int | None, note: str = "") -> Document:
        """What is published, back from its readers; raises like `publish`."""

        def written(head: Head) -> Document:
            _refuse(head, Action.WITHDRAWN)
            return self._written(head, Action.WITHDRAWN, who, note, {"state": State.WITHDRAWN.value})

        return self._documents.at(kind, name, expected, written)

    def refuse(self, kind: str, name: str, who: str, *, expected: int | None, note: str) -> Document:
        """A draft again, with the reviewer's reason for its author; raises like `publish`."""

        def written(head: Head) -> Document:
            _refuse(head, Action.REFUSED)
            new = {"state": State.DRAFT.value, "review_note": clean(note)}
            return self._written(head, Action.REFUSED, who, note, new)

        return self._documents.at(kind, name, expected, written)

    def _written(self, head: Head, action: Action, who: str, note: str, new: dict[str, Any]) -> Document:
        with self._database.writing() as session:
            row = current(session, head)
            advance(session, row, action, who=who, at=self._database.now(), note=note, **new)
            return document_of(row, content_of(session, row.digest))


def _refuse(head: Head, action: Action) -> None:
    if head.state not in _FROM[action]:
        raise WrongState(kind_named(head.kind).word, head.id, head.state.value, action.value)
