"""Cut steps in the words of somebody who teaches them, in the language that is spoken."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from spreadwright.cutting.lie import HALF_ROUND, TO_THE_LEFT, TO_THE_RIGHT, UPRIGHT
from spreadwright.cutting.steps import Arrival, CutStep, Fate, Share
from spreadwright.cutting.told import told_part, told_rect
from spreadwright.geometry import Rect
from spreadwright.lengths import on_scale, told
from spreadwright.model import Axis, Bench, Measures, Piece, Side
from spreadwright.words import gettext as _
from spreadwright.words import listed, ngettext


def cautions() -> tuple[str, ...]:
    """Common cautions for arm trimmers, always shown before the first cut."""
    return (
        _("The blade is sharp: latch the arm down whenever you are not cutting."),
        _("Keep your fingers behind the guard and never reach across the blade."),
        _("Hold narrow strips down with a ruler or a scrap of card, not with your fingers."),
        _("Children cut only with an adult beside them."),
        _("Follow the instructions of your trimmer’s maker and your local rules; they come before these."),
    )


@dataclass(frozen=True, slots=True)
class CutWords:
    """One step in sentences; caution first.

    Attributes:
        caution: What to take care of with this cut; empty for most.
        board: What to lay on the board, and how.
        setting: What the scale shows.
        falls: What falls, and where it goes.
        stays: What stays under the clamp, and where it goes.
        mark: What to pencil on pieces that would not show later which way up they lay; empty for most.
        together: How many sheets lie on one another; empty for one.
    """

    caution: str
    board: str
    setting: str
    falls: str
    stays: str
    mark: str = ""
    together: str = ""


def sentences(
    step: CutStep,
    paper: str,
    bench: Bench,
    pieces: Mapping[str, Piece],
    page_of: Mapping[str, str],
    marked: Mapping[str, Side] = MappingProxyType({}),
) -> CutWords:
    """A step in words, lengths in the bench's unit and to the marks of its scale.

    Args:
        step: The step to tell.
        paper: What the role of its sheet is called.
        bench: The maker's bench.
        pieces: Every piece by id.
        page_of: The page on whose pile each piece goes, by id.
        marked: The pieces that need a pencil mark for their up-side, by id, with the face that it goes on.
    """
    falls, stays = _falls(step, bench, pieces), _stays(step, bench, pieces)
    return CutWords(
        caution=_caution(step, bench),
        board=" ".join((_board(step, paper, bench), *_turn(step))),
        setting=_setting(step, bench),
        falls=" ".join((falls, *_goes(step.falling, page_of))),
        stays=" ".join((stays, *_goes(step.kept, page_of))),
        mark=" ".join(_marks(step, marked)),
        together=together(len(step.sheets)),
    )


def together(count: int) -> str:
    """How many sheets lie on one another, in words; empty for one."""
    if count < 2:
        return ""
    if count == 2:
        return _("both sheets together")
    return ngettext("{count} sheet together", "{count} sheets together", count).format(count=count)


def _caution(step: CutStep, bench: Bench) -> str:
    """What to take care of where a strip is narrower than can be held safely: held ones before those that fall."""
    shortest = bench.trimmer.shortest
    falls, stays = step.axis.along(step.falling.rect), step.axis.along(step.kept.rect)
    if min(stays, step.length) < shortest:
        if stays <= step.length:
            width = _told_side(step.kept.true, step.axis, bench)
            held = _("The strip under the clamp is only {width} wide: hold it with a ruler, not with your fingers.")
        else:
            width = _told_side(step.true_board, step.axis.other, bench)
            held = _("The strip that you cut is only {width} wide: hold it with a ruler, not with your fingers.")
        return held.format(width=width)
    if falls < shortest:
        falling = _("The strip that falls is only {width} wide: let it fall, and do not reach for it.")
        return falling.format(width=_told_side(step.falling.true, step.axis, bench))
    return ""


def _told_side(true: Rect, axis: Axis, bench: Bench) -> str:
    return told(axis.along(told_rect(true, bench.trimmer)), bench.unit)


def _board(step: CutStep, paper: str, bench: Bench) -> str:
    size = told_part(step.true_board, bench)
    if step.arrival is Arrival.NEW_SHEET:
        return _new_sheet(step, paper, size)
    if step.arrival is Arrival.STAYS:
        return _("Leave the part of {size} on the board.").format(size=size)
    return _taken_up(step).format(size=size, cut=step.set_aside_at)


def _taken_up(step: CutStep) -> str:
    """Which of the parts that were set aside: both parts of one cut may be, and be equally large."""
    if step.had_stayed:
        return _("Take up the part of {size} that stayed at cut {cut}.")
    if step.set_aside_at == step.number - 1:
        return _("Take up the part of {size} that has just fallen.")
    return _("Take up the part of {size} that fell at cut {cut}.")


def _new_sheet(step: CutStep, paper: str, size: str) -> str:
    if len(step.sheets) == 1:
        told = {
            UPRIGHT: _("Lay sheet {number} ({paper}, {size}) on the board, its top edge at the fence."),
            TO_THE_LEFT: _("Lay sheet {number} ({paper}, {size}) on the board, its top edge to the left."),
            HALF_ROUND: _("Lay sheet {number} ({paper}, {size}) on the board, its top edge towards you."),
            TO_THE_RIGHT: _("Lay sheet {number} ({paper}, {size}) on the board, its top edge to the right."),
        }
        return told[step.quarter_turns_left].format(number=step.sheet, paper=paper, size=size)
    told = {
        UPRIGHT: _("Lay sheets {numbers} ({paper}, {size}) on one another on the board, top edges at the fence."),
        TO_THE_LEFT: _("Lay sheets {numbers} ({paper}, {size}) on one another on the board, top edges left."),
        HALF_ROUND: _("Lay sheets {numbers} ({paper}, {size}) on one another on the board, top edges near you."),
        TO_THE_RIGHT: _("Lay sheets {numbers} ({paper}, {size}) on one another on the board, top edges right."),
    }
    numbers = listed([str(number) for number in step.sheets])
    lay = told[step.quarter_turns_left].format(numbers=numbers, paper=paper, size=size)
    level = _("They are cut together: keep their edges level, and take what lies on one another as one part.")
    return f"{lay} {level}"


def _turn(step: CutStep) -> tuple[str, ...]:
    """The turn and how the part then lies; a new sheet is told how it lies already."""
    if step.arrival is Arrival.NEW_SHEET:
        return ()
    if not step.turned:
        return () if step.arrival is Arrival.STAYS else (_lies(step),)
    lies = {
        UPRIGHT: _("Its top edge now lies at the fence again."),
        TO_THE_LEFT: _("Its top edge now lies to the left."),
        HALF_ROUND: _("Its top edge now lies towards you."),
        TO_THE_RIGHT: _("Its top edge now lies to the right."),
    }
    turns = {
        1: _("Turn it a quarter to the left."),
        -1: _("Turn it a quarter to the right."),
        2: _("Turn it half round."),
    }
    return turns[step.turned], lies[step.quarter_turns_left]


def _lies(step: CutStep) -> str:
    """How a part lies that is taken up and not turned."""
    lies = {
        UPRIGHT: _("Lay it with its top edge at the fence."),
        TO_THE_LEFT: _("Lay it with its top edge to the left."),
        HALF_ROUND: _("Lay it with its top edge towards you."),
        TO_THE_RIGHT: _("Lay it with its top edge to the right."),
    }
    return lies[step.quarter_turns_left]


def _setting(step: CutStep, bench: Bench) -> str:
    if step.measures is Measures.KEPT:
        new = _("Set the scale to {reading} for the part that stays, and cut.")
        same = _("Leave the scale at {reading} for the part that stays, and cut.")
    else:
        new = _("Set the scale to {reading} for the part that falls, and cut.")
        same = _("Leave the scale at {reading} for the part that falls, and cut.")
    reading = on_scale(step.reading, bench.trimmer.graduation, bench.unit)
    return (new if step.is_set_now else same).format(reading=reading)


def _falls(step: CutStep, bench: Bench, pieces: Mapping[str, Piece]) -> str:
    size = told_part(step.falling.true, bench)
    if step.falling.fate is not Fate.PIECE:
        return _("What falls is a part of {size}.").format(size=size)
    if len(step.falling.ids) == 1:
        told = _("What falls is “{piece}” ({mark}), {size}.")
        return told.format(piece=step.falling.id, mark=pieces[step.falling.id].mark, size=size)
    told = _("What falls are {pieces}, each {size}.")
    return told.format(pieces=_named(step.falling.ids, pieces), size=size)


def _stays(step: CutStep, bench: Bench, pieces: Mapping[str, Piece]) -> str:
    size = told_part(step.kept.true, bench)
    if step.kept.fate is not Fate.PIECE:
        return _("What stays is a part of {size}.").format(size=size)
    if len(step.kept.ids) == 1:
        told = _("What stays is “{piece}” ({mark}), {size}.")
        return told.format(piece=step.kept.id, mark=pieces[step.kept.id].mark, size=size)
    told = _("What stays are {pieces}, each {size}.")
    return told.format(pieces=_named(step.kept.ids, pieces), size=size)


def _named(ids: Sequence[str], pieces: Mapping[str, Piece]) -> str:
    told = _("“{piece}” ({mark})")
    return listed([told.format(piece=each, mark=pieces[each].mark) for each in ids])


def _goes(share: Share, page_of: Mapping[str, str]) -> tuple[str, ...]:
    """Where a part goes that falls or stays."""
    if share.fate is Fate.PIECE:
        pages = [page_of[each] for each in share.ids]
        if sorted(pages) == ["left", "right"]:
            return (_("Put one on the pile of each page."),)
        return tuple(_to_pile(page, pages.count(page), len(pages)) for page in dict.fromkeys(pages))
    if share.fate is Fate.SET_ASIDE:
        return (_("Set it aside until cut {cut}.").format(cut=share.until),)
    told: Mapping[Fate, Callable[[], str]] = {
        Fate.SPARE: lambda: _("It is a spare: keep it for later."),
        Fate.ON_BOARD: lambda: _("It is cut further."),
        Fate.SCRAP: lambda: _("It is scrap."),
    }
    return (told[share.fate](),)


def _marks(step: CutStep, marked: Mapping[str, Side]) -> Iterator[str]:
    """The corner that lies at the top left on the upright sheet, as the part lies now."""
    corners = {
        UPRIGHT: _("at the fence on the left"),
        TO_THE_LEFT: _("near you on the left"),
        HALF_ROUND: _("near you on the right"),
        TO_THE_RIGHT: _("at the fence on the right"),
    }
    told = {
        Side.BACK: _("Pencil a cross on the back of {pieces}, in the corner {corner}: that is its top left."),
        Side.FRONT: _("Pencil a cross on the face of {pieces}, in the corner {corner}: that is its top left."),
    }
    done = (*step.falling.ids, *step.kept.ids)
    for side in (Side.BACK, Side.FRONT):
        ids = [_("“{piece}”").format(piece=each) for each in done if marked.get(each) is side]
        if ids:
            yield told[side].format(pieces=listed(ids), corner=corners[step.quarter_turns_left])


def _to_pile(page: str, count: int, among: int) -> str:
    """On whose pile a piece is put, or so many of the pieces that came off together."""
    if among == 1:
        one = {
            "page": _("Put it on the pile."),
            "left": _("Put it on the pile of the left page."),
            "right": _("Put it on the pile of the right page."),
        }
        return one[page]
    if count == among:
        every = {
            "page": _("Put them on the pile."),
            "left": _("Put them on the pile of the left page."),
            "right": _("Put them on the pile of the right page."),
        }
        return every[page]
    some = {
        "left": ngettext(
            "Put {count} on the pile of the left page.", "Put {count} on the pile of the left page.", count
        ),
        "right": ngettext(
            "Put {count} on the pile of the right page.", "Put {count} on the pile of the right page.", count
        ),
    }
    return some[page].format(count=count)
