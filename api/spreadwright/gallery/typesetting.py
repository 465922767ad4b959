"""Text for pages: lengths with real fractions, names of licences, links. All of it escaped."""

import json
import re
from urllib.parse import quote

from markupsafe import Markup, escape

from spreadwright.drawing.millimetres import exact_mm
from spreadwright.gallery.overview.names import author_path, tag_path
from spreadwright.geometry import Size
from spreadwright.lengths import FINEST, TICKS, Unit, nearest, size_text
from spreadwright.tasks.difficulty import level_words
from spreadwright.words import gettext as _
from spreadwright.words import title

_NARROW = "\N{NARROW NO-BREAK SPACE}"
_NUMBER = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)"
_LENGTH = re.compile(rf"(?<![\w./,])(?:{_NUMBER} × )?{_NUMBER}(?: (?:in|cm|mm|g/m²))?(?![\w/]|[.,]\d)")
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


def size(of: Size, unit: Unit) -> Markup:
    """Width and height with their unit: millimetres to the nearest tenth, inches that no ruler shows to a 16th."""
    unit = Unit(unit)
    is_shown = all(length % FINEST[unit] == 0 for length in (of.width, of.height))
    mark = TICKS[Unit.INCH] // 16 if unit is Unit.INCH and not is_shown else FINEST[unit]
    return lengths(size_text(nearest(of.width, mark), nearest(of.height, mark), unit))


def in_mm(of: Size) -> str:
    """Width and height in millimetres for scripts: ``88.9 127``."""
    return f"{exact_mm(of.width)} {exact_mm(of.height)}"


def page_title(page: str) -> str:
    """What a page of a spread is called in a table."""
    return {"left": _("left"), "right": _("right"), "page": _("the page")}[page]


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


def as_script(text: str) -> Markup:
    r"""Text as a script writes it; it can stand in a script file, not within a page.

    >>> print(as_script('<b>"7 in"</b>\n'))
    "<b>\"7 in\"</b>\n"
    """
    return Markup(json.dumps(str(text), ensure_ascii=False))


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
    "size": size,
    "address": address,
    "woven": woven,
    "as_script": as_script,
    "said": title,
    "in_mm": in_mm,
    "page_title": page_title,
    "licence_name": licence_name,
    "licence_address": licence_address,
    "tag_path": tag_path,
    "author_path": author_path,
    "level_words": level_words,
}
"""What the templates call these."""
