"""Bearer tokens: made once, shown once, and known here by their hash alone."""

from dataclasses import dataclass, field
from datetime import datetime
from hashlib import sha256
from hmac import compare_digest
from secrets import token_urlsafe

from sqlalchemy import select

from spreadwright.errors import UnknownName
from spreadwright.store.database import Database
from spreadwright.store.errors import InvalidToken
from spreadwright.store.tables import TokenRow
from spreadwright.store.values import SCOPES
from spreadwright.store.words import clean

PREFIX = "spw_"
"""By this a lost token is recognised as one of ours."""
_BYTES, _SHOWN, _LONGEST = 32, 8, 200


@dataclass(frozen=True, slots=True)
class Token:
    """What is known of a token.

    Attributes:
        owner: Whose documents it writes.
        hint: Its first characters, to tell it from others.
    """

    id: int
    owner: str
    scopes: frozenset[str]
    hint: str
    note: str
    created_at: datetime
    expires_at: datetime | None
    revoked_at: datetime | None

    def may(self, scope: str) -> bool:
        """Whether it opens what a scope opens; `admin` opens everything."""
        return scope in self.scopes or "admin" in self.scopes

    def why_shut(self, now: datetime) -> str:
        """Why it opens nothing by now, ``revoked`` or ``expired``; empty while it does."""
        if self.revoked_at is not None:
            return "revoked"
        return "expired" if self.expires_at is not None and self.expires_at <= now else ""


@dataclass(frozen=True, slots=True)
class Issued:
    """A new token with its secret, which nobody can be told again."""

    secret: str = field(repr=False)
    token: Token


class Tokens:
    """Every token that was made."""

    def __init__(self, database: Database) -> None:
        self._database = database

    def create(
        self, owner: str, scopes: tuple[str, ...], *, expires_at: datetime | None = None, note: str = ""
    ) -> Issued:
        """A new token.

        Raises:
            UnknownName: A scope is none.
        """
        for scope in scopes:
            if scope not in SCOPES:
                raise UnknownName("scope", scope, SCOPES)
        secret = PREFIX + token_urlsafe(_BYTES)
        row = TokenRow(
            digest=_digest(secret),
            hint=secret[:_SHOWN],
            owner=clean(owner)[:_LONGEST],
            scopes=" ".join(scope for scope in SCOPES if scope in scopes),
            note=clean(note),
            created_at=self._database.now(),
            expires_at=expires_at,
            revoked_at=None,
        )
        with self._database.writing() as session:
            session.add(row)
            session.flush()
            return Issued(secret, _token(row))

    def find(self, secret: str) -> Token:
        """The token of a secret, if it still opens anything.

        Raises:
            InvalidToken: It is unknown, expired or revoked.
        """
        digest = _digest(secret)
        with self._database.reading() as session:
            row = session.scalar(select(TokenRow).where(TokenRow.digest == digest))
        return self._good(row if row is not None and compare_digest(row.digest, digest) else None)

    def numbered(self, token_id: int) -> Token:
        """The token of a number, for what its secret was shown for before; raises like `find`."""
        with self._database.reading() as session:
            return self._good(session.get(TokenRow, token_id))

    def _good(self, row: TokenRow | None) -> Token:
        if row is None:
            raise InvalidToken("unknown")
        token = _token(row)
        reason = token.why_shut(self._database.now())
        if reason:
            raise InvalidToken(reason)
        return token

    def list(self, owner: str | None = None) -> tuple[Token, ...]:
        """Every token, or those of one owner, in the order in which they were made."""
        found = select(TokenRow).order_by(TokenRow.id)
        with self._database.reading() as session:
            return tuple(map(_token, session.scalars(found if owner is None else found.where(TokenRow.owner == owner))))

    def revoke(self, token_id: int) -> Token:
        """Makes a token open nothing from now on; a second time changes nothing.

        Raises:
            UnknownName: There is none of that number.
        """
        with self._database.writing() as session:
            row = session.get(TokenRow, token_id, with_for_update=True) if 0 < token_id < 2**62 else None
            if row is None:
                raise UnknownName(
                    "token", str(token_id), map(str, session.scalars(select(TokenRow.id).order_by(TokenRow.id)))
                )
            row.revoked_at = row.revoked_at or self._database.now()
            return _token(row)


def _digest(secret: str) -> str:
    return sha256(secret.encode("utf-8", "surrogatepass")).hexdigest()


def _token(row: TokenRow) -> Token:
    return Token(
        row.id,
        row.owner,
        frozenset(row.scopes.split()),
        row.hint,
        row.note,
        row.created_at,
        row.expires_at,
        row.revoked_at,
    )
