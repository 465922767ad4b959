"""Documents parsed, so that the same revision is parsed once and is the same object each time."""

from collections import OrderedDict
from dataclasses import replace
from threading import Lock
from typing import Any

from spreadwright.document import Reading
from spreadwright.errors import error
from spreadwright.store.documents import Documents
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Document, State

MOST = 500
"""Of revisions that are kept; a parsed recipe has some 50 kB."""

_UNREADABLE = error(
    "unreadable", "", "The file that this was imported from is no JSON document.", "Mend the file, and import it again."
)


class Readings:
    """What documents say, by kind, id and revision; the one that was not asked for longest goes first."""

    def __init__(self, documents: Documents, most: int = MOST) -> None:
        self._documents = documents
        self._most = most
        self._kept: OrderedDict[tuple[str, str, int], Reading[Any]] = OrderedDict()
        self._lock = Lock()

    def of(self, document: Document) -> Reading[Any]:
        """The document, read."""
        return self._known(document.kind, document.id, document.revision) or self._read(document)

    def latest(self, kind: str, name: str) -> Reading[Any]:
        """The latest revision of a document, read; raises like `Documents.get`."""
        return self.at(kind, name, self._documents.head(kind, name).revision)

    def at(self, kind: str, name: str, revision: int) -> Reading[Any]:
        """A revision that was the latest one a moment ago, or the one that is by now; raises like `latest`."""
        return self._known(kind, name, revision) or self._read(self._documents.get(kind, name))

    def _known(self, kind: str, name: str, revision: int) -> Reading[Any] | None:
        key = (kind, name, revision)
        with self._lock:
            if key in self._kept:
                self._kept.move_to_end(key)
            return self._kept.get(key)

    def _read(self, document: Document) -> Reading[Any]:
        is_public = document.head.state is State.PUBLISHED
        found = self._documents.found(document.pictures, public=is_public)
        reading = kind_named(document.kind).read(document.data or b"{}", document.id, found)
        if not document.data:
            reading = replace(reading, findings=(_UNREADABLE,), data=b"")
        with self._lock:
            kept = self._kept.setdefault((document.kind, document.id, document.revision), reading)
            while len(self._kept) > self._most:
                self._kept.popitem(last=False)
        return kept
