"""One piece on its page: what is down already, the piece that comes next, and the distances by which it is found.

The dimension lines lie outside the page, above it and left of it, so that every figure has room (ISO 129-1).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from spreadwright.drawing.booklet.tags import MARK
from spreadwright.drawing.canvas import Canvas, Paint, filled, stroked
from spreadwright.drawing.dimensions import slashes
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import WHITE, hatching
from spreadwright.drawing.path import Path, Point
from spreadwright.drawing.rooms import centred, middle_of, nearest_place, nearest_point, rooms
from spreadwright.drawing.theme import ACCENT, BODY, BOLD_LINE, HAIRLINE, INK, LINE, MM, QUIET, TINT, points
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

WIDTH, NARROW = 58 * MM, 43 * MM
"""Of a picture, ticks: three lie side by side, or four where there are many."""
_BEFORE, _AFTER = 19 * MM // 2, MM
_BESIDE = 12 * MM
"""What the page leaves free of the width of its picture."""
_STEEPEST = 13, 10
"""How much higher than wide a page is drawn at most."""
_AWAY = 3 * MM
_DOT = MM // 2
_ABOVE = MM
_AIR, _MORE_AIR = MM // 2, MM
_CLEAR = 3 * MM // 2
"""Between a figure and the strokes that end its line."""
FIGURES = Style(face=Typeface.SANS_MEDIUM, size=points(9), is_tabular=True)
_MARK = Style(face=MARK.face, size=BODY)
_NEIGHBOUR = Style(size=points(9), colour=QUIET)
_MOST_NAMED = 40
_LINE = stroked(INK, HAIRLINE)
_DOWN = Paint(fill=WHITE, stroke=QUIET, width=HAIRLINE)


@dataclass(frozen=True, slots=True)
class Distance:
    """One dimension on the page, ticks from its top left corner; across it or down it."""

    is_across: bool
    start: int
    end: int
    figure: str


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece that lies there already; without a mark it is not named."""

    rect: Rect
    mark: str = ""


@dataclass(frozen=True, slots=True)
class PlacePicture:
    """What one picture shows.

    Attributes:
        page: The size of the page, or of the piece on which this one is joined, ticks.
        down: What lies on it already, from below upward.
        piece: Where the next piece goes.
        carried: What is joined to the piece already, as it lies on it.
        flush: Lines, of no width or no height, where it lies on an edge that is there already.
        width: Of the picture, ticks.
    """

    page: Size
    down: tuple[Laid, ...]
    piece: Rect
    mark: str
    distances: tuple[Distance, ...]
    carried: tuple[Rect, ...] = ()
    flush: tuple[Rect, ...] = ()
    title: str = ""
    width: int = WIDTH


@dataclass(frozen=True, slots=True)
class _Frame:
    """The page, as drawn."""

    page: Size
    width: int

    def at(self, length: int) -> int:
        """A length, as drawn."""
        most_wide, (high, wide) = self.width - _BESIDE, _STEEPEST
        if self.page.width * high >= self.page.height * wide:
            return length * most_wide // self.page.width
        return length * most_wide * high // wide // self.page.height

    def rect(self, rect: Rect) -> Rect:
        left = _BEFORE + (self.width - _BEFORE - _AFTER - self.at(self.page.width)) // 2
        return Rect.between(
            left + self.at(rect.left),
            _BEFORE + self.at(rect.top),
            left + self.at(rect.right),
            _BEFORE + self.at(rect.bottom),
        )


