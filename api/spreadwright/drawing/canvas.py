"""The verbs of drawing: size, group, rectangle, line, outline, gradient, motif, embedded picture.

A canvas is filled from the bottom upward and then handed to `svg`. Coordinates are ticks, origin top left; what a
picture holds is millimetres. Only what browsers and the PNG and PDF renderer show alike can be said here: there are no
filters, masks or tiled fills. A dash may be as long as it likes and a stroke as wide: one wide dashed line is a row of
stripes, one dash of length nought with a round end is a row of dots.

    canvas = Canvas(Size(97536, 97536), title="A sheet")
    with canvas.group(names={"role": "plain"}, clip=rect):
        canvas.rect(rect, filled("#bcd"))
    svg.markup(canvas)
"""

from base64 import b64encode
from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from xml.etree.ElementTree import Element, SubElement, tostring

from spreadwright.drawing.fonts import Glyph
from spreadwright.drawing.millimetres import mm, ratio
from spreadwright.drawing.path import Path, Point
from spreadwright.geometry import Rect, Size


@dataclass(frozen=True, slots=True)
class Paint:
    """How a shape is filled and its edge drawn.

    Attributes:
        fill: ``#rrggbb`` or what `Canvas.gradient` returned; empty for none.
        width: Of the stroke, ticks.
        dash: Lengths drawn and left out in turn, ticks.
        is_round: Round ends and joins.
    """

    fill: str = ""
    stroke: str = ""
    width: int = 0
    opacity: float = 1.0
    dash: tuple[int, ...] = ()
    dash_offset: int = 0
    is_round: bool = False

    def attributes(self) -> dict[str, str]:
        """What an SVG element holds."""
        found = {"fill": self.fill or "none"}
        if self.stroke:
            found |= {"stroke": self.stroke, "stroke-width": mm(self.width)}
            found |= {"stroke-linecap": "round", "stroke-linejoin": "round"} if self.is_round else {}
            found |= {"stroke-dasharray": " ".join(map(mm, self.dash))} if self.dash else {}
            found |= {"stroke-dashoffset": mm(self.dash_offset)} if self.dash_offset else {}
        return found | ({"opacity": ratio(self.opacity)} if self.opacity != 1 else {})


def filled(colour: str, opacity: float = 1.0) -> Paint:
    """A fill without an edge."""
    return Paint(fill=colour, opacity=opacity)


def stroked(
    colour: str, width: int, *, opacity: float = 1.0, dash: tuple[int, ...] = (), is_round: bool = False
) -> Paint:
    """A line of a width in ticks, without a fill."""
    return Paint(stroke=colour, width=width, opacity=opacity, dash=dash, is_round=is_round)


@dataclass(frozen=True, slots=True)
class Stop:
    """One colour of a gradient; `at` from 0 to 1."""

    at: float
    colour: str
    opacity: float = 1.0


@dataclass(frozen=True, slots=True)
class Lettering:
    """Words that are drawn as outlines: a document that can be searched says them once more.

    Attributes:
        outlines: The element that shows them.
        at: Where they start on their baseline, ticks, in the coordinates of that element.
        size: Of the type, ticks.
        glyphs: What the outlines show, one after the other.
    """

    outlines: Element
    words: str
    at: Point
    size: int
    glyphs: tuple[Glyph, ...] = ()


@dataclass(frozen=True)
class Fragment:
    """Something that was drawn once, to be shown in many pictures; never to be changed.

    Attributes:
        group: All of it, in one element.
        definitions: What it refers to.
        markups: The text of these elements.
    """

    group: Element
    definitions: tuple[Element, ...]
    markups: tuple[tuple[Element, str], ...]


