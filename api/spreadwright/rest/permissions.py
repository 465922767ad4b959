"""Whether whoever asks may do something to a document, and to which revision of it: asked in one order everywhere.

Token, rate, whether it is there, whose it is, which revision; so a stranger learns no more than everybody may.
"""

from dataclasses import dataclass

from spreadwright.rest.conditions import expected
from spreadwright.rest.identity import Forbidden, bearer, caller, may_see_drafts, owns
from spreadwright.rest.rates import WRITES, charge
from spreadwright.rest.service import collection, service
from spreadwright.rest.shelf import tell_own
from spreadwright.store.errors import Gone
from spreadwright.store.tokens import Token
from spreadwright.store.values import Head, State


@dataclass(frozen=True, slots=True)
class Turn:
    """A write that may be done.

    Attributes:
        who: Whose token it is.
        expected: The revision that it is meant for.
    """

    who: str
    head: Head
    expected: int


def writer() -> Token:
    """Whoever asks, if writing is open to them, after this write was counted."""
    token = bearer("write")
    charge(WRITES)
    return token


def reviewer() -> Token:
    """Whoever asks, if reviewing is open to them, after this write was counted."""
    token = bearer("review")
    charge(WRITES)
    return token


def own(kind: str, name: str) -> Turn:
    """A write to a document of whoever asks.

    Raises:
        NoToken, Forbidden, TooMany, UnknownName, Gone, Unconditional, StaleWrite: Whichever comes first.
    """
    token = writer()
    head = collection().head(kind, name)
    _refuse_others(token, head)
    return Turn(token.owner, head, expected(head))


def own_or_reviewed(kind: str, name: str) -> Turn:
    """A write that owners and reviewers may do; raises like `own`."""
    token = bearer("review") if may_review() else bearer("write")
    charge(WRITES)
    head = collection().head(kind, name)
    if not token.may("review"):
        _refuse_others(token, head)
    return Turn(token.owner, head, expected(head))


def reviewed(kind: str, name: str) -> Turn:
    """A write that only reviewers may do; raises like `own`."""
    token = reviewer()
    head = collection().head(kind, name)
    return Turn(token.owner, head, expected(head))


def own_or_gone(kind: str, name: str) -> Turn:
    """A write to a document of whoever asks, be it deleted; raises like `own`, except Gone."""
    token = writer()
    head = latest(kind, name)
    if head.state is State.DELETED and not owns(token, head):
        raise Forbidden
    _refuse_others(token, head)
    return Turn(token.owner, head, expected(head))


def latest(kind: str, name: str) -> Head:
    """The latest revision of a document that whoever asks may see, or of one that was deleted.

    Raises:
        UnknownName: There never was one, or it is not for whoever asks.
    """
    try:
        return collection().head(kind, name)
    except Gone:
        return service().store.documents.head(kind, name, gone=True)


def is_public_only(head: Head) -> bool:
    """Whether whoever asks reads only what was published of a document; what others see is kept from shared caches."""
    if not may_see_drafts(head):
        return True
    tell_own()
    return False


def may_review() -> bool:
    """Whether whoever asks has a token that reviews."""
    token = caller()
    return token is not None and token.may("review")


def _refuse_others(token: Token, head: Head) -> None:
    if not owns(token, head):
        raise Forbidden
