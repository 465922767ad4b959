"""What a service refuses, as exceptions."""

from collections.abc import Mapping
from typing import Any

import httpx

Json = dict[str, Any]


class Problem(Exception):
    """A problem document (RFC 9457).

    Attributes:
        status: Of HTTP.
        code: The last part of its `type`, which never changes; empty when the answer was no problem document.
        errors: One for each thing that is wrong, with a JSON Pointer or the name of a parameter.
        members: The whole document.
    """

    def __init__(self, status: int, members: Mapping[str, Any]) -> None:
        self.status = status
        self.members = dict(members)
        self.code = str(members.get("type", "")).rpartition("/")[2]
        self.errors: list[Json] = list(members.get("errors", ()))
        super().__init__(status, self.code)

    def __str__(self) -> str:
        words = self.members.get("detail") or self.members.get("title") or "The service refused."
        more = "".join(f" {each.get('detail', '')} {each.get('remedy', '')}" for each in self.errors)
        return f"{self.status} {self.code}: {words}{more}"


class Stale(Problem):
    """Somebody else changed the document first; nothing was overwritten."""


class Unreachable(Exception):
    """The service did not answer, however often it was asked."""


def problem_of(response: httpx.Response) -> Problem:
    """The exception for a response that refuses."""
    try:
        found = response.json()
    except ValueError:
        found = {}
    members = found if isinstance(found, dict) else {}
    kind = Stale if response.status_code == httpx.codes.PRECONDITION_FAILED else Problem
    return kind(response.status_code, members)