class Canvas:
    """A picture under construction.

    Args:
        size: Width and height, ticks.
        title: What the picture shows, for people who cannot see it.
        description: More of the same.
        prefix: Stands before every id, so that several pictures can lie in one page.
        origin: The top left corner, when that is not (0, 0).
    """

    def __init__(
        self, size: Size, *, title: str, description: str = "", prefix: str = "", origin: Point = (0, 0)
    ) -> None:
        self.size = size
        self.prefix = prefix
        self.title = printable(title)
        self.root = Element("svg", self._frame(size, origin))
        SubElement(self.root, "title", {"id": f"{prefix}title"}).text = self.title
        if description:
            SubElement(self.root, "desc", {"id": f"{prefix}desc"}).text = printable(description)
        self.root.set("aria-labelledby", f"{prefix}title {prefix}desc" if description else f"{prefix}title")
        self._defs = Element("defs")
        self._within = self.root
        self._known: dict[tuple[str, ...], str] = {}
        self._repeated: dict[Hashable, str] = {}
        self.lettering: list[Lettering] = []
        self.ready: dict[Element, str] = {}
        """Elements whose text is known already."""
        self.fragments = 0

    def _frame(self, size: Size, origin: Point) -> dict[str, str]:
        box = (*origin, size.width, size.height)
        return {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": f"{mm(size.width)}mm",
            "height": f"{mm(size.height)}mm",
            "viewBox": " ".join(map(mm, box)),
            "role": "img",
        }

    def rect(self, rect: Rect, paint: Paint, *, radius: int = 0) -> None:
        """A rectangle, with rounded corners when `radius` (ticks) says so."""
        corner = {"rx": mm(radius)} if radius else {}
        self._add("rect", _box(rect) | corner | paint.attributes())

    def line(self, start: Point, end: Point, paint: Paint) -> None:
        """A straight line."""
        ends = {"x1": mm(start[0]), "y1": mm(start[1]), "x2": mm(end[0]), "y2": mm(end[1])}
        self._add("line", ends | paint.attributes())

    def circle(self, middle: Point, radius: int, paint: Paint) -> None:
        """A circle by its middle and radius, ticks."""
        self._add("circle", {"cx": mm(middle[0]), "cy": mm(middle[1]), "r": mm(radius)} | paint.attributes())

    def path(self, path: Path, paint: Paint, *, label: str = "") -> None:
        """An outline; `label` says its words when it is set type."""
        if data := path.data:
            words = {"aria-label": printable(label)} if label else {}
            self._add("path", {"d": data} | words | paint.attributes())

    def image(self, rect: Rect, data: bytes, media_type: str) -> None:
        """A PNG or JPEG that fills a rectangle; the picture holds its bytes, so it needs no other file."""
        self._add("image", _box(rect) | {"preserveAspectRatio": "none", "href": embedded(data, media_type)})

    def linked_image(self, rect: Rect, address: str) -> None:
        """A picture in a file of its own that fills a rectangle: for pages, which load it from there."""
        self._add("image", _box(rect) | {"preserveAspectRatio": "none", "href": address})

    def words(
        self, path: Path, paint: Paint, words: str, *, at: Point, size: int, glyphs: tuple[Glyph, ...] = ()
    ) -> None:
        """The outlines of words that start at a point on their baseline; `size` of the type, ticks."""
        if path.data:
            self.path(path, paint, label=words)
            self.lettering.append(Lettering(self._within[-1], printable(words), at, size, glyphs))

    @contextmanager
    def group(
        self,
        *,
        names: Mapping[str, str] = {},
        clip: Rect | None = None,
        opacity: float = 1.0,
        at: Point = (0, 0),
        turned_deg: float = 0,
        scale: float = 1,
        paint: Paint | None = None,
        label: str = "",
    ) -> Iterator[None]:
        """What is drawn inside lies together: moved, turned and scaled about its own origin, clipped, painted alike.

        Args:
            names: What it shows, for pages that look for it: a role is written as `data-role`.
            clip: Nothing outside is seen; in the coordinates of what surrounds the group.
            at: Where the group's origin lies, ticks.
            turned_deg: Turn to the right.
            paint: For motifs that leave their paint open.
            label: Says its words when it is set type.
        """
        outer = self._within
        held = {f"data-{name}": printable(value) for name, value in names.items()}
        held |= {"opacity": ratio(opacity)} if opacity != 1 else {}
        held |= paint.attributes() if paint else {}
        held |= {"aria-label": printable(label)} if label else {}
        move = transform(at, turned_deg, scale)
        if clip is not None and move:  # a clip is measured where its own group lies: it goes one group further out
            self._within = self._add("g", {"clip-path": f"url(#{self._clip(clip)})"})
        elif clip is not None:
            held["clip-path"] = f"url(#{self._clip(clip)})"
        self._within = self._add("g", held | ({"transform": move} if move else {}))
        try:
            yield
        finally:
            self._within = outer

    def gradient(self, start: Point, end: Point, stops: Iterable[Stop]) -> str:
        """A fill that runs from one point to another, ticks; give the answer to `filled`."""
        ends = {"x1": mm(start[0]), "y1": mm(start[1]), "x2": mm(end[0]), "y2": mm(end[1])}
        listed = tuple(stops)
        name = self._define("linearGradient", ends | {"gradientUnits": "userSpaceOnUse"}, str(listed))
        element = self._defined(name)
        if not len(element):
            for stop in listed:
                SubElement(element, "stop", _stop(stop))
        return f"url(#{name})"

    @contextmanager
    def motif(self, name: str) -> Iterator[str]:
        """What is drawn inside is kept for `use` and not shown by itself; gives the motif's id."""
        outer = self._within
        self._within = self._kept("g", {"id": f"{self.prefix}{name}"})
        try:
            yield name
        finally:
            self._within = outer

    def use(self, name: str, at: Point, *, turned_deg: float = 0, scale: float = 1, paint: Paint | None = None) -> None:
        """A motif once more, at a point, ticks."""
        move = transform(at, turned_deg, scale)
        held = {"href": f"#{self.prefix}{name}"} | ({"transform": move} if move else {})
        self._add("use", held | (paint.attributes() if paint else {}))

    def has_motif(self, name: str) -> bool:
        """Whether a motif of that name is kept."""
        return any(element.get("id") == f"{self.prefix}{name}" for element in self._defs)

    def shape(self, path: Path) -> None:
        """An outline that leaves its paint open, for what is shown again in several."""
        self._add("path", {"d": path.data})

    def repeated(
        self, key: Hashable, draw: Callable[[], None], *, at: Point = (0, 0), within: Element | None = None
    ) -> None:
        """What is drawn the first time that a key comes, and shown again, at a point, wherever it comes once more.

        Args:
            within: The element that shows it; the group that is being drawn when left out.
        """
        if key not in self._repeated:
            name = f"r{len(self._repeated) + 1}"
            self._repeated[key] = name
            with self.motif(name):
                draw()
        held = {"href": f"#{self.prefix}{self._repeated[key]}"}
        held |= {axis: mm(away) for axis, away in zip("xy", at, strict=True) if away}
        SubElement(self._within if within is None else within, "use", held)

    def fragment(self) -> Fragment:
        """What is drawn so far, for other pictures: give this one a prefix of its own."""
        group = Element("g")
        group.extend(element for element in self._within if element.tag not in ("title", "desc", "defs"))
        kept = (group, *self._defs)
        return Fragment(group, tuple(self._defs), tuple((each, tostring(each, encoding="unicode")) for each in kept))

    def show(self, fragment: Fragment) -> None:
        """What was drawn in another picture, once more."""
        for element in fragment.definitions:
            self._keep(element)
        self._within.append(fragment.group)
        self.ready.update(fragment.markups)
        self.fragments += 1

    def outline(self) -> tuple[str, ...]:
        """The verbs so far, one a line, indented by group: pictures can be compared without being seen."""
        return tuple(_outline(self.root, -1))

    def _add(self, tag: str, attributes: dict[str, str]) -> Element:
        return SubElement(self._within, tag, attributes)

    def _clip(self, rect: Rect) -> str:
        name = self._define("clipPath", {}, str(rect))
        element = self._defined(name)
        if not len(element):
            SubElement(element, "rect", _box(rect))
        return name

    def _define(self, tag: str, attributes: dict[str, str], content: str) -> str:
        """The id of a definition; equal ones share it."""
        key = (tag, *attributes.values(), content)
        if key not in self._known:
            self._known[key] = f"{self.prefix}{tag[0]}{len(self._known) + 1}"
            self._kept(tag, {"id": self._known[key]} | attributes)
        return self._known[key]

    def _kept(self, tag: str, attributes: dict[str, str]) -> Element:
        return self._keep(Element(tag, attributes))

    def _keep(self, element: Element) -> Element:
        """Something that is drawn only where it is used; the definitions follow title and description."""
        if not len(self._defs):
            self.root.insert(len(self.root.findall("title") + self.root.findall("desc")), self._defs)
        self._defs.append(element)
        return element

    def _defined(self, name: str) -> Element:
        return next(element for element in self._defs if element.get("id") == name)


