"""Which revision a write is meant for: If-Match and If-None-Match (RFC 9110, section 13), 428 where neither stands."""

import re

from flask import request

from spreadwright.errors import SpreadwrightError
from spreadwright.store.errors import StaleWrite
from spreadwright.store.kinds import kind_named
from spreadwright.store.values import Head

_TAG = re.compile(r"([1-9][0-9]{0,8})-[0-9a-f]{16}")


class Unconditional(SpreadwrightError):
    """A write that does not say which revision it is meant for.

    Args:
        new: The id that it would make a document of; empty where one is there.
    """

    def __init__(self, new: str = "") -> None:
        super().__init__(new)
        self.new = new

    def __str__(self) -> str:
        if self.new:
            return f"There is nothing at “{self.new}” to put this in the place of. Send `If-None-Match: *` to make it."
        return "Send If-Match with the ETag of the revision that is meant, so that nobody's change is overwritten."


class Exists(SpreadwrightError):
    """A document that was to be made, and is there."""

    def __init__(self, head: Head) -> None:
        super().__init__(head)
        self.head = head

    def __str__(self) -> str:
        return f"There is a {kind_named(self.head.kind).word} “{self.head.id}” already."


def makes_new() -> bool:
    """Whether the write is meant only for what is not there yet."""
    return request.headers.get("If-None-Match", "").strip() == "*"


def require_condition(new: str = "") -> None:
    """Nothing.

    Args:
        new: The id that the write would make a document of; empty where one is there.

    Raises:
        Unconditional: The request has no If-Match.
    """
    if not request.headers.get("If-Match", "").strip():
        raise Unconditional(new)


def expected(head: Head) -> int:
    """The revision that the request is meant for: that of the head, where its tag, or a star, is sent.

    Raises:
        Unconditional: The request has no If-Match.
        StaleWrite: It names other revisions.
    """
    require_condition()
    tags = request.if_match
    if tags.star_tag or head.etag in tags.as_set():
        return head.revision
    numbers = [int(found[1]) for found in map(_TAG.fullmatch, sorted(filter(None, tags.as_set()))) if found]
    raise StaleWrite(kind_named(head.kind).word, head.id, numbers[0] if numbers else None, head.revision)
