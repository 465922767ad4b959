"""Words as HTML, escaped by construction."""

import re

from markupsafe import Markup, escape

from spreadwright.drawing.canvas import printable

_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)"
_LENGTH = re.compile(rf"(?<![\w./,])(?:{_NUMBER} × )?{_NUMBER}(?: (?:in|cm|mm|m|ml|g/m²|%))?(?![\w/]|[.,]\d)")
_NARROW_SPACE, _SPACE = "\u202f", "\u00a0"
"""Both unbroken; the shipped fonts lack the narrow one."""
_FRACTION = re.compile(r"(?<![\d/])\d+/\d+(?![\d/])")


def typeset(text: str) -> Markup:
    """Words with their lengths unbroken and fractions set as such.

    >>> print(typeset("3 1/2 × 5 in & up").replace("\u00a0", "~"))
    3~<span class="fraction">1/2</span>~×~5~in &amp; up
    """
    words = printable(text).replace(_NARROW_SPACE, _SPACE)
    return Markup(_LENGTH.sub(_length, str(escape(words))))  # escaped before any tag is put in


def _length(match: re.Match[str]) -> str:
    """By unbroken spaces: in a box that does not break, the library now and then breaks the line long before it."""
    return _FRACTION.sub(_fraction, match[0].replace(" ", _SPACE))


def _fraction(match: re.Match[str]) -> str:
    return f'<span class="fraction">{match[0]}</span>'
