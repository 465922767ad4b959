"""Tables for spreadsheets and other programs: comma-separated values in UTF-8 (RFC 4180)."""

import csv
from collections.abc import Iterable, Sequence
from io import StringIO

from spreadwright.drawing.millimetres import exact_mm
from spreadwright.lengths import TICKS, Unit


def csv_bytes(heads: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
    r"""A table with its heads; the same rows give the same bytes.

    >>> csv_bytes(["piece", "note"], [["mat-1", "a, b"]])
    b'piece,note\r\nmat-1,"a, b"\r\n'
    """
    out = StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(heads)
    writer.writerows(rows)
    return out.getvalue().encode()


def in_mm(length: int) -> str:
    """A length in millimetres for a spreadsheet, exact.

    >>> in_mm(93472)
    '292.1'
    """
    return exact_mm(length)


def in_inches(length: int) -> str:
    """A length in inches for a spreadsheet: exact for every mark of an inch ruler, else to a millionth.

    >>> in_inches(127), in_inches(93472)
    ('0.015625', '11.5')
    """
    scaled = (2 * length * 10**6 + TICKS[Unit.INCH]) // (2 * TICKS[Unit.INCH])
    whole, rest = divmod(scaled, 10**6)
    return f"{whole}.{rest:06d}".rstrip("0").rstrip(".")
