"""Who asks: bearer tokens (RFC 6750). Reading needs none; what a token may do stands in its scopes."""

from flask import g, request

from spreadwright.errors import SpreadwrightError
from spreadwright.rest.service import service
from spreadwright.store.errors import InvalidToken
from spreadwright.store.tokens import Token
from spreadwright.store.values import Head, State

REALM = 'Bearer realm="spreadwright"'
_CALLER = "spreadwright_caller"


class NoToken(SpreadwrightError):
    """A request without a token for something that needs one."""

    def __str__(self) -> str:
        return "This needs a token: send `Authorization: Bearer …`. Make one with: spreadwright token create."


class Forbidden(SpreadwrightError):
    """A token that does not open this.

    Attributes:
        scope: What it lacks; empty where it has the scope, and the document is somebody else's.
    """

    def __init__(self, scope: str = "") -> None:
        super().__init__(scope)
        self.scope = scope

    def __str__(self) -> str:
        if self.scope:
            return f"The token lacks the scope “{self.scope}”."
        return "The document belongs to somebody else; only its owner can do this."


def caller() -> Token | None:
    """Whoever's token came with the request; None without one.

    Raises:
        InvalidToken: It opens nothing (any more), or is not written as RFC 6750 says.
    """
    if _CALLER not in g:
        setattr(g, _CALLER, _found())
    found: Token | None = getattr(g, _CALLER)
    return found


def act_for(token_id: int | None) -> None:
    """What is done from here on is done for whoever showed that token before; for nobody without one.

    Raises:
        InvalidToken: It opens nothing any more.
    """
    setattr(g, _CALLER, None if token_id is None else service().store.tokens.numbered(token_id))


def caller_so_far() -> Token | None:
    """Whoever's token was looked at already; None where nobody needed to know yet."""
    found: Token | None = g.get(_CALLER)
    return found


def _found() -> Token | None:
    header = request.headers.get("Authorization", "")
    if not header:
        return None
    scheme, _, secret = header.partition(" ")
    secret = secret.strip()
    if scheme.lower() != "bearer" or not secret.isascii() or not 1 <= len(secret) <= 200:
        raise InvalidToken("unknown")
    return service().store.tokens.find(secret)


def bearer(scope: str) -> Token:
    """The token of the request, which has that scope.

    Raises:
        NoToken, InvalidToken, Forbidden: There is none that has.
    """
    found = caller()
    if found is None:
        raise NoToken
    if not found.may(scope):
        raise Forbidden(scope)
    return found


def owns(token: Token, head: Head) -> bool:
    """Whether a token may change a document."""
    return head.owner == token.owner or token.may("admin")


def may_see(head: Head) -> bool:
    """Whether whoever asks may read a document: everybody what is published, owners and reviewers the rest."""
    return head.state is State.PUBLISHED or may_see_drafts(head)


def may_see_drafts(head: Head) -> bool:
    """Whether whoever asks may read what was never published of a document: its owner, and reviewers."""
    found = caller()
    return found is not None and (owns(found, head) or found.may("review"))


def challenge(reason: Exception) -> str | None:
    """The value of WWW-Authenticate that goes with an error; None where none does."""
    if isinstance(reason, NoToken):
        return REALM
    if isinstance(reason, InvalidToken):
        return f'{REALM}, error="invalid_token"'
    if isinstance(reason, Forbidden) and reason.scope:
        return f'{REALM}, error="insufficient_scope", scope="{reason.scope}"'
    return None
