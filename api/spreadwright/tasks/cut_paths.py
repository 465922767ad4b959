"""The verb *cut-paths*: every sheet at full size as SVG and DXF, for cutting machines and other programs."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from io import BytesIO
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from spreadwright.cutting import CutSheet, Region, pile_of
from spreadwright.document import Reading
from spreadwright.drawing.cut_paths import CutLine, CutPaths, PathLabel, cut_lines, cut_paths_svg
from spreadwright.drawing.cut_paths_dxf import cut_paths_dxf
from spreadwright.errors import UnknownName
from spreadwright.lengths import Unit
from spreadwright.model import Bench, Recipe, Side
from spreadwright.tasks.answers import SCALE, Json, size_answer
from spreadwright.tasks.check import proven
from spreadwright.tasks.cut import Cutting, cutting
from spreadwright.tasks.pieces import piece_rows, pieces_csv

__all__ = ["FORMATS", "PathSheet", "SheetPaths", "cut_paths", "cut_paths_answer", "cut_paths_zip"]

FORMATS = {"svg": cut_paths_svg, "dxf": cut_paths_dxf}
"""What writes each format."""

_NEVER = (1980, 1, 1, 0, 0, 0)
"""The earliest date that an archive can hold: the same files give the same bytes."""


@dataclass(frozen=True, slots=True)
class PathSheet:
    """The paths of one sheet, and its number."""

    number: int
    role: str
    paths: CutPaths

    def file(self, form: str) -> bytes:
        """The file in one of the formats."""
        return FORMATS[form](self.paths)

    def name(self, form: str) -> str:
        """What the file is called."""
        return f"sheet-{self.number}.{form}"


@dataclass(frozen=True, slots=True)
class SheetPaths:
    """The paths of every sheet of a recipe, and the table of its pieces."""

    recipe: Recipe
    sheets: tuple[PathSheet, ...]
    table: bytes

    def sheet(self, number: int | None) -> PathSheet:
        """One sheet; when no number is given the first that is cut at all, else the first.

        Raises:
            UnknownName: There is no sheet of that number.
        """
        if number is None:
            return next((sheet for sheet in self.sheets if sheet.paths.lines), self.sheets[0])
        found = next((sheet for sheet in self.sheets if sheet.number == number), None)
        if found is None:
            raise UnknownName("sheet", str(number), [str(sheet.number) for sheet in self.sheets])
        return found


def cut_paths(reading: Reading[Recipe], bench: Bench) -> SheetPaths:
    """The paths of every sheet, the cuts in the order in which they are made on a bench.

    The bench's limits do not matter: a machine that follows the paths has its own.

    Raises:
        InvalidDocument: The recipe carries an error.
    """
    recipe = proven(reading)
    found = cutting(recipe, bench, pile_of(recipe))
    sheets = tuple(PathSheet(sheet.number, sheet.role, _paths(sheet, found)) for sheet in found.sheets)
    return SheetPaths(recipe, sheets, pieces_csv(piece_rows(recipe)))


def cut_paths_zip(found: SheetPaths) -> bytes:
    """The files of all sheets in every format, and the table of the pieces, as one archive."""
    files = {sheet.name(form): sheet.file(form) for sheet in found.sheets for form in FORMATS}
    out = BytesIO()
    with ZipFile(out, "w", ZIP_DEFLATED) as archive:
        for name, data in (*files.items(), ("pieces.csv", found.table)):
            archive.writestr(ZipInfo(name, _NEVER), data, ZIP_DEFLATED)
    return out.getvalue()


def cut_paths_answer(found: SheetPaths) -> Json:
    """Every sheet with its cuts as lines, from its top left corner, in ticks."""
    return {
        "recipe": found.recipe.id,
        **SCALE,
        "sheets": [_sheet(sheet, found.recipe.unit) for sheet in found.sheets],
    }


def _sheet(sheet: PathSheet, unit: Unit) -> Json:
    size = sheet.paths.size
    return {
        "number": sheet.number,
        "role": sheet.role,
        "size": size_answer(size, unit),
        "cuts": [_cut(line) for line in sheet.paths.lines],
    }


def _cut(line: CutLine) -> Json:
    return {"start": list(line.start), "end": list(line.end)}


def _paths(sheet: CutSheet, found: Cutting) -> CutPaths:
    if sheet.size is None:
        raise ValueError("a sheet of unknown size cannot be drawn; check the recipe first")
    marks = {piece.id: piece.mark for piece in found.pieces}
    turned_over = {each.piece for each in found.recipe.placements if each.side is Side.BACK}
    title = f"{found.recipe.title}: sheet {sheet.number}"
    labels = tuple(label for part in sheet.parts if (label := _label(part, marks, turned_over)))
    return CutPaths(title, sheet.size, cut_lines(found.steps_of(sheet)), labels)


def _label(part: Region, marks: Mapping[str, str], turned_over: Collection[str]) -> PathLabel | None:
    """Mark and name as in the table of the pieces, and whether the back is up in the end; sheets are cut front up."""
    if part.rect is None:
        return None
    words = f"{marks[part.id]} {part.id}" if part.id in marks else part.id
    return PathLabel(f"{words} (back)" if part.id in turned_over else words, part.rect)
