"""How much one client may ask for in a minute, counted over all processes in the store.

Headers: `RateLimit-Policy` and `RateLimit` as the draft of the HTTPAPI working group has them; `Retry-After` with 429.
"""

from dataclasses import dataclass
from datetime import UTC, datetime

from flask import Response, g, request

from spreadwright.errors import SpreadwrightError
from spreadwright.rest.identity import caller
from spreadwright.rest.service import service
from spreadwright.rest.working import is_job

WINDOW_S = 60
WORK, WRITES = "work", "writes"


@dataclass(frozen=True, slots=True)
class Allowance:
    """What a client may ask for, and what is left of it."""

    name: str
    most: int
    left: int
    seconds: int


class TooMany(SpreadwrightError):
    """More than a client may ask for in a minute."""

    def __init__(self, allowance: Allowance) -> None:
        super().__init__(allowance)
        self.allowance = allowance

    def __str__(self) -> str:
        what = "answers worked out" if self.allowance.name == WORK else "writes"
        told = f"At most {self.allowance.most} {what} in {WINDOW_S} s are for one client."
        return f"{told} Ask again in {self.allowance.seconds} s."


def charge(name: str) -> None:
    """Counts one of `WORK` or `WRITES` for whoever asks; a job was counted when it was asked for.

    Raises:
        TooMany: That was one too many.
    """
    settings = service().settings
    most = settings.work_per_minute if name == WORK else settings.writes_per_minute
    if not most or is_job():
        return
    count = service().store.counters.hit(f"{name}:{client_name()}", WINDOW_S)
    seconds = max(1, round((count.resets_at - datetime.now(UTC)).total_seconds()))
    g.allowance = Allowance(name, most, max(0, most - count.used), seconds)
    if count.used > most:
        raise TooMany(g.allowance)


def client_name() -> str:
    """Who asks: the owner of the token, else the address."""
    token = caller()
    return f"owner {token.owner}" if token else f"address {request.remote_addr or ''}"


def with_allowance(response: Response) -> Response:
    """The response with what is left, if anything was counted."""
    allowance: Allowance | None = g.get("allowance")
    if allowance:
        response.headers["RateLimit-Policy"] = f'"{allowance.name}";q={allowance.most};w={WINDOW_S}'
        response.headers["RateLimit"] = f'"{allowance.name}";r={allowance.left};t={allowance.seconds}'
    return response
