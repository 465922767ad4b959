"""Documents: made, read, changed, deleted and brought back; every one of these is a revision.

Whatever takes time (reading, checking, measuring) happens before a transaction begins. A write names the revision
that it is meant for; one that names none is meant for whatever is there, and tries again when somebody else was faster.
"""

from collections.abc import Callable, Mapping
from itertools import count
from typing import TypeVar

from spreadwright.document import Pictures, is_plain_name, slug
from spreadwright.errors import PictureNotSent, UnknownName, UnreadablePicture
from spreadwright.store.creating import created, made_before, names_from
from spreadwright.store.database import Database
from spreadwright.store.errors import BadId, Gone, IdTaken, StaleWrite
from spreadwright.store.heads import quick_head
from spreadwright.store.kinds import kind_named
from spreadwright.store.pictures import MOST_BYTES
from spreadwright.store.prepared import Prepared, prepared
from spreadwright.store.rows import (
    advance,
    content_of,
    digest_of,
    document_of,
    head_of,
    is_id,
    row_of,
    unknown,
)
from spreadwright.store.values import Action, Created, Document, Head, RequestKey, Revision, State
from spreadwright.store.words import clean
from spreadwright.store.writes import current, revision_row, rewritten

_Result = TypeVar("_Result")
_Kept = TypeVar("_Kept")
_MOST_TRIED = 20


