"""The pages at the trimmer: cautions, how to read the pictures, every sheet with its cuts, the piles."""

from collections.abc import Iterator, Sequence

from markupsafe import Markup

from spreadwright.cutting import CutStep, CutWords, Fate, Pile, Share, told_part
from spreadwright.drawing.booklet import signs
from spreadwright.drawing.booklet.album import Picture
from spreadwright.drawing.booklet.blocks import (
    Block,
    Entry,
    Figure,
    Opening,
    Section,
    Steps,
    Words,
    cautioned,
    lead,
    paragraphs,
    watch_out,
)
from spreadwright.drawing.booklet.board import Board, CutPicture, board_for, cut_picture
from spreadwright.drawing.booklet.pieces import piece_picture, pile_scale
from spreadwright.drawing.booklet.plan import BookletPlan
from spreadwright.drawing.booklet.tags import Tag
from spreadwright.drawing.booklet.typeset import typeset
from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.labels import Pile as PileSign
from spreadwright.drawing.sheet import LONGEST_SIDE, SheetPlan, least_longest, sheet_figure
from spreadwright.drawing.theme import MM
from spreadwright.geometry import Rect
from spreadwright.lengths import on_scale, told_size
from spreadwright.model import Hand, Piece
from spreadwright.words import gettext as _
from spreadwright.words import ngettext

_SMALL_WIDTH, _SMALL_SIDE = 124 * MM, 86 * MM
_MIDDLE_SIDE = 104 * MM
"""How long a sheet is drawn that needs the whole width, ticks; one with many parts is drawn larger."""
_MANY = 24
_MOST_PARTS, _LEAST_PART = 10, 4 * MM
_MOST_SHOWN = 40
"""Of a pile with more pieces than this, equal ones are shown as one."""


def before_cutting(plan: BookletPlan) -> Section:
    """Cautions first, then what the pictures mean."""
    return Section(
        _("Before you cut"),
        (
            cautioned(plan.cut_cautions),
            paragraphs(plan.cut_rounding),
            *watch_out(plan.cut_doubts),
            Steps("signs", tuple(_signs(plan)), across=1),
            *_uncut(plan),
        ),
        is_new_page=True,
    )


def _signs(plan: BookletPlan) -> Iterator[Entry]:
    yield _sign(
        signs.board(),
        _("The board of the trimmer, seen from above, always in the same place. The dark bar is the fence."),
    )
    if plan.bench.trimmer.hand is Hand.LEFT:
        arm = _("The arm is on the left. It comes down along the line that ends in the number of the cut.")
    else:
        arm = _("The arm is on the right. It comes down along the line that ends in the number of the cut.")
    yield _sign(signs.arm(), arm)
    yield _sign(signs.reading(), _("The dimension above the fence is what the scale shows; its figure is the reading."))
    yield _sign(signs.stays(), _("A part with a solid edge stays under the clamp."))
    yield _sign(signs.falls(), _("A hatched part with a broken edge falls."))
    yield _sign(
        signs.corner(),
        _("The dark corner lay at the top left when the sheet lay upright. Watch it to see when the paper is turned."),
    )
    if len(plan.recipe.spread.pages) > 1:
        yield _sign(signs.pile(plan.recipe.spread.pages), _("The dark page is the one on whose pile the piece goes."))
    yield _sign(None, _("Letters, some with a number, are the marks of the pieces: pencil them on the backs."))


def _sign(sign: Canvas | None, words: str) -> Entry:
    return Entry("", Picture(sign, words) if sign else None, Markup(), (typeset(words),))


def sheets(plan: BookletPlan) -> Iterator[Section]:
    """Each sheet that is cut, with its drawing and its cuts; whole ones in words."""
    board = board_for(plan.steps)
    words = dict(zip(plan.steps, plan.words, strict=True))
    yield Section(_("Cutting"), ())
    for sheet in plan.sheets:
        if sheet.steps:
            yield _sheet(plan, sheet, board, words)


