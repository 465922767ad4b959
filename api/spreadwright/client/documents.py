"""A document as the service keeps it, with the revision that a change of it is made from."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, slots=True)
class Stored:
    """A document and what names its revision.

    Attributes:
        kind: `recipes`, `paper-sets` or `benches`.
        id: Its name in addresses.
        etag: Sent back as `If-Match`, so that nobody's change is lost.
        content: The document itself.
    """

    kind: str
    id: str
    etag: str
    content: dict[str, Any]
