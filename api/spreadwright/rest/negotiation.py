"""Which representation a client gets: RFC 9110, section 12.5.1."""

from collections.abc import Sequence

Range = tuple[str, float]
"""A media range such as ``image/*`` with its quality, 0 to 1."""


def preferred(offers: Sequence[str], accept: Sequence[Range]) -> str | None:
    """The offered media type that suits the client best, or None; the earlier of two that suit equally.

    Args:
        offers: Media types, our own preference first.
        accept: What the client accepts; nothing at all means anything.

    >>> preferred(["application/json", "image/png"], [("image/*", 1.0), ("*/*", 0.8)])
    'image/png'
    """
    if not accept:
        return offers[0]
    qualities = {offer: _quality(offer, accept) for offer in offers}
    best = max(offers, key=qualities.__getitem__)
    return best if qualities[best] > 0 else None


def _quality(offer: str, accept: Sequence[Range]) -> float:
    """The quality of the most specific range that covers the offer; 0 when none does."""
    ranges = [(_without_parameters(media_range), quality) for media_range, quality in accept]
    for covering in (offer, offer.split("/")[0] + "/*", "*/*"):
        found = [quality for media_range, quality in ranges if media_range == covering]
        if found:
            return max(found)
    return 0.0


def _without_parameters(media_range: str) -> str:
    return media_range.split(";")[0].strip().lower()
