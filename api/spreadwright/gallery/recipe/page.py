"""One recipe to what its page shows, and the files that lie beside the page. Pure: bytes and values in and out."""

from dataclasses import dataclass

from spreadwright.gallery.pictures import Files
from spreadwright.gallery.recipe.card import card_file
from spreadwright.gallery.recipe.downloads import Download, downloads
from spreadwright.gallery.recipe.exchange import Exchange
from spreadwright.gallery.recipe.instructions import Instructions, Need, instructions
from spreadwright.gallery.recipe.job import RecipeJob
from spreadwright.gallery.recipe.paths import page_path
from spreadwright.gallery.recipe.thumbnails import Thumbnail, thumbnail_in_greys, thumbnails
from spreadwright.geometry import Size
from spreadwright.model import Bench, Piece, Recipe
from spreadwright.tasks import Cutting, Placing


@dataclass(frozen=True, slots=True)
class PhotoRow:
    """One photograph of the photo table."""

    mat: Piece
    page: str
    mat_size: Size
    size: Size


@dataclass(frozen=True, slots=True)
class RecipePage:
    """All that the page of one recipe shows.

    Attributes:
        told: The instructions for the bench of its unit, then for that of the other unit, where it can be cut there.
        in_greys: The spread where no paper set fills its roles.
    """

    recipe: Recipe
    told: tuple[Instructions, ...]
    exchange: Exchange | None
    thumbnails: tuple[Thumbnail, ...]
    in_greys: Thumbnail | None
    photos: tuple[PhotoRow, ...]
    downloads: tuple[Download, ...]

    @property
    def path(self) -> str:
        """Where the page lies below the home of a language."""
        return page_path(self.recipe.id)

    def steps_path(self, told: Instructions) -> str:
        """Where the steps lie one by one, likewise; those in the other unit are named by it."""
        unit = "" if told is self.told[0] else f"-{told.unit}"
        return page_path(self.recipe.id, f"steps{unit}.html")

    def script_path(self, told: Instructions) -> str:
        """Where the script lies that puts what is told in the other unit into the page, likewise."""
        return page_path(self.recipe.id, f"told-{told.unit}.js")

    @property
    def sheets(self) -> int:
        """How many sheets of paper the recipe takes."""
        return len(self.cutting.sheets)

    @property
    def bench(self) -> Bench:
        """The bench that speaks its unit."""
        return self.told[0].bench

    @property
    def needs(self) -> tuple[Need, ...]:
        """The paper that it takes."""
        return self.told[0].needs

    @property
    def cutting(self) -> Cutting:
        """How it is cut on that bench."""
        return self.told[0].cutting

    @property
    def placing(self) -> Placing:
        """How it is put together on that bench."""
        return self.told[0].placing


@dataclass(frozen=True, slots=True)
class RecipePictures:
    """What is known of the pictures of a recipe, which are made once for all languages; it can be kept as JSON."""

    thumbnails: tuple[Thumbnail, ...]
    in_greys: Thumbnail | None
    downloads: tuple[Download, ...]


def recipe_pictures(job: RecipeJob) -> tuple[RecipePictures, Files]:
    """What the pages of a recipe show in any language, and the files, by path from the root of the site.

    Raises:
        CannotDraw: A picture could not be drawn.
    """
    small, small_files = thumbnails(job)
    grey, grey_files = (None, {}) if small else thumbnail_in_greys(job)
    offered, offered_files = downloads(job)
    return RecipePictures(small, grey, offered), {**small_files, **grey_files, **offered_files, **card_file(job)}


def recipe_page(job: RecipeJob, pictures: RecipePictures, worn: Exchange | None) -> tuple[RecipePage, Files]:
    """What the page of a recipe shows in the language that is spoken, and the files, by path below its home.

    Args:
        job: The recipe.
        pictures: What is known of its pictures.
        worn: The spread whose papers are exchanged in the page, which is the same in all languages.

    Raises:
        CannotDraw: A picture could not be drawn.
    """
    told, files = _told(job)
    page = RecipePage(
        job.recipe,
        told,
        worn,
        pictures.thumbnails,
        pictures.in_greys,
        _photo_rows(told[0].cutting, told[0].placing),
        pictures.downloads,
    )
    return page, files


def _told(job: RecipeJob) -> tuple[tuple[Instructions, ...], Files]:
    """Only those of its own unit have pictures in files; the others are shown within the page."""
    own, files = instructions(job.reading, job.bench, f"pictures/{job.recipe.id}")
    others = [instructions(job.reading, bench)[0] for bench in job.other_benches]
    return (own, *others), files


def _photo_rows(cutting: Cutting, placing: Placing) -> tuple[PhotoRow, ...]:
    """As they lie on the page, so a turned mat is given as it is seen."""
    placed = {each.piece.id: each for each in placing.placed}
    return tuple(
        PhotoRow(mat.piece, mat.page, mat.rect.size, photo.rect_on(mat.rect).size)
        for photo in placing.photos
        if (mat := placed.get(photo.on)) is not None
    )
