"""Dates as people and build systems write them."""

from datetime import UTC, datetime

import click


def moment(given: str | None) -> datetime | None:
    """A day as ``2026-11-30``, a time as ``2026-11-30T09:00``, or seconds since 1970; UTC unless it says otherwise.

    >>> moment("0"), moment("2026-11-30").isoformat()
    (datetime.datetime(1970, 1, 1, 0, 0, tzinfo=datetime.timezone.utc), '2026-11-30T00:00:00+00:00')

    Raises:
        BadParameter: It is none of these.
    """
    if not given:
        return None
    try:
        if given.isascii() and given.isdigit():
            return datetime.fromtimestamp(int(given), UTC)
        found = datetime.fromisoformat(given)
        return found if found.tzinfo else found.replace(tzinfo=UTC)
    except (ValueError, OverflowError, OSError) as reason:
        raise click.BadParameter(f"“{given}” is no date. Write it as 2026-11-30, or in seconds since 1970.") from reason
