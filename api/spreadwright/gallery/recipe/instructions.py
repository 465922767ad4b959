"""What is told for one bench: needs, cuts, piles and placing, all of which its unit and its marks decide.

A reading on another trimmer is no conversion but the mark nearest there, and the order of cuts may be another, too; so
each unit has instructions of its own, in words as in pictures.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import groupby

from markupsafe import Markup

from spreadwright.cutting import CutSheet, CutStep, CutWords
from spreadwright.document import Reading
from spreadwright.errors import Finding, InvalidDocument
from spreadwright.gallery.pictures import Files, Picture, picture
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, told_size
from spreadwright.model import Bench, Piece, Recipe, Role, role_title
from spreadwright.placing import PlaceStep
from spreadwright.tasks import Cutting, Placing, cut, place, proven, recipe_findings
from spreadwright.tasks.draw import sheet_plans
from spreadwright.tasks.instruction_pictures import (
    StepPicture,
    cut_pictures,
    inline_placement,
    inline_sheets,
    move_pictures,
    placement_file,
    sheet_files,
)
from spreadwright.words import listed, ngettext, spoken


@dataclass(frozen=True, slots=True)
class Need:
    """Equal sheets of one role; `numbers` are those of the cut sheets."""

    role: Role
    title: str
    size: Size
    numbers: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing that lies in the page; `path` of the file that shows it with its tables, empty where there is none."""

    markup: Markup
    path: str


@dataclass(frozen=True, slots=True)
class Cut:
    """One cut in words, and as a picture: in the page, and as a file where there is one."""

    step: CutStep
    words: CutWords
    drawn: Markup
    picture: Picture | None


@dataclass(frozen=True, slots=True)
class Move:
    """One piece that is glued down, likewise."""

    step: PlaceStep
    drawn: Markup
    picture: Picture | None


@dataclass(frozen=True, slots=True)
class SheetCuts:
    """One sheet that is cut, or several that are cut together: the drawing, and every cut."""

    number: int
    heading: str
    paper: str
    figure: Figure
    cuts: tuple[Cut, ...]


@dataclass(frozen=True, slots=True)
class Instructions:
    """All that is told for one bench, in the language that was spoken.

    Attributes:
        marks: Of every piece by id.
        notes: What is worth knowing first.
    """

    bench: Bench
    needs: tuple[Need, ...]
    cutting: Cutting
    cut_sheets: tuple[SheetCuts, ...]
    placing: Placing
    placement: Figure
    moves: tuple[Move, ...]
    notes: tuple[Finding, ...]
    marks: dict[str, str] = field(default_factory=dict)

    @property
    def unit(self) -> str:
        """The unit of every figure, as it stands in addresses: ``in``, ``mm``."""
        return self.bench.unit.value

    @property
    def whole_sheets(self) -> tuple[CutSheet, ...]:
        """The sheets that stay whole."""
        return tuple(sheet for sheet in self.cutting.sheets if not self.cutting.steps_of(sheet))

    @property
    def whole_words(self) -> str:
        """Which sheets stay whole, in words."""
        numbers = [str(sheet.number) for sheet in self.whole_sheets]
        told = ngettext("Sheet {numbers} stays whole.", "Sheets {numbers} stay whole.", len(numbers))
        return told.format(numbers=listed(numbers))

    def size_of(self, piece: Piece) -> str:
        """The size of a piece as it is told on this bench."""
        size = self.cutting.sizes[piece.id]
        return told_size(size.width, size.height, self.bench.unit)

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """Every cut of every sheet, in order."""
        return tuple(cut for sheet in self.cut_sheets for cut in sheet.cuts)


def other_unit(unit: Unit) -> Unit:
    """The unit that people change to."""
    return Unit.MILLIMETRE if unit is Unit.INCH else Unit.INCH


def can_be_cut(reading: Reading[Recipe], bench: Bench) -> bool:
    """Whether a recipe is proven on a bench: marks may be too coarse there, or a sheet too long."""
    try:
        proven(reading, bench)
    except InvalidDocument:
        return False
    return True