def _uncut(plan: BookletPlan) -> Iterator[Block]:
    for sheet in plan.sheets:
        if not sheet.steps:
            yield paragraphs(" ".join(_whole(sheet)))


def _whole(sheet: SheetPlan) -> Iterator[str]:
    """What becomes of a sheet that is not cut."""
    part, number = sheet.sheet.parts[0], sheet.sheet.number
    piece = sheet.pieces.get(part.id)
    if piece is None:
        yield _("Sheet {number} ({paper}) is not cut: keep it for later.").format(number=number, paper=sheet.role)
        return
    told = _("Sheet {number} ({paper}) is not cut: the whole of it is “{piece}” ({mark}).")
    yield told.format(number=number, paper=sheet.role, piece=piece.id, mark=piece.mark)
    to_pile = {
        "page": _("Put it on the pile."),
        "left": _("Put it on the pile of the left page."),
        "right": _("Put it on the pile of the right page."),
    }
    page = sheet.page_of.get(part.id)
    if page:
        yield to_pile[page]


def _sheet(plan: BookletPlan, sheet: SheetPlan, board: Board, words: dict[CutStep, CutWords]) -> Section:
    size = sheet.sheet.size
    shown = told_part(Rect.at(0, 0, size), plan.bench) if size else ""
    title = _("{sheet}: {paper}, {size}").format(sheet=sheet.heading, paper=sheet.role, size=shown)
    entries = tuple(_cut(plan, step, words[step], board) for step in sheet.steps)
    return Section(title, tuple(_sheet_blocks(sheet, entries)), level=2)


def _sheet_blocks(sheet: SheetPlan, entries: tuple[Entry, ...]) -> Iterator[Block]:
    """The drawing of the sheet with the first cuts beside it, unless it needs the whole width."""
    alt = _("{sheet}: the cuts with their numbers, and the size of every part.").format(sheet=sheet.heading)
    prefix = f"s{sheet.sheet.number}-"
    longest = drawn_longest(sheet)
    if longest == _SMALL_SIDE:
        canvas = sheet_figure(sheet, wide=_SMALL_WIDTH, longest=longest, prefix=prefix)
        figure = Figure("sheet", Picture(canvas, alt))
        beside = 2 if len(entries) == 2 else 1
        yield Opening("opening", figure, Steps("cuts", entries[:beside], across=1))
        yield Steps("cuts", entries[beside:])
    else:
        yield Figure("sheet", Picture(sheet_figure(sheet, longest=longest, prefix=prefix), alt))
        yield Steps("cuts", entries)


def drawn_longest(sheet: SheetPlan) -> int:
    """How long the longer side of a sheet is drawn, ticks."""
    if _is_simple(sheet):
        return _SMALL_SIDE
    return LONGEST_SIDE if _is_crowded(sheet) else _MIDDLE_SIDE


def _is_simple(sheet: SheetPlan) -> bool:
    """Whether what stands on its parts can be read in a smaller drawing."""
    return len(sheet.sheet.parts) <= _MOST_PARTS and _narrow(sheet) <= 1 and least_longest(sheet) <= _SMALL_SIDE


def _is_crowded(sheet: SheetPlan) -> bool:
    """Whether the drawing had better be as large as it can be."""
    return len(sheet.sheet.parts) > _MANY or _narrow(sheet) > 2 or least_longest(sheet) > _MIDDLE_SIDE


def _narrow(sheet: SheetPlan) -> int:
    """How many parts would be too narrow for their words in a small drawing."""
    rects = [part.rect for part in sheet.sheet.parts if part.rect]
    longest = max(max(rect.right, rect.bottom) for rect in rects)
    return sum(min(rect.width, rect.height) * _SMALL_SIDE < _LEAST_PART * longest for rect in rects)


