from datetime import timedelta

import pytest
from sqlalchemy import select

from spreadwright.errors import UnknownName
from spreadwright.store.errors import InvalidToken
from spreadwright.store.tables import TokenRow


def test_a_token_opens_what_its_scopes_say(store):
    issued = store.tokens.create("ann", ("write",), note="Laptop")
    token = store.tokens.find(issued.secret)
    assert token == issued.token == store.tokens.numbered(token.id)
    assert (token.owner, token.note) == ("ann", "Laptop")
    assert token.may("write") and not token.may("review") and not token.may("admin")
    admin = store.tokens.create("root", ("admin",)).token
    assert all(admin.may(scope) for scope in ("write", "review", "admin"))


def test_no_secret_is_kept_or_shown(store):
    issued = store.tokens.create("ann", ("write",))
    assert len(issued.secret) >= 43 and issued.secret.startswith("spw_")
    assert issued.secret not in repr(issued)
    with store.database.reading() as session:
        row = session.execute(select(TokenRow.__table__)).one()
    assert not any(issued.secret[8:] in str(value) for value in row)


def test_expired_revoked_and_unknown_tokens_open_nothing(store, clock):
    short = store.tokens.create("ann", ("write",), expires_at=clock.moment + timedelta(minutes=1))
    assert store.tokens.find(short.secret).owner == "ann"
    clock.moment += timedelta(minutes=2)
    lost = store.tokens.create("ann", ("write",))
    assert store.tokens.revoke(lost.token.id).revoked_at == store.tokens.revoke(lost.token.id).revoked_at
    for secret, reason in ((short.secret, "expired"), (lost.secret, "revoked"), ("spw_x", "unknown"), ("", "unknown")):
        with pytest.raises(InvalidToken) as refused:
            store.tokens.find(secret)
        assert refused.value.reason == reason
    for number, reason in ((short.token.id, "expired"), (lost.token.id, "revoked"), (99, "unknown")):
        with pytest.raises(InvalidToken) as refused:
            store.tokens.numbered(number)
        assert refused.value.reason == reason


def test_tokens_are_listed_by_owner(store):
    for owner in ("ann", "bob", "ann"):
        store.tokens.create(owner, ("write", "review"))
    assert [token.owner for token in store.tokens.list()] == ["ann", "bob", "ann"]
    assert len(store.tokens.list("ann")) == 2


def test_unknown_scopes_and_numbers_are_refused(store):
    with pytest.raises(UnknownName):
        store.tokens.create("ann", ("wrote",))
    for number in (99, 0, -1, 10**30):
        with pytest.raises(UnknownName):
            store.tokens.revoke(number)
