"""What stands on the parts of a cut sheet: mark, name, size and pile, as many of them as the parts have room for.

A label comes in several forms: stacked or in one line, upright or turned to read from the right, with a large mark or
a small one. Of the forms for which all equal parts have room the one that keeps most is taken, the first of them in the
order of looks, so that equal parts look equal; the mark is never left out, and the pile comes before name and size.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product

from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.fonts import Typeface
from spreadwright.drawing.marks import PILE, SMALL_PILE, WHITE, pile_sign
from spreadwright.drawing.rooms import centred, nearest_place, rooms
from spreadwright.drawing.theme import BODY, LARGE, MM, QUIET, SMALL
from spreadwright.drawing.type import Align, Style, width, write
from spreadwright.geometry import Rect, Size

_NAME = Style(size=SMALL)
_MEASURE = Style(size=SMALL, colour=QUIET, is_tabular=True)
_LINE_HEIGHTS = {LARGE: 6 * MM, BODY: 5 * MM, SMALL: 4 * MM}
_AIRY, _CLOSE = MM * 3 // 4, MM // 4
"""Between a label and the edge of its part, or the number of a cut."""
_STRIP = 3
"""What is so many times as high as wide is read turned as well as upright."""
_ALIKE = MM // 4
"""Drawn sizes that differ no more are equal to the eye."""
_GAP, _SMALL_GAP = 2 * MM, MM * 3 // 4
_BACK = MM // 4
"""What the white behind a label takes beyond it."""
_MARK_SIZES = (LARGE, BODY, SMALL)
_KEPT = ("mark name size pile", "mark name pile", "mark pile")
"""What is kept of a piece's label, the fullest first."""
_KEPT_WITHOUT_PILE = ("mark name size", "mark name", "mark")
_KEPT_WITHOUT_MARK = ("name size", "name", "size")


@dataclass(frozen=True, slots=True)
class Pile:
    """The page on whose pile a piece goes, among all pages."""

    pages: tuple[str, ...]
    page: str


@dataclass(frozen=True, slots=True)
class Label:
    """The words of one part; a part that is no piece has neither mark nor pile."""

    mark: str
    name: str
    size: str
    pile: Pile | None = None


@dataclass(frozen=True, slots=True)
class Placed:
    """A label in the form that it takes, and where it stands."""

    form: "_Form"
    place: Rect
    has_back: bool

    @property
    def taken(self) -> Rect:
        """What no other label may hide, ticks."""
        return self.place.inset(-_BACK) if self.has_back else self.place


@dataclass(frozen=True, slots=True)
class _Look:
    """How a label is set, whatever its words; a close one has a small sign, and less between its words."""

    mark_size: int
    is_close: bool
    is_stacked: bool
    is_turned: bool

    @property
    def gap(self) -> int:
        return _SMALL_GAP if self.is_close else _GAP

    @property
    def sign(self) -> Size:
        return SMALL_PILE if self.is_close else PILE

    def height(self, style: Style) -> int:
        """Of a line in a stack: more than the letters, but just them in a close one."""
        if not self.is_close:
            return _LINE_HEIGHTS[style.size]
        return style.size * 5 // 6 if style.face is Typeface.SANS_BOLD else style.size

    def below(self, style: Style) -> int:
        """What a line in a stack takes below its letters; a mark is all capitals and figures."""
        return self.height(style) // (8 if self.is_close and style.face is Typeface.SANS_BOLD else 4)

    @property
    def around_sign(self) -> int:
        """What a sign takes above and below it in a stack."""
        return MM // 2 if self.is_close else 2 * MM