def _cut(plan: BookletPlan, step: CutStep, words: CutWords, board: Board) -> Entry:
    drawn = cut_drawn(plan.sheets[0], step, words, board)
    lines = tuple(typeset(line) for line in (words.board, words.setting, words.falls, words.stays, words.mark) if line)
    return Entry(str(step.number), drawn, typeset(words.caution), lines)


def cut_drawn(sheet: SheetPlan, step: CutStep, words: CutWords, board: Board) -> Picture:
    """The picture of one cut; any sheet of the recipe says what is needed of pieces, piles and bench."""
    reading = on_scale(step.reading, sheet.bench.trimmer.graduation, sheet.bench.unit)
    alt = _("Cut {number} on the board, the scale at {reading}.").format(number=step.number, reading=reading)
    shown = CutPicture(step, reading, _tag(sheet, step.kept), _tag(sheet, step.falling), words.together, alt)
    return Picture(cut_picture(shown, board, prefix=f"c{step.number}-"), alt)


def _tag(sheet: SheetPlan, share: Share) -> Tag:
    size, ids = told_part(share.true, sheet.bench), share.ids
    found = [sheet.pieces[name] for name in ids if name in sheet.pieces]
    if not found:
        return Tag(name=_fate(share.fate), size=size)
    marks, names = ", ".join(piece.mark for piece in found), ", ".join(piece.id for piece in found)
    pages = tuple(sheet.pages)
    theirs = dict.fromkeys(sheet.page_of[name] for name in ids if name in sheet.page_of)
    piles = tuple(PileSign(pages, page) for page in theirs) if len(pages) > 1 else ()
    return Tag(marks, names, size, piles)


def _fate(fate: Fate) -> str:
    told = {
        Fate.SPARE: _("spare"),
        Fate.SCRAP: _("scrap"),
        Fate.SET_ASIDE: _("set aside"),
        Fate.ON_BOARD: _("cut further"),
    }
    return told.get(fate, "")


def piles(plan: BookletPlan) -> Section:
    """The pieces of each page in small, with mark, name and size; many of one size together."""
    scale = pile_scale([piece for pile in plan.piles for piece in pile.pieces])
    blocks: list[Block] = [
        lead(_("Lay the pieces of each page together as they fall; count them before you go on.")),
    ]
    for pile in plan.piles:
        kinds: dict[object, list[Piece]] = {}
        for piece in pile.pieces:
            key = plan.sizes[piece.id] if len(pile.pieces) > _MOST_SHOWN else piece.id
            kinds.setdefault(key, []).append(piece)
        entries = tuple(_pile_entry(plan, alike, scale) for alike in kinds.values())
        blocks += [Words("subheading", (typeset(_counted(pile)),)), Steps("pile", entries, across=5)]
    return Section(_("Piles"), tuple(blocks))


def _pile_entry(plan: BookletPlan, alike: Sequence[Piece], scale: tuple[int, int]) -> Entry:
    """One piece of a pile, or all of one size."""
    first, marks = alike[0], ", ".join(piece.mark for piece in alike)
    drawn = Picture(piece_picture(first, scale, prefix=f"p{first.mark}-"), marks)
    cut = plan.sizes[first.id]
    size = typeset(told_size(cut.width, cut.height, plan.bench.unit))
    if len(alike) == 1:
        return Entry("", drawn, Markup(), (Markup("<b>{}</b> {}").format(first.mark, first.id), size))
    count = ngettext("{count} piece", "{count} pieces", len(alike)).format(count=len(alike))
    return Entry("", drawn, Markup(), (Markup("<b>{}</b>").format(marks), size, typeset(count)))


def _counted(pile: Pile) -> str:
    count = len(pile.pieces)
    told = {
        "page": ngettext("{count} piece", "{count} pieces", count),
        "left": ngettext("Left page: {count} piece", "Left page: {count} pieces", count),
        "right": ngettext("Right page: {count} piece", "Right page: {count} pieces", count),
    }
    return told[pile.page].format(count=count)
