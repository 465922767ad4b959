"""How long a client would rather wait: the header `Prefer`, RFC 7240."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

MOST_WAIT_S = 30
"""A client that waits holds one of the few threads that answer."""
_PREFERENCE = re.compile(r'^([\w!#$%&\'*+.^`|~-]+)\s*(?:=\s*(?:"([^"]*)"|([^\s;]*)))?\s*(?:;.*)?$')


@dataclass(frozen=True, slots=True)
class Preference:
    """What a client prefers.

    Attributes:
        is_async: Whether it wants a job at once, however short the work is.
        wait_s: How many seconds it would wait, at most `MOST_WAIT_S`; None when it did not say.
    """

    is_async: bool = False
    wait_s: int | None = None


def preference(headers: Iterable[str]) -> Preference:
    """What the values of the header say; what is not understood is ignored, of two the first counts.

    >>> preference(["respond-async, wait=10"])
    Preference(is_async=True, wait_s=10)
    >>> preference(["wait"]).wait_s
    30
    """
    found: dict[str, str] = {}
    for each in ",".join(headers).split(","):
        matched = _PREFERENCE.match(each.strip())
        if matched:
            found.setdefault(matched[1].lower(), matched[2] or matched[3] or "")
    return Preference("respond-async" in found, _seconds(found["wait"]) if "wait" in found else None)


def _seconds(value: str) -> int | None:
    if not value:
        return MOST_WAIT_S
    return min(int(value[:9]), MOST_WAIT_S) if re.fullmatch(r"[0-9]+", value) else None
