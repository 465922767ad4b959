"""One recipe to what its page shows, and the files that lie beside the page. Pure: bytes and values in and out."""

from dataclasses import dataclass
from itertools import groupby

from spreadwright.cutting import CutSheet, CutStep, CutWords
from spreadwright.errors import Finding
from spreadwright.gallery.card import card_file
from spreadwright.gallery.downloads import Download, downloads
from spreadwright.gallery.exchange import Exchange, exchange
from spreadwright.gallery.jobs import RecipeJob
from spreadwright.gallery.pictures import Files, Picture, picture
from spreadwright.gallery.previews import Preview, previews
from spreadwright.gallery.thumbnails import Thumbnail, thumbnails
from spreadwright.gallery.typesetting import counted
from spreadwright.geometry import Size
from spreadwright.model import Axis, Bench, Piece, Recipe, Role
from spreadwright.tasks import Cutting, Placing, cut, place, recipe_findings
from spreadwright.tasks.draw import cut_sheets_svg, placement_svg


@dataclass(frozen=True, slots=True)
class Need:
    """Equal sheets of one role; `numbers` are those of the cut sheets."""

    role: Role
    size: Size
    numbers: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class SheetCuts:
    """One sheet that is cut: its picture, and every step with its words."""

    number: int
    role: Role
    picture: Picture
    steps: tuple[tuple[CutStep, CutWords], ...]


@dataclass(frozen=True, slots=True)
class PhotoRow:
    """One photograph of the photo table."""

    mat: Piece
    page: str
    mat_size: Size
    size: Size


@dataclass(frozen=True, slots=True)
class RecipePage:
    """All that the page of one recipe shows."""

    recipe: Recipe
    bench: Bench
    exchange: Exchange | None
    previews: tuple[Preview, ...]
    thumbnails: tuple[Thumbnail, ...]
    needs: tuple[Need, ...]
    cutting: Cutting
    cut_sheets: tuple[SheetCuts, ...]
    placing: Placing
    placement: Picture
    photos: tuple[PhotoRow, ...]
    notes: tuple[Finding, ...]
    downloads: tuple[Download, ...]

    @property
    def path(self) -> str:
        """Where the page lies below the home of a language."""
        return f"recipes/{self.recipe.id}/index.html"

    @property
    def sheets(self) -> int:
        """How many sheets of paper the recipe takes."""
        return len(self.cutting.sheets)

    @property
    def whole_sheets(self) -> tuple[CutSheet, ...]:
        """The sheets that stay whole."""
        return tuple(sheet for sheet in self.cutting.sheets if not self.cutting.steps_of(sheet))

    def preview_in(self, set_id: str) -> Preview | None:
        """The preview in one paper set, if its papers fill every role."""
        return next((preview for preview in self.previews if preview.papers.id == set_id), None)


@dataclass(frozen=True, slots=True)
class RecipePictures:
    """What is made of a recipe once, whatever languages its pages speak."""

    exchange: Exchange | None
    previews: tuple[Preview, ...]
    thumbnails: tuple[Thumbnail, ...]
    downloads: tuple[Download, ...]


def recipe_pictures(job: RecipeJob) -> tuple[RecipePictures, Files]:
    """What the pages of a recipe show in any language, and the files, by path from the root of the site.

    Raises:
        CannotDraw: A picture could not be drawn.
    """
    shown, files = previews(job)
    small, small_files = thumbnails(job)
    offered, offered_files = downloads(job)
    worn = exchange(job.reading, job.proposals)
    return RecipePictures(worn, shown, small, offered), {**files, **small_files, **offered_files, **card_file(job)}


def recipe_page(job: RecipeJob, pictures: RecipePictures) -> tuple[RecipePage, Files]:
    """What the page of a recipe shows in the language that is spoken, and the files, by path below its home.

    Raises:
        CannotDraw: A picture could not be drawn.
    """
    recipe, folder = job.recipe, f"pictures/{job.recipe.id}"
    cutting, placing = cut(job.reading, job.bench), place(job.reading, job.bench)
    sheet_svgs, placement = cut_sheets_svg(cutting), placement_svg(placing)
    cut_sheets = tuple(_sheet_cuts(sheet, svg, cutting, folder) for sheet, svg in _cut_ones(cutting, sheet_svgs))
    placement_picture = picture(f"{folder}/placement.svg", placement, _placement_alt(placing))
    files = {each.picture.path: sheet_svgs[each.number - 1] for each in cut_sheets}
    files[placement_picture.path] = placement
    page = RecipePage(
        recipe,
        job.bench,
        pictures.exchange,
        pictures.previews,
        pictures.thumbnails,
        _needs(cutting),
        cutting,
        cut_sheets,
        placing,
        placement_picture,
        _photo_rows(cutting, placing),
        recipe_findings(job.reading, job.bench),
        pictures.downloads,
    )
    return page, files


def _cut_ones(cutting: Cutting, svgs: tuple[bytes, ...]) -> list[tuple[CutSheet, bytes]]:
    pairs = zip(cutting.sheets, svgs, strict=True)
    return [(sheet, svg) for sheet, svg in pairs if cutting.steps_of(sheet) and cutting.together(sheet)[0] == sheet]


def _sheet_cuts(sheet: CutSheet, svg: bytes, cutting: Cutting, folder: str) -> SheetCuts:
    steps = tuple(
        (step, words) for step, words in zip(cutting.steps, cutting.words, strict=True) if sheet.number in step.sheets
    )
    role = _role(cutting.recipe, sheet.role)
    return SheetCuts(
        sheet.number,
        role,
        picture(f"{folder}/sheet-{sheet.number}.svg", svg, _sheet_alt(sheet, len(steps), cutting)),
        steps,
    )


def _sheet_alt(sheet: CutSheet, cuts: int, cutting: Cutting) -> str:
    first = "columns" if sheet.root.axis is Axis.COLUMNS else "rows"
    marks = {piece.id: piece.mark for piece in cutting.pieces}
    parts = ", ".join(marks.get(part.id, "spare") for part in sheet.parts)
    return (
        f"Sheet {sheet.number} in outline, cut into {first} first by "
        f"{counted(cuts, 'numbered cut')}; the parts are {parts}."
    )


def _placement_alt(placing: Placing) -> str:
    pages = len(placing.recipe.spread.pages)
    return (
        f"{'Both pages' if pages == 2 else 'The page'} in outline with {counted(len(placing.steps), 'piece')}, "
        "numbered in the order in which they are glued, and a table of their distances from the edges."
    )


def _role(recipe: Recipe, role_id: str) -> Role:
    return next(role for role in recipe.roles if role.id == role_id)


def _needs(cutting: Cutting) -> tuple[Need, ...]:
    sized = [(sheet.role, sheet.size, sheet.number) for sheet in cutting.sheets if sheet.size is not None]
    sized.sort(key=lambda each: ([role.id for role in cutting.recipe.roles].index(each[0]), each[1], each[2]))
    return tuple(
        Need(_role(cutting.recipe, role), size, tuple(number for *_, number in equal))
        for (role, size), equal in groupby(sized, key=lambda each: (each[0], each[1]))
    )


def _photo_rows(cutting: Cutting, placing: Placing) -> tuple[PhotoRow, ...]:
    """As they lie on the page, so a turned mat is given as it is seen."""
    placed = {each.piece.id: each for each in placing.placed}
    return tuple(
        PhotoRow(mat.piece, mat.page, mat.rect.size, photo.rect_on(mat.rect).size)
        for photo in placing.photos
        if (mat := placed.get(photo.on)) is not None
    )
