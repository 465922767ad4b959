"""Text for pages: lengths with real fractions, counted words, links. All of it escaped."""

import re
from urllib.parse import quote

from markupsafe import Markup, escape

from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, nearest, size_text, with_unit

_NARROW = "\N{NARROW NO-BREAK SPACE}"
_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
_LENGTH = re.compile(rf"(?<![\w./])(?:{_NUMBER} × )?{_NUMBER}(?: (?:in|cm|mm|g/m²))?(?![\w/]|\.\d)")
_FRACTION = re.compile(r"(?: (?=\d+/))?(\d+/\d+)")
_CREATIVE_COMMONS = re.compile(r"CC-(?P<terms>BY(?:-(?:NC|SA|ND))*)-(?P<version>\d\.\d)")


def lengths(text: str) -> Markup:
    """Text with its lengths set as people set them: real fractions, number and unit together on one line.

    >>> print(lengths("3 1/2 × 5 in & up").replace("\N{NARROW NO-BREAK SPACE}", "_"))
    <span class="length">3_<span class="fraction">1/2</span> × 5 in</span> &amp; up
    """
    return Markup(_LENGTH.sub(_set, str(escape(text))))  # escaped before any tag is put in


def _set(match: re.Match[str]) -> str:
    if " " not in match[0] and "/" not in match[0]:
        return match[0]
    figures = _FRACTION.sub(lambda found: _fraction(found[0], found[1]), match[0])
    return f'<span class="length">{figures}</span>'


def _fraction(found: str, fraction: str) -> str:
    return f'{_NARROW if found[0] == " " else ""}<span class="fraction">{fraction}</span>'


def length(ticks: int, unit: Unit) -> Markup:
    """One length with its unit."""
    return lengths(with_unit(ticks, unit))


def size(of: Size, unit: Unit) -> Markup:
    """Width and height with their unit; millimetres to the nearest tenth."""
    unit = Unit(unit)
    if unit is not Unit.INCH:
        tenth = TICKS[Unit.MILLIMETRE] // 10
        return lengths(size_text(nearest(of.width, tenth), nearest(of.height, tenth), unit))
    return lengths(size_text(of.width, of.height, unit))


def counted(number: int, word: str) -> str:
    """A number with its word: ``1 sheet``, ``2 sheets``."""
    return f"{number} {word}{'' if number == 1 else 's'}"


def address(path: str) -> str:
    """A path of the site as it stands in a link.

    >>> address("pictures/my page/in-fog.svg")
    'pictures/my%20page/in-fog.svg'
    """
    return quote(path)


def woven(sentence: str, **parts: object) -> Markup:
    """A sentence with its named gaps filled; markup stays, whatever else is text is escaped.

    >>> print(woven("See {link} & rest.", link=Markup("<a>here</a>")))
    See <a>here</a> &amp; rest.
    """
    return escape(sentence).format(**parts)


def licence_name(licence: str) -> str:
    """A licence as people write it: ``CC BY 4.0`` for ``CC-BY-4.0``."""
    if match := _CREATIVE_COMMONS.fullmatch(licence):
        return f"CC {match['terms']} {match['version']}"
    return "CC0 1.0" if licence == "CC0-1.0" else licence


def licence_address(licence: str) -> str:
    """Where the text of a licence can be read; empty where we do not know."""
    if match := _CREATIVE_COMMONS.fullmatch(licence):
        return f"https://creativecommons.org/licenses/{match['terms'].lower()}/{match['version']}/"
    return "https://creativecommons.org/publicdomain/zero/1.0/" if licence == "CC0-1.0" else ""


FILTERS = {
    "lengths": lengths,
    "measure": length,
    "size": size,
    "counted": counted,
    "address": address,
    "woven": woven,
    "licence_name": licence_name,
    "licence_address": licence_address,
}
"""What the templates call these; `length` is a filter of Jinja's own."""