def transform(at: Point, turned_deg: float = 0, scale: float = 1) -> str:
    """The SVG words for a move (ticks), a turn to the right and a scale."""
    steps = [f"translate({mm(at[0])} {mm(at[1])})"] if at != (0, 0) else []
    steps += [f"rotate({ratio(turned_deg)})"] if turned_deg else []
    steps += [f"scale({ratio(scale)})"] if scale != 1 else []
    return " ".join(steps)


def embedded(data: bytes, media_type: str) -> str:
    """A picture as an address that holds all of it."""
    return f"data:{media_type};base64,{b64encode(data).decode()}"


def printable(text: str) -> str:
    """The text with what XML cannot hold replaced."""
    return "".join(c if c >= " " and c not in "\ufffe\uffff" and not "\ud800" <= c <= "\udfff" else " " for c in text)


def _box(rect: Rect) -> dict[str, str]:
    return {"x": mm(rect.left), "y": mm(rect.top), "width": mm(rect.width), "height": mm(rect.height)}


def _stop(stop: Stop) -> dict[str, str]:
    held = {"offset": ratio(stop.at), "stop-color": stop.colour}
    return held | ({"stop-opacity": ratio(stop.opacity)} if stop.opacity != 1 else {})


def _outline(element: Element, depth: int) -> Iterator[str]:
    if depth >= 0:
        words = [element.tag, *(f"{key}={value}" for key, value in element.items())]
        yield "  " * depth + " ".join(words + ([f"“{element.text}”"] if element.text else []))
    for child in element:
        yield from _outline(child, depth + 1)
