"""The language in which instructions speak.

Sentences are written in English in the code, as templates with named gaps, and looked up in a catalogue beside this
file: ``_("Set the scale to {reading}.").format(reading=...)``. English needs none. So are findings that can come to be
printed in instructions; all others, and what a check says, are English. The titles of benches, roles and papers that
ship have catalogues of their own in `titles/`; whatever else a document says stays as it is, above all the names that a
recipe gives its pieces.
"""

import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from functools import cache
from gettext import GNUTranslations, NullTranslations
from io import BytesIO
from pathlib import Path

SOURCE = "en"
CATALOGUES = Path(__file__).parent
TITLES = CATALOGUES / "titles"
LANGUAGES = (SOURCE, *sorted(path.stem for path in CATALOGUES.glob("*.po")))
"""The languages that instructions speak, as BCP 47 tags."""

_POINT_LANGUAGES = (SOURCE,)
_RATIO = re.compile("(?<=\\d)[ \N{NO-BREAK SPACE}]:[ \N{NO-BREAK SPACE}]1(?!\\d)")
_SHARE = re.compile(r"(?<=\d) %")

_spoken: ContextVar[str] = ContextVar("spoken", default=SOURCE)


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Makes every sentence inside speak this language; English where there is no catalogue for it.

    A tag with a region, like ``de-AT``, means its language.
    """
    token = _spoken.set(known(language) or SOURCE)
    try:
        yield
    finally:
        _spoken.reset(token)


def known(language: str) -> str:
    """The language of a tag, if it is spoken here; otherwise nothing.

    >>> known("EN-gb"), known("xx")
    ('en', '')
    """
    base = language.split("-")[0].lower()
    return base if base in LANGUAGES else ""


def spoken() -> str:
    """The language that is spoken now."""
    return _spoken.get()


def gettext(message: str) -> str:
    """A message in the language spoken now; imported as ``_``."""
    return _catalogue(_spoken.get()).gettext(message)


def ngettext(one: str, many: str, number: int) -> str:
    """The message for this number, in the language spoken now."""
    return _catalogue(_spoken.get()).ngettext(one, many, number)


def title(name: str) -> str:
    """The title of a bench, a role or a paper in the language spoken now; as it is where no catalogue knows it."""
    return _catalogue(_spoken.get(), TITLES).gettext(name) if name else ""


def decimal(number: str) -> str:
    """A number as written in a document, with the decimal sign of the language spoken now: ``17.8``, ``17,8``."""
    return number if _spoken.get() in _POINT_LANGUAGES else number.replace(".", ",")


def grouped(number: int) -> str:
    """A whole number in groups of three digits, as the language spoken now parts them: ``12,000``, ``12 000``."""
    told = f"{number:,}"
    return told if _spoken.get() in _POINT_LANGUAGES else told.replace(",", "\N{NARROW NO-BREAK SPACE}")


def listed(things: Sequence[str]) -> str:
    """Things in a row, as the language spoken now joins them: ``1 and 2``, ``1 und 2``."""
    from babel.lists import format_list

    return format_list(list(things), locale=_spoken.get())


def the_first(things: Sequence[str], most: int) -> str:
    """The first of many things in a row, and how many more there are; in English, as most findings are.

    >>> the_first(["a", "b", "c"], 2)
    'a, b and 1 more'
    """
    more = f" and {len(things) - most} more" if len(things) > most else ""
    return ", ".join(things[:most]) + more


def unbroken(text: str) -> str:
    """The text with its ratios and shares, like ``1.4 : 1`` and ``2 %``, held together by unbroken spaces."""
    return _SHARE.sub("\N{NO-BREAK SPACE}%", _RATIO.sub("\N{NO-BREAK SPACE}:\N{NO-BREAK SPACE}1", text))


@cache
def _catalogue(language: str, folder: Path = CATALOGUES) -> NullTranslations:
    """The catalogue of a language, compiled in memory: the readable file is the only one that is kept."""
    if language == SOURCE:
        return NullTranslations()
    from babel.messages.mofile import write_mo
    from babel.messages.pofile import read_po

    compiled = BytesIO()
    with (folder / f"{language}.po").open("rb") as file:
        write_mo(compiled, read_po(file, locale=language))
    compiled.seek(0)
    return GNUTranslations(compiled)