class Documents:
    """Single documents, by kind and id."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def head(self, kind: str, name: str, *, gone: bool = False) -> Head:
        """The latest revision of a document, without what stands in it.

        Args:
            gone: A deleted one, too.

        Raises:
            UnknownName: There never was one.
            Gone: It is deleted.
        """
        word = kind_named(kind).word
        found = quick_head(self._database, kind, name) if is_id(name) else None
        if found is None:
            with self._database.reading() as session:
                raise unknown(session, kind, name)
        if found.state is State.DELETED and not gone:
            raise Gone(word, name, found.changed_at, found.etag)
        return found

    def stands(self, head: Head) -> bool:
        """Whether that is still the latest revision of its document."""
        return quick_head(self._database, head.kind, head.id) == head

    def get(self, kind: str, name: str) -> Document:
        """A document as it stands; raises like `head`."""
        kind_named(kind)
        with self._database.reading() as session:
            row = row_of(session, kind, name)
            return document_of(row, content_of(session, row.digest))

    def create(
        self,
        kind: str,
        data: bytes,
        who: str,
        *,
        name: str | None = None,
        note: str = "",
        key: RequestKey | None = None,
        pictures: Mapping[str, bytes] | None = None,
    ) -> Created:
        """A new draft, owned by whoever makes it.

        Args:
            name: Its id; made from its title, and numbered where that is taken, when None.
            key: The same key with the same request finds what that made, however often it is sent.
            pictures: Of a paper set, by name.

        Raises:
            UnreadableDocument, InvalidDocument: As `prepared`, and when its parents have something against it.
            IdTaken, BadId: Another document has the id that was or it is none.
            KeyReused: The key belongs to another request.
        """
        if name is not None and not (is_id(name) and len(name) <= 60):
            raise BadId(name)
        known = made_before(self._database, key)
        if known:
            return known
        contents = dict(pictures or {})
        _refuse_odd(contents)
        digests = {each: digest_of(data) for each, data in contents.items()}
        ready = prepared(kind, data, name or "", pictures=digests, found=_finder(contents, bytes, False))
        base = name or slug(ready.document.get("title"), kind_named(kind).schema)
        for tried in [base] if name else names_from(base):
            made = created(self._database, ready, tried, who, note=note, key=key, pictures=contents)
            if made:
                return made
        raise IdTaken(kind_named(kind).word, base)

    def change(self, kind: str, name: str, data: bytes, who: str, *, expected: int | None, note: str = "") -> Document:
        """Other content for a document; the same content again changes nothing.

        Raises:
            UnknownName, Gone: As `head`.
            StaleWrite: It is at another revision than the one expected.
            UnreadableDocument, InvalidDocument: As `create`; what is published has to pass the check as well.
        """

        def written(head: Head) -> Document:
            before = self.get(kind, name)
            is_public = before.head.state is State.PUBLISHED
            found = self.found(before.pictures, public=is_public)
            ready = prepared(kind, data, name, pictures=before.pictures, found=found, public=is_public)
            return self._rewritten(head, ready, Action.CHANGED, who, note)

        return self.at(kind, name, expected, written)

    def restore(self, kind: str, name: str, number: int, who: str, *, expected: int | None, note: str = "") -> Document:
        """The content of an earlier revision as a new one; what was deleted is a draft then; raises like `change`."""

        def written(head: Head) -> Document:
            with self._database.reading() as session:
                row = row_of(session, kind, name, gone=True)
                earlier = revision_row(session, row, number)
                data = content_of(session, earlier.digest)
            is_public = head.state is State.PUBLISHED
            found = self.found(earlier.pictures, public=is_public)
            ready = prepared(kind, data, name, pictures=earlier.pictures, found=found, public=is_public)
            return self._rewritten(head, ready, Action.RESTORED, who, note or f"Revision {number}.")

        return self.at(kind, name, expected, written, gone=True)

    def put_pictures(
        self, name: str, pictures: Mapping[str, bytes], who: str, *, expected: int | None, note: str = ""
    ) -> Document:
        """Pictures of a paper set, added or put in the place of others; raises like `change`.

        They need not all come at once, nor be named by the set already, as long as it is a draft.
        """
        _refuse_odd(pictures)
        digests = {each: digest_of(data) for each, data in pictures.items()}
        told = note or f"Pictures: {', '.join(sorted(pictures))}."
        new = tuple(pictures.values())
        return self._with_pictures(name, lambda there: {**there, **digests}, new, who, expected, told)

    def delete_picture(self, name: str, picture: str, who: str, *, expected: int | None, note: str = "") -> Document:
        """A paper set without one of its pictures; earlier revisions keep it; raises like `change`.

        Raises:
            UnknownName: It has none of that name.
        """

        def without(there: Mapping[str, str]) -> dict[str, str]:
            if picture not in there:
                raise UnknownName("picture", picture, sorted(there))
            return {each: digest for each, digest in there.items() if each != picture}

        return self._with_pictures(name, without, (), who, expected, note or f"Without the picture {picture}.")

    def _with_pictures(
        self,
        name: str,
        change: Callable[[Mapping[str, str]], dict[str, str]],
        new: tuple[bytes, ...],
        who: str,
        expected: int | None,
        note: str,
    ) -> Document:
        """A paper set whose pictures, by name and digest, are changed; new ones come along as bytes."""
        come = {digest_of(data): data for data in new}

        def written(head: Head) -> Document:
            before = self.get("paper-sets", name)
            is_public = before.head.state is State.PUBLISHED
            digests = change(before.pictures)
            found = _finder(digests, lambda digest: come.get(digest) or self._kept(digest), is_public)
            ready = prepared("paper-sets", before.data, name, pictures=digests, found=found, public=is_public)
            return self._rewritten(head, ready, Action.CHANGED, who, note, *new)

        return self.at("paper-sets", name, expected, written)

    def delete(self, kind: str, name: str, who: str, *, expected: int | None, note: str = "") -> Revision:
        """Takes a document away; its id stays taken and its revisions stay readable; raises like `change`."""

        def written(head: Head) -> Revision:
            at = self._database.now()
            with self._database.writing() as session:
                row = current(session, head)
                advance(session, row, Action.DELETED, who=who, at=at, note=note, state=State.DELETED.value)
                return Revision(row.revision, Action.DELETED, State.DELETED, row.digest, who, at, note)

        return self.at(kind, name, expected, written)

    def picture(self, document: Document, picture: str) -> bytes:
        """The bytes of a picture of a paper set.

        Raises:
            UnreadablePicture: It has none of that name.
        """
        return self.found(document.pictures, public=True)(picture)

    def found(self, pictures: Mapping[str, str], *, public: bool) -> Pictures:
        """What finds pictures by name, given their digests.

        Args:
            public: Everybody reads the set, so that all of them have to be there; to a draft they may still come.
        """
        return _finder(pictures, self._kept, public)

    def _kept(self, digest: str) -> bytes:
        with self._database.reading() as session:
            return content_of(session, digest)

    def at(
        self, kind: str, name: str, expected: int | None, write: Callable[[Head], _Result], *, gone: bool = False
    ) -> _Result:
        """Writes onto the revision that is expected, or onto whichever is there."""
        for tried in count(1):
            with self._database.reading() as session:
                head = head_of(row_of(session, kind, name, gone=gone))
            if expected is not None and head.revision != expected:
                raise StaleWrite(kind_named(kind).word, name, expected, head.revision)
            try:
                return write(head)
            except StaleWrite:
                if expected is not None or tried >= _MOST_TRIED:
                    raise
        raise AssertionError

    def _rewritten(
        self, head: Head, ready: Prepared, action: Action, who: str, note: str, *pictures: bytes
    ) -> Document:
        now = self._database.now()
        with self._database.writing() as session:
            return rewritten(session, head, ready, action, who=who, at=now, note=note, pictures=pictures)


def _finder(pictures: Mapping[str, _Kept], data: Callable[[_Kept], bytes], is_public: bool) -> Pictures:
    def found(name: str) -> bytes:
        if name not in pictures:
            raise _missing(name) if is_public else PictureNotSent(name)
        return data(pictures[name])

    return found


def _missing(name: str) -> UnreadablePicture:
    return UnreadablePicture("picture-missing", "There is no such picture.", "Send it along.", name=name)


def _refuse_odd(pictures: Mapping[str, bytes]) -> None:
    """Nothing, or UnreadablePicture for a name that no file can have, and for bytes that are too many."""
    for name, data in pictures.items():
        if not is_plain_name(name) or clean(name) != name:
            told, remedy = "Its name is none of a file.", "Name it without folders."
            raise UnreadablePicture("picture-outside-folder", told, remedy, name=clean(name))
        if len(data) > MOST_BYTES:
            told = f"The file has more than {MOST_BYTES // 1024**2} MB."
            raise UnreadablePicture("picture-too-large", told, "Save it with fewer pixels.", name=name)