def place_picture(picture: PlacePicture, *, prefix: str = "") -> Canvas:
    """The picture of one step with the ruler."""
    frame = _Frame(picture.page, picture.width)
    whole = frame.rect(Rect.at(0, 0, picture.page))
    mark = _mark_place(picture, frame, whole)
    size = Size(picture.width, max(whole.bottom, mark.bottom) + _AFTER)
    canvas = Canvas(size, title=picture.title, prefix=prefix)
    with canvas.group(clip=whole):
        canvas.rect(whole, filled(WHITE))
        _down(canvas, [frame.rect(each.rect) for each in picture.down])
        _piece(canvas, frame.rect(picture.piece))
        _down(canvas, [frame.rect(rect) for rect in picture.carried])
    canvas.rect(whole, stroked(INK, LINE))
    for edge in picture.flush:
        drawn = frame.rect(edge)
        canvas.line((drawn.left, drawn.top), (drawn.right, drawn.bottom), stroked(ACCENT, 2 * BOLD_LINE))
    for distance in picture.distances:
        _draw(canvas, frame, picture, distance)
    for name, place, is_clear in _neighbours(picture, frame, mark):
        if not is_clear:
            canvas.rect(place, filled(WHITE))
        write(canvas, name, (place.left + place.width // 2, _baseline(place)), _NEIGHBOUR, align=Align.MIDDLE)
    _mark(canvas, picture, frame, mark)
    return canvas


def _neighbours(picture: PlacePicture, frame: _Frame, mark: Rect) -> Iterator[tuple[str, Rect, bool]]:
    """The marks of what lies there, where enough of it is seen; many are not told apart at this size anyway.

    Each stands clear of the lines of distances, as is said with it, or breaks them where it finds no other place.
    """
    drawn = [frame.rect(each.rect) for each in picture.down]
    piece, whole = frame.rect(picture.piece), frame.rect(Rect.at(0, 0, picture.page))
    if len(drawn) > _MOST_NAMED:
        return
    lines = _lines(frame, picture)
    own = (piece,) if piece.contains(mark) else (piece, mark)
    for index, each in enumerate(picture.down):
        if each.mark:
            size = Size(width(each.mark, _NEIGHBOUR) + MM, _NEIGHBOUR.size * 3 // 4 + MM // 2)
            covers = [*drawn[index + 1 :], *own]
            place = _room(size, drawn[index], covers, whole) if drawn[index].size.fits(size) else None
            if place is None:
                continue
            is_clear = not any(line.overlaps(place) for line in lines)
            further = None if is_clear else _room(size, drawn[index], [*covers, *lines], whole)
            yield each.mark, further or place, is_clear or further is not None


def _room(size: Size, part: Rect, covers: Sequence[Rect], whole: Rect) -> Rect | None:
    """The middle of the roomiest room that is free of a part, where it has one for a box that lies on the page."""
    free = next((room for room in rooms(part, covers) if room.size.fits(size) and whole.contains(room)), None)
    return free and centred(size, free, free)


def _baseline(place: Rect) -> int:
    return place.top + (place.height + _NEIGHBOUR.size * 7 // 10) // 2


def _down(canvas: Canvas, rects: Sequence[Rect]) -> None:
    """Pieces that lie there, from below upward: those that lie side by side in one stroke."""
    group: list[Rect] = []
    for rect in rects if len(rects) > _MOST_NAMED else _seen(rects):
        if any(rect.overlaps(other) for other in group):
            _outlined(canvas, group)
            group = []
        group.append(rect)
    _outlined(canvas, group)


def _outlined(canvas: Canvas, rects: Sequence[Rect]) -> None:
    path = Path()
    for each in rects:
        path.rect(each)
    canvas.path(path, _DOWN)


def _seen(rects: Sequence[Rect]) -> list[Rect]:
    """Without what a later one hides by itself."""
    seen: list[Rect] = []
    for rect in reversed(rects):
        if not any(later.contains(rect) for later in seen):
            seen.append(rect)
    return seen[::-1]


def _piece(canvas: Canvas, drawn: Rect) -> None:
    canvas.rect(drawn, filled(TINT))
    hatching(canvas, drawn, pitch=2 * MM)
    canvas.rect(drawn, stroked(INK, BOLD_LINE))


def _draw(canvas: Canvas, frame: _Frame, picture: PlacePicture, distance: Distance) -> None:
    """The dimension line outside the page, above it or left of it, with extension lines to the piece."""
    whole = frame.rect(Rect.at(0, 0, picture.page))
    run = width(distance.figure, FIGURES)
    if distance.is_across:
        span, y = frame.rect(Rect.between(distance.start, 0, distance.end, 0)), whole.top - _AWAY
        start, low, high = _figure_start(span.left, span.right, run, canvas.size.width)
        for line in _extensions(frame, picture, distance):
            canvas.line(*line, _LINE)
        canvas.line((low, y), (high, y), _LINE)
        slashes(canvas, [(span.left, y), (span.right, y)])
        write(canvas, distance.figure, (start, y - _ABOVE), FIGURES)
        return
    span, x = frame.rect(Rect.between(0, distance.start, 0, distance.end)), whole.left - _AWAY
    start, low, high = _figure_start(span.top, span.bottom, run, canvas.size.height)
    for line in _extensions(frame, picture, distance):
        canvas.line(*line, _LINE)
    canvas.line((x, low), (x, high), _LINE)
    slashes(canvas, [(x, span.top), (x, span.bottom)])
    write(canvas, distance.figure, (x - _ABOVE, start + run), FIGURES, turned_deg=-90)


def _extensions(frame: _Frame, picture: PlacePicture, distance: Distance) -> Iterator[tuple[Point, Point]]:
    """The lines from what is measured to the dimension line outside the page."""
    drawn, whole = frame.rect(picture.piece), frame.rect(Rect.at(0, 0, picture.page))
    if distance.is_across:
        span, y = frame.rect(Rect.between(distance.start, 0, distance.end, 0)), whole.top - _AWAY - MM
        for x in (span.left, span.right):
            yield (x, y), (x, _meets(x, (whole.left, whole.right), whole.top, drawn.top))
        return
    span, x = frame.rect(Rect.between(0, distance.start, 0, distance.end)), whole.left - _AWAY - MM
    for y in (span.top, span.bottom):
        yield (x, y), (_meets(y, (whole.top, whole.bottom), whole.left, drawn.left), y)


def _lines(frame: _Frame, picture: PlacePicture) -> list[Rect]:
    """The extension lines, each with a little air."""
    lines = (line for distance in picture.distances for line in _extensions(frame, picture, distance))
    return [Rect.between(*start, *end).inset(-_AIR) for start, end in lines]


def _figure_start(start: int, end: int, run: int, room: int) -> tuple[int, int, int]:
    """Where a figure starts along its line, and the line's ends: in the middle, or on a prolonged line beside it."""
    if end - start >= run + _CLEAR:
        return (start + end - run) // 2, start, end
    if end + _CLEAR + run <= room:
        return end + _CLEAR, start, end + _CLEAR + run
    return start - _CLEAR - run, start - _CLEAR - run, end


def _meets(at: int, ends: tuple[int, int], page: int, piece: int) -> int:
    """Where an extension line ends: just before the page for its own edges, at the piece for those of the piece."""
    return page - MM // 2 if at in ends else piece


def _mark_place(picture: PlacePicture, frame: _Frame, whole: Rect) -> Rect:
    """In the middle of what is seen of the piece, or beside it, where it hides least, or below the page."""
    drawn = frame.rect(picture.piece)
    size = Size(width(picture.mark, _MARK) + MM, _MARK.size * 3 // 4 + MM)
    for air in (_MORE_AIR, _AIR, 0) if picture.carried else (0,):
        inside = nearest_place(size, _free(picture, frame, air), drawn)
        if inside is not None:
            return inside
    middle = (drawn.left + drawn.width // 2, drawn.top + drawn.height // 2)
    beside = (
        Rect.at(drawn.right + MM // 2, middle[1] - size.height // 2, size),
        Rect.at(drawn.left - size.width - MM // 2, middle[1] - size.height // 2, size),
        Rect.at(middle[0] - size.width // 2, drawn.bottom + MM // 2, size),
        Rect.at(middle[0] - size.width // 2, drawn.top - size.height - MM // 2, size),
    )
    below = Rect.at(middle[0] - size.width // 2, whole.bottom + MM, size)
    others = [other for each in picture.down if not (other := frame.rect(each.rect)).contains(drawn)]
    on_page = [place for place in beside if whole.contains(place)]
    lines = _lines(frame, picture)

    def hidden(place: Rect) -> int:
        return 2 * sum(map(place.overlaps, others)) + sum(map(place.overlaps, lines))

    return min(on_page, key=hidden, default=below)


def _free(picture: PlacePicture, frame: _Frame, air: int = 0) -> tuple[Rect, ...]:
    """What is seen of the piece, away from the edges of what it carries."""
    return rooms(frame.rect(picture.piece), [frame.rect(rect).inset(-air) for rect in picture.carried])


def _mark(canvas: Canvas, picture: PlacePicture, frame: _Frame, place: Rect) -> None:
    drawn = frame.rect(picture.piece)
    if picture.carried and not drawn.overlaps(place):
        middle = middle_of(place)
        inner = (room.inset(min(_DOT, room.width // 2, room.height // 2)) for room in _free(picture, frame))
        seen = [nearest_point(middle, room) for room in inner]
        at = min(seen, key=lambda point: abs(point[0] - middle[0]) + abs(point[1] - middle[1]), default=middle)
        canvas.line(at, nearest_point(at, place), stroked(INK, HAIRLINE))
        canvas.circle(at, _DOT, filled(INK))
    canvas.rect(place, filled(WHITE), radius=MM // 2)
    write(canvas, picture.mark, (place.left + place.width // 2, place.bottom - MM // 2), _MARK, align=Align.MIDDLE)
