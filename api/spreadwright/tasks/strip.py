"""The verb *test-strip*: one colourway in colour, as a grey print, and under three colour-vision deficiencies."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

import numpy as np

from spreadwright.colour.legible import Meet, Sight, in_sight, meets
from spreadwright.colour.measure import Look
from spreadwright.colour.scene import PAGE, PHOTO, Surface
from spreadwright.colour.spaces import Floats
from spreadwright.document import Reading
from spreadwright.drawing import svg_bytes
from spreadwright.drawing.booklet import Format
from spreadwright.drawing.contact import Exposure, StripPlan, strip_picture
from spreadwright.drawing.contact import strip_pdf as pdf_of
from spreadwright.drawing.raster import pixels
from spreadwright.geometry import Size
from spreadwright.images import encode_jpeg
from spreadwright.images.srgb import encoded, light_of
from spreadwright.model import BLANK, Choice, Colourway, PaperSet, Recipe, quoted_face_title
from spreadwright.tasks.check import proven
from spreadwright.tasks.draw import preview_svg
from spreadwright.tasks.ranking import face_look, seen
from spreadwright.words import decimal, listed, ngettext, title, unbroken
from spreadwright.words import gettext as _

_WIDE_PX = 880
_MOST_NAMED = 4


@dataclass(frozen=True, slots=True)
class Pair:
    """Two papers that meet, as they are seen in one way.

    Attributes:
        papers: What they are called.
        ids: Of the choices; empty for the bare page.
        was: How far apart they are in colour, CIEDE2000 units with what a print adds.
    """

    papers: tuple[str, str]
    ids: tuple[str, str]
    meet: Meet
    was: float


@dataclass(frozen=True, slots=True)
class Exposed:
    """A colourway as it is seen in one way.

    Attributes:
        pairs: How many pairs of papers meet.
        lost: Those that are not told apart.
        closest: The pair that is nearest to being lost or most so; None where there is none.
    """

    sight: Sight
    pairs: int
    lost: tuple[Pair, ...]
    closest: Pair | None = None


@dataclass(frozen=True, slots=True)
class Strip:
    """One colourway, seen in every way."""

    reading: Reading[Recipe]
    papers: PaperSet
    colourway: Colourway
    exposed: tuple[Exposed, ...]


def strip(reading: Reading[Recipe], papers: PaperSet, colourway: Colourway) -> Strip:
    """How a colourway of a recipe is seen, and which papers that meet are lost on each other in each way.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    scene = seen(recipe)
    looks = {surface: _look(_shown(colourway, surface)) for surface in scene.areas if surface != PHOTO}
    looks.setdefault(PAGE, _look(None))
    usual = {meet.surfaces: meet.difference for meet in meets(scene, looks, Sight.COLOUR)}
    exposed = []
    for sight in Sight:
        pairs = _different(_pair(colourway, meet, usual[meet.surfaces]) for meet in meets(scene, looks, sight))
        lost = tuple(pair for pair in pairs if not pair.meet.is_told_apart)
        closest = min(pairs, key=lambda pair: pair.meet.difference, default=None)
        exposed.append(Exposed(sight, len(pairs), lost, closest))
    return Strip(reading, papers, colourway, tuple(exposed))


def _different(pairs: Iterable[Pair]) -> list[Pair]:
    """Each two faces once, though several roles may show them."""
    found: dict[tuple[str, str], Pair] = {}
    for pair in pairs:
        found.setdefault(pair.ids, pair)
    return list(found.values())


def _pair(colourway: Colourway, meet: Meet, was: float) -> Pair:
    one, other = sorted((_shown(colourway, surface) for surface in meet.surfaces), key=_id)
    return Pair((quoted_face_title(one), quoted_face_title(other)), (_id(one), _id(other)), meet, was)


def _shown(colourway: Colourway, surface: Surface) -> Choice | None:
    """What is up there; None for the bare page."""
    return None if surface == PAGE else colourway.choice(surface.role).lying(surface.side)


def _id(shown: Choice | None) -> str:
    return shown.id if shown else ""


def _look(shown: Choice | None) -> Look:
    return face_look(shown.face if shown else BLANK)


def sight_name(sight: Sight) -> str:
    """What a way of seeing is called, in the language that is spoken."""
    names = {
        Sight.COLOUR: _("In colour"),
        Sight.GREY: _("As a grey print"),
        Sight.PROTAN: _("Without cones for red (protan)"),
        Sight.DEUTAN: _("Without cones for green (deutan)"),
        Sight.TRITAN: _("Without cones for blue (tritan)"),
    }
    return names[sight]


def sentences(exposed: Exposed) -> tuple[str, ...]:
    """What is said of one way of seeing: which papers are lost on each other, with what was measured."""
    if exposed.closest is None:
        return (_("Only one paper is in sight, so nothing can be lost."),)
    if not exposed.lost:
        told = _(
            "All papers that meet are told apart. Closest are {pair}: contrast {contrast} : 1, difference {difference}."
        )
        return (_told(told, exposed.closest),)
    return tuple(_sentences(exposed))


def _sentences(exposed: Exposed) -> Iterator[str]:
    told = _("{pair} look alike: contrast {contrast} : 1, difference {difference}.")
    if exposed.sight is not Sight.COLOUR:
        told = _("{pair} are lost on each other: contrast {contrast} : 1, difference {difference} (in colour {was}).")
    yield from (_told(told, pair) for pair in exposed.lost[:_MOST_NAMED])
    more = len(exposed.lost) - _MOST_NAMED
    if more > 0:
        yield ngettext("And {count} more pair.", "And {count} more pairs.", more).format(count=more)


def _told(told: str, pair: Pair) -> str:
    words = told.format(
        pair=listed(pair.papers),
        contrast=decimal(f"{int(pair.meet.contrast * 10) / 10:.1f}"),
        difference=decimal(f"{int(pair.meet.difference * 10) / 10:.1f}"),
        was=decimal(f"{int(pair.was * 10) / 10:.1f}"),
    )
    return unbroken(words)


def strip_svg(shown: Strip) -> bytes:
    """The spread five times, one below the other, each beside its words.

    Raises:
        CannotDraw: The renderer refused.
    """
    return svg_bytes(strip_picture(_plan(shown)))


def strip_pdf(shown: Strip, paper: Format = Format.A4) -> bytes:
    """The same on a page to print, with words that can be searched.

    Raises:
        CannotDraw: A library refused.
    """
    return pdf_of(_plan(shown), paper)


def _plan(shown: Strip) -> StripPlan:
    svg = preview_svg(shown.reading, shown.colourway, papers=title(shown.papers.title))
    light = light_of(pixels(svg, _WIDE_PX))
    exposures = tuple(
        Exposure(_jpeg(in_sight(each.sight, light)), sight_name(each.sight), sentences(each)) for each in shown.exposed
    )
    about = f"{title(shown.papers.title)} · {shown.colourway.id}"
    height, width = light.shape[:2]
    return StripPlan(shown.reading.model.title, about, exposures, Size(width, height), strip_note())


def _jpeg(light: Floats) -> bytes:
    return encode_jpeg(np.rint(encoded(light) * 255).astype(np.uint8))


def strip_note() -> str:
    """How the strip is made, in a sentence."""
    return _(
        "Contrast: of luminance, as WCAG 2.2 defines it. Difference: CIEDE2000 of the average colours, plus up to 12"
        " where a print meets a plainer paper; below 7 an edge is hardly found. The last three are simulated for"
        " people who lack one kind of cone; the blue one is an approximation."
    )
