"""What pages about many recipes need to know of each: words and numbers alone, so that it can be kept as JSON."""

from dataclasses import dataclass

from spreadwright.gallery.overview.page_size import PageSize, page_size
from spreadwright.gallery.recipe.page import RecipePage
from spreadwright.gallery.recipe.paths import page_path
from spreadwright.gallery.recipe.thumbnails import Thumbnail
from spreadwright.model import Kind
from spreadwright.model.titles import role_title
from spreadwright.tasks.difficulty import Difficulty, difficulty


@dataclass(frozen=True, slots=True)
class Facts:
    """One recipe in one language of the gallery; `language` is its own.

    Attributes:
        plain: How many roles take plain paper only.
        patterned: How many take patterned paper only.
        roles: What they are called.
        thumbnails: In every paper set that fills the roles, the leading one first.
        in_greys: What stands for them where there is none.
    """

    id: str
    title: str
    language: str
    summary: str
    authors: tuple[str, ...]
    licence: str
    tags: tuple[str, ...]
    pages: int
    sheets: int
    photos: int
    cuts: int
    plain: int
    patterned: int
    roles: tuple[str, ...]
    page: PageSize
    difficulty: Difficulty
    thumbnails: tuple[Thumbnail, ...]
    in_greys: Thumbnail | None

    @property
    def path(self) -> str:
        """Where its page lies below the home of a language."""
        return page_path(self.id)

    def thumbnail_in(self, set_id: str = "") -> Thumbnail | None:
        """The thumbnail in one paper set; without one the leading one, or that in greys."""
        if set_id:
            return next((each for each in self.thumbnails if each.set_id == set_id), None)
        return self.thumbnails[0] if self.thumbnails else self.in_greys


def facts_of(page: RecipePage) -> Facts:
    """What others need to know of a recipe, in the language that is spoken."""
    recipe = page.recipe
    return Facts(
        recipe.id,
        recipe.title,
        recipe.language,
        recipe.summary,
        recipe.authors,
        recipe.licence,
        recipe.tags,
        len(recipe.spread.pages),
        page.sheets,
        len(recipe.photos),
        len(page.cutting.steps),
        _roles(page, Kind.PLAIN),
        _roles(page, Kind.PATTERNED),
        tuple(role_title(role) for role in recipe.roles),
        page_size(recipe.spread.size, recipe.unit),
        difficulty(page.cutting),
        page.thumbnails,
        page.in_greys,
    )


def _roles(page: RecipePage, kind: Kind) -> int:
    return sum(role.kind is kind for role in page.recipe.roles)