@dataclass(frozen=True, slots=True)
class _Form:
    """One way of setting a label: its lines of words, and whether the sign of the pile follows."""

    lines: tuple[tuple[str, Style], ...]
    pile: Pile | None
    look: _Look

    @property
    def box(self) -> Size:
        """What it takes as it is read, ticks."""
        look, is_stacked = self.look, self.look.is_stacked
        wide = [width(words, style) for words, style in self.lines]
        high = [look.height(style) if is_stacked else style.size * 3 // 4 for _, style in self.lines]
        if self.pile:
            wide.append(look.sign.width)
            high.append(look.sign.height + (look.around_sign if is_stacked else 0))
        if is_stacked:
            return Size(max(wide), sum(high))
        return Size(sum(wide) + look.gap * (len(wide) - 1), max(high))

    @property
    def lying(self) -> Size:
        """What it takes on the sheet, ticks."""
        return self.box.turned() if self.look.is_turned else self.box


@dataclass(slots=True)
class _Part:
    """A part with its label, and what is free of it: with much air, and with little."""

    index: int
    label: Label
    drawn: Rect
    free: tuple[tuple[Rect, ...], ...] = ()

    def is_like(self, other: "_Part") -> bool:
        """Whether both look equal before they have a label."""
        return (
            bool(self.label.mark) == bool(other.label.mark)
            and abs(self.drawn.width - other.drawn.width) <= _ALIKE
            and abs(self.drawn.height - other.drawn.height) <= _ALIKE
        )


@dataclass(slots=True)
class _Alike:
    """Equal parts; the one that had no room for a form is asked first about the next."""

    parts: list[_Part] = field(default_factory=list)

    @property
    def narrowest(self) -> int:
        return min(self.parts[0].drawn.width, self.parts[0].drawn.height)

    @property
    def is_upright(self) -> bool:
        return self.parts[0].drawn.height > self.parts[0].drawn.width

    def inside(self, kept: str) -> dict[int, Placed] | None:
        """The handsomest form for which every part has room; None where there is none."""
        for looks, air in _looks(self.parts[0].drawn.size, has_mark="mark" in kept, is_common=len(self.parts) > 1):
            found = self._placed(kept, looks, air)
            if found is not None:
                return found
        return None

    def _placed(self, kept: str, looks: Sequence[_Look], air: int) -> dict[int, Placed] | None:
        found: dict[int, Placed] = {}
        for part in self.parts:
            placed = _placed(part, kept, looks, air)
            if placed is None:
                self.parts.remove(part)
                self.parts.insert(0, part)
                return None
            found[part.index] = placed
        return found

    def over_edges(self, kept: str, taken: Sequence[Rect], *, must_be_clear: bool) -> dict[int, Placed] | None:
        """The same where a label is wider than its part: in the middle, or further along it."""
        look = _Look(SMALL, is_close=True, is_stacked=False, is_turned=self.is_upright)
        found: dict[int, Placed] = {}
        for part in self.parts:
            form = _form(part.label, kept, look)
            place, is_clear = _along(form.lying, part.drawn, [*taken, *(each.taken for each in found.values())])
            if must_be_clear and not is_clear:
                return None
            found[part.index] = Placed(form, place, has_back=True)
        return found


def part_labels(parts: Sequence[tuple[Label, Rect]], obstacles: Sequence[Rect] = ()) -> dict[int, Placed]:
    """The labels of all parts of a sheet, by the place of their part among them, in the order to draw them.

    Each stands as near to the middle of its part as the obstacles let it. The narrowest come last: their labels reach
    over their edges, so they keep clear of the others. What is no piece has no label where it has no room.

    Args:
        parts: Label and part, as it is drawn.
        obstacles: What must stay readable, such as the numbers of cuts.
    """
    found: dict[int, Placed] = {}
    taken = list(obstacles)
    for alike in sorted(_alike(parts), key=lambda each: -each.narrowest):
        for part in alike.parts:
            part.free = _free(part.drawn, taken)
        placed = _labelled(alike, taken)
        taken += [each.taken for each in placed.values()]
        found |= placed
    return found


def draw_label(canvas: Canvas, placed: Placed) -> None:
    """Write a label where it stands."""
    form, place = placed.form, placed.place
    middle = (place.left + place.width // 2, place.top + place.height // 2)
    if placed.has_back:
        canvas.rect(place.inset(-_BACK), filled(WHITE))
    with canvas.group(at=middle, turned_deg=-90 if form.look.is_turned else 0):
        if form.look.is_stacked:
            _stacked(canvas, form)
        else:
            _in_line(canvas, form)


def part_label(canvas: Canvas, label: Label, drawn: Rect, obstacles: Sequence[Rect] = ()) -> Rect:
    """Write the label of a single part; what it takes."""
    placed = part_labels([(label, drawn)], obstacles)
    if not placed:
        return Rect.at(drawn.left, drawn.top, Size(0, 0))
    draw_label(canvas, placed[0])
    return placed[0].taken


def _alike(parts: Sequence[tuple[Label, Rect]]) -> list[_Alike]:
    groups: list[_Alike] = []
    for index, (label, drawn) in enumerate(parts):
        part = _Part(index, label, drawn)
        group = next((each for each in groups if each.parts[0].is_like(part)), None)
        if group is None:
            groups.append(group := _Alike())
        group.parts.append(part)
    return groups


def _free(drawn: Rect, obstacles: Sequence[Rect]) -> tuple[tuple[Rect, ...], ...]:
    around = drawn.inset(-_AIRY)
    near = [each for each in obstacles if each.overlaps(around)]
    return tuple(rooms(drawn.inset(air), [each.inset(-air) for each in near]) for air in (_AIRY, _CLOSE))


def _labelled(alike: _Alike, taken: Sequence[Rect]) -> dict[int, Placed]:
    """The fullest label for which all equal parts have room."""
    if not alike.parts[0].label.mark:
        return _one_by_one(alike, taken)
    if any(part.label.pile for part in alike.parts):
        found = _first(alike, _KEPT) or alike.over_edges("mark pile", taken, must_be_clear=True)
        if found:
            return found
        if len(alike.parts) > 1:
            return _one_by_one(alike, taken)
    found = _first(alike, _KEPT_WITHOUT_PILE) or alike.over_edges("mark", taken, must_be_clear=False)
    return found or {}


def _one_by_one(alike: _Alike, taken: Sequence[Rect]) -> dict[int, Placed]:
    """What each part has room for: where not all have a sign, and of what is no piece."""
    found: dict[int, Placed] = {}
    for part in alike.parts:
        others = [*taken, *(each.taken for each in found.values())]
        part.free = _free(part.drawn, others)
        alone = _Alike([part])
        found |= (_labelled(alone, others) if part.label.mark else _first(alone, _KEPT_WITHOUT_MARK)) or {}
    return found


def _first(alike: _Alike, kept: Sequence[str]) -> dict[int, Placed] | None:
    """The fullest label for which all equal parts have room; no search where one has none for the least of it."""
    if kept[-1].startswith("mark") and not all(_has_room(part, kept[-1]) for part in alike.parts):
        return None
    return next((found for each in kept if (found := alike.inside(each)) is not None), None)


def _has_room(part: _Part, kept: str) -> bool:
    """Whether a part has room for so much in the smallest of all looks."""
    looks = (
        _Look(SMALL, is_close=True, is_stacked=way[0], is_turned=way[1]) for way in product((True, False), repeat=2)
    )
    boxes = [_form(part.label, kept, look).lying for look in looks]
    return any(room.size.fits(box) for room in part.free[-1] for box in boxes)


def _placed(part: _Part, kept: str, looks: Sequence[_Look], air: int) -> Placed | None:
    for look in looks:
        form = _form(part.label, kept, look)
        place = nearest_place(form.lying, part.free[air], part.drawn)
        if place is not None:
            return Placed(form, place, has_back=not part.label.mark)
    return None


def _along(box: Size, drawn: Rect, obstacles: Sequence[Rect]) -> tuple[Rect, bool]:
    """Where a box that is wider than its part hides no other, in the middle or further along; whether it does so."""
    around = drawn.inset(-max(box.width, box.height) - MM)
    near = [each for each in obstacles if each.overlaps(around)]
    middle, is_upright = centred(box, drawn, drawn), drawn.height > drawn.width
    step = (box.height if is_upright else box.width) + 2 * _BACK + MM
    most = (drawn.height if is_upright else drawn.width) // 2 // step
    ways = [sign * count * step for count in range(max(most, 1)) for sign in (1, -1)]
    places = [middle.moved(0, way) if is_upright else middle.moved(way, 0) for way in ways]
    clear = (each for each in places if not any(each.inset(-_BACK).overlaps(other) for other in near))
    found = next(clear, None)
    return found or middle, found is not None


def _looks(part: Size, *, has_mark: bool, is_common: bool) -> Iterator[tuple[tuple[_Look, ...], int]]:
    """All looks with much air and with little, the handsomest first.

    At last, of those that are common to several parts, each takes the one that it has room for. Words are turned
    only in upright parts, and where these are no strips, only if they have no room otherwise.
    """
    is_strip = part.height > _STRIP * part.width
    turns = [(False, True)] if is_strip else [(False,), (True,)] if part.height > part.width else [(False,)]
    sizes = [(size, False) for size in (_MARK_SIZES if has_mark else (SMALL,))] + [(SMALL, True)] * has_mark
    for turned in turns:
        both = [_both(*size, turns, part) for size, turns in product(sizes, turned)]
        for air in range(2):
            yield from (((look,), air) for looks in both for look in looks)
            yield from ((looks[::-1], air) for looks in both if is_common)


def _both(mark_size: int, is_close: bool, is_turned: bool, part: Size) -> tuple[_Look, _Look]:
    """Stacked and in a line; what has little room and is wide has it in a line first."""
    stack, line = (_Look(mark_size, is_close, is_stacked, is_turned) for is_stacked in (True, False))
    lying = part.turned() if is_turned else part
    return (line, stack) if is_close and lying.width > 2 * lying.height else (stack, line)


def _form(label: Label, kept: str, look: _Look) -> _Form:
    offered = {
        "mark": (label.mark, Style(face=Typeface.SANS_BOLD, size=look.mark_size)),
        "name": (label.name, _NAME),
        "size": (label.size, _MEASURE),
    }
    words = kept.split()
    lines = tuple(line for key, line in offered.items() if key in words)
    return _Form(lines, label.pile if "pile" in words else None, look)


def _stacked(canvas: Canvas, form: _Form) -> None:
    look, top = form.look, -form.box.height // 2
    for words, style in form.lines:
        top += look.height(style)
        write(canvas, words, (0, top - look.below(style)), style, align=Align.MIDDLE)
    if form.pile:
        middle = (0, top + look.around_sign // 2 + look.sign.height // 2)
        pile_sign(canvas, form.pile.pages, form.pile.page, middle, look.sign)


def _in_line(canvas: Canvas, form: _Form) -> None:
    look, left = form.look, -form.box.width // 2
    for words, style in form.lines:
        write(canvas, words, (left, style.size // 3), style)
        left += width(words, style) + look.gap
    if form.pile:
        pile_sign(canvas, form.pile.pages, form.pile.page, (left + look.sign.width // 2, 0), look.sign)
