"""Bearer tokens for writing over HTTP: made, listed, revoked."""

from datetime import UTC, datetime, timedelta
from typing import TYPE_CHECKING, Any

import click

from spreadwright.cli.printing import print_json
from spreadwright.cli.stores import named_store
from spreadwright.store.values import SCOPES

if TYPE_CHECKING:  # SQL is loaded by those alone who need it
    from spreadwright.store.tokens import Token, Tokens

MOST_DAYS = 3650


@click.group()
def token() -> None:
    """Make, list and revoke the tokens that writing over HTTP needs."""


@token.command()
@click.option("--owner", required=True, help="Whose documents it writes: a name of your choice.")
@click.option(
    "--scope",
    "scopes",
    multiple=True,
    type=click.Choice(SCOPES),
    default=("write",),
    show_default=True,
    help="What it opens; may be given several times.",
)
@click.option("--days", default=90, show_default=True, type=click.IntRange(1, MOST_DAYS), help="How long it lasts.")
@click.option("--note", default="", help="What it is for.")
def create(owner: str, scopes: tuple[str, ...], days: int, note: str) -> None:
    """Make a token and show it, this once."""
    expires_at = datetime.now(UTC) + timedelta(days=days)
    issued = _tokens().create(owner, scopes, expires_at=expires_at, note=note)
    click.echo(issued.secret)
    click.echo(f"Token {issued.token.id} of {owner}; nobody can be shown it again. It lasts {days} days.", err=True)


@token.command("list")
@click.option("--owner", help="Only those of this owner.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def list_(owner: str | None, as_json: bool) -> None:
    """List tokens; their secrets are known to nobody."""
    now = datetime.now(UTC)
    told: list[dict[str, Any]] = [
        {
            "id": each.id,
            "owner": each.owner,
            "scopes": sorted(each.scopes),
            "begins": each.hint,
            "state": _state(each, now),
            "note": each.note,
        }
        for each in _tokens().list(owner)
    ]
    if as_json:
        print_json({"tokens": told})
        return
    for each in told:
        words = f"{each['id']:>4}  {each['begins']}…  {each['owner']}  {', '.join(each['scopes'])}  {each['state']}"
        click.echo(f"{words}  {each['note']}".rstrip())


@token.command()
@click.argument("number", type=click.IntRange(1, 2**31 - 1))
def revoke(number: int) -> None:
    """Make the token of that NUMBER open nothing any more."""
    revoked = _tokens().revoke(number)
    click.echo(f"Token {revoked.id} of {revoked.owner} is revoked.", err=True)


def _state(token: "Token", now: datetime) -> str:
    at = token.revoked_at or token.expires_at
    return f"{token.why_shut(now) or 'until'} {at:%Y-%m-%d}" if at else "lasts"


def _tokens() -> "Tokens":
    """Those of the database that the environment names; one of another run would open nothing."""
    return named_store().tokens
