"""Words as HTML, escaped by construction."""

import re

from markupsafe import Markup, escape

from spreadwright.drawing.canvas import printable

_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)"
_LENGTH = re.compile(rf"(?<![\w./,])(?:{_NUMBER} × )?{_NUMBER}(?: (?:in|cm|mm|m|ml|g/m²|%))?(?![\w/]|[.,]\d)")
_NARROW_SPACE, _SPACE = "\u202f", "\u00a0"
"""Both unbroken; the shipped fonts lack the narrow one."""
_NO_SPACE = "\u200b"
_FRACTION = re.compile(r"(?<![\d/])\d+/\d+(?![\d/])")


def typeset(text: str) -> Markup:
    """Words with their lengths unbroken and fractions set as such; what is copied from a page is as it was.

    >>> print(typeset("17,8 cm & up").replace("\u00a0", "~"))
    17,8~cm &amp; up
    """
    words = printable(text).replace(_NARROW_SPACE, _SPACE)
    return Markup(_LENGTH.sub(_length, str(escape(words))))  # escaped before any tag is put in


def _length(match: re.Match[str]) -> str:
    """Plain words hold together by unbroken spaces; one with a fraction is a box.

    Before a box that does not fit, the library now and then breaks a line long before its end, unless a space of no
    width says that it may break there; a page shows and keeps nothing of that.
    """
    words = match[0].replace(" ", _SPACE)
    if not _FRACTION.search(words):
        return words
    return f'{_NO_SPACE}<span class="length">{_FRACTION.sub(_fraction, words)}</span>'


def _fraction(match: re.Match[str]) -> str:
    return f'<span class="fraction">{match[0]}</span>'