def instructions(reading: Reading[Recipe], bench: Bench, folder: str = "") -> tuple[Instructions, Files]:
    """What is told for a bench in the language that is spoken, and the files of its pictures.

    Args:
        reading: The recipe.
        bench: Whose marks and unit are told.
        folder: Where the files of pictures lie; empty for none, where all are shown within the page.

    Raises:
        InvalidDocument: The recipe carries an error on this bench.
    """
    cutting, placing = cut(reading, bench), place(reading, bench)
    pictures = _pictures(cutting, placing, folder)
    found = Instructions(
        bench,
        _needs(cutting),
        cutting,
        _cut_sheets(cutting, pictures),
        placing,
        Figure(Markup(inline_placement(placing)), pictures.placement),
        _moves(placing, pictures),
        recipe_findings(reading, bench, language=spoken()),
        {piece.id: piece.mark for piece in cutting.pieces},
    )
    return found, pictures.files


@dataclass(frozen=True, slots=True)
class _Pictures:
    """What is drawn of the steps, the files of pictures, and where each is found."""

    cuts: tuple[tuple[Markup, Picture | None], ...]
    moves: tuple[tuple[Markup, Picture | None], ...]
    sheets: dict[int, str] = field(default_factory=dict)
    placement: str = ""
    files: dict[str, bytes] = field(default_factory=dict)


def _pictures(cutting: Cutting, placing: Placing, folder: str) -> _Pictures:
    drawn_cuts = cut_pictures(cutting, has_files=bool(folder))
    drawn_moves = move_pictures(placing, has_files=bool(folder))
    if not folder:
        return _Pictures(_within(drawn_cuts), _within(drawn_moves))
    sheets = {number: (f"{folder}/sheet-{number}.svg", svg) for number, svg in sheet_files(cutting).items()}
    cuts, cut_files = _beside(f"{folder}/cut", drawn_cuts)
    moves, move_files = _beside(f"{folder}/piece", drawn_moves)
    placement = f"{folder}/placement.svg"
    files = dict(sheets.values()) | {placement: placement_file(placing)} | cut_files | move_files
    return _Pictures(cuts, moves, {number: path for number, (path, _) in sheets.items()}, placement, files)


def _within(drawn: Iterable[StepPicture]) -> tuple[tuple[Markup, None], ...]:
    return tuple((Markup(each.inline), None) for each in drawn)


def _beside(stem: str, drawn: Iterable[StepPicture]) -> tuple[tuple[tuple[Markup, Picture], ...], dict[str, bytes]]:
    """Each in the page and beside it, and the files."""
    numbered = [(f"{stem}-{number}.svg", each) for number, each in enumerate(drawn, start=1)]
    shown = tuple((Markup(each.inline), picture(path, each.file, each.alt)) for path, each in numbered)
    return shown, {path: each.file for path, each in numbered}


def _cut_sheets(cutting: Cutting, pictures: _Pictures) -> tuple[SheetCuts, ...]:
    sheets = inline_sheets(cutting)
    steps = zip(cutting.steps, cutting.words, pictures.cuts, strict=True)
    cuts = [Cut(step, words, *shown) for step, words, shown in steps]
    return tuple(
        SheetCuts(
            plan.sheet.number,
            plan.heading,
            plan.role,
            Figure(Markup(sheets[plan.sheet.number]), pictures.sheets.get(plan.sheet.number, "")),
            tuple(each for each in cuts if plan.sheet.number in each.step.sheets),
        )
        for plan in sheet_plans(cutting)
        if plan.steps
    )


def _moves(placing: Placing, pictures: _Pictures) -> tuple[Move, ...]:
    return tuple(Move(step, *shown) for step, shown in zip(placing.steps, pictures.moves, strict=True))


def _needs(cutting: Cutting) -> tuple[Need, ...]:
    order = {role.id: index for index, role in enumerate(cutting.recipe.roles)}
    roles = {role.id: role for role in cutting.recipe.roles}
    sized = [(sheet.role, sheet.size, sheet.number) for sheet in cutting.sheets if sheet.size is not None]
    sized.sort(key=lambda each: (order[each[0]], each[1], each[2]))
    return tuple(
        Need(roles[role], role_title(roles[role]), size, tuple(number for *_, number in equal))
        for (role, size), equal in groupby(sized, key=lambda each: (each[0], each[1]))
    )
