"""What the store hands out: documents, revisions and their states, as frozen values."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

SCOPES = ("write", "review", "admin")
"""What a token may open, the least first."""


class State(StrEnum):
    """How far a document is from its readers."""

    DRAFT = "draft"
    PUBLISHED = "published"
    WITHDRAWN = "withdrawn"
    DELETED = "deleted"


class Action(StrEnum):
    """What made a revision."""

    CREATED = "created"
    CHANGED = "changed"
    RESTORED = "restored"
    DELETED = "deleted"
    PUBLISHED = "published"
    WITHDRAWN = "withdrawn"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True)
class Facts:
    """What documents are found by, worked out once when they are written.

    Attributes:
        pages: Of the spread; 0 for what has none.
        sheets: Whole sheets that are cut up.
        cuts: At the trimmer on the bench of its unit; 0 while it cannot be cut.
        page_width: Ticks; 0 for what has no pages.
        page_height: Likewise.
    """

    title: str = ""
    summary: str = ""
    licence: str = ""
    language: str = ""
    pages: int = 0
    sheets: int = 0
    photos: int = 0
    cuts: int = 0
    page_width: int = 0
    page_height: int = 0
    roles: tuple[str, ...] = ()
    authors: tuple[str, ...] = ()
    tags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Head:
    """The latest revision of a document, without what stands in it.

    Attributes:
        kind: As addresses name it: ``recipes``.
        digest: SHA-256 of the canonical bytes, hexadecimal.
        owner: Who created it.
    """

    kind: str
    id: str
    revision: int
    digest: str
    state: State
    owner: str
    changed_at: datetime

    @property
    def etag(self) -> str:
        """Names the revision, without quotation marks; whatever changes about the document changes it."""
        return f"{self.revision}-{self.digest[:16]}"


@dataclass(frozen=True, slots=True)
class Document:
    """A document as it stands.

    Attributes:
        review_note: Why a reviewer refused it, empty otherwise.
        pictures: Name to digest, of those that came with a paper set.
        data: Canonical JSON; empty for a file of a folder that could not be read.
    """

    head: Head
    created_at: datetime
    published_at: datetime | None
    review_note: str
    facts: Facts
    data: bytes = field(repr=False)
    pictures: Mapping[str, str] = field(default_factory=dict, hash=False)

    @property
    def kind(self) -> str:
        """As addresses name it."""
        return self.head.kind

    @property
    def id(self) -> str:
        """Its id, unique in its kind."""
        return self.head.id

    @property
    def revision(self) -> int:
        """The number of its latest revision."""
        return self.head.revision

    @property
    def content(self) -> dict[str, Any]:
        """What stands in it, parsed anew for each caller."""
        parsed: dict[str, Any] = json.loads(self.data or b"{}")
        return parsed


@dataclass(frozen=True, slots=True)
class Revision:
    """One step in the life of a document.

    Attributes:
        number: From 1, without gaps.
        state: Of the document since then.
    """

    number: int
    action: Action
    state: State
    digest: str
    who: str
    at: datetime
    note: str = ""


@dataclass(frozen=True, slots=True)
class Created:
    """A new document, or the one that the same request made before."""

    document: Document
    is_replay: bool = False


@dataclass(frozen=True, slots=True)
class RequestKey:
    """What tells a repeated request from a new one.

    Attributes:
        owner: Who asks; keys of different owners have nothing to do with one another.
        fingerprint: A hash of what was asked.
    """

    owner: str
    key: str
    fingerprint: str


@dataclass(frozen=True, slots=True)
class Change:
    """One difference between two revisions.

    Attributes:
        op: ``added``, ``removed`` or ``changed``.
        path: JSON Pointer.
    """

    op: str
    path: str
    was: Any = field(default=None, hash=False)
    now: Any = field(default=None, hash=False)
