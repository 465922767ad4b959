"""The verb *colourways*, ranked: from a recipe and paper sets to the colourways that please most."""

from collections.abc import Sequence
from functools import lru_cache

from spreadwright.colour.colourways import options
from spreadwright.colour.measure import Look, look
from spreadwright.colour.ranking import Ranking, ranking
from spreadwright.colour.scene import PHOTO, Patch, Scene, Surface, scene
from spreadwright.colour.tables import cast_of
from spreadwright.colour.worth import Wish, Worth, worth
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.geometry import Size
from spreadwright.model import Colourway, Face, PaperSet, Recipe, Side
from spreadwright.photos import matted_photos
from spreadwright.placing import PlacedPiece, placed_pieces


@lru_cache(maxsize=2048)
def face_look(face: Face) -> Look:
    """What a face amounts to, measured on its picture."""
    return look(face_pixels(face), PIXELS_PER_MM)


@lru_cache(maxsize=256)
def seen(recipe: Recipe) -> Scene:
    """What is seen of a proven recipe's papers."""
    cut = pieces(cut_sheets(recipe))
    placed = {each.piece.id: each for each in placed_pieces(recipe, cut)}
    patches = [Patch(each.page, _surface(each), each.rect) for each in placed.values()]
    patches += [
        Patch(mat.page, PHOTO, photo.rect_on(mat.rect))
        for photo in matted_photos(recipe, cut)
        if (mat := placed.get(photo.on)) is not None
    ]
    captions = [_surface(placed[caption.on]) for caption in recipe.captions if caption.on in placed]
    return scene(recipe.spread.size or Size(0, 0), patches, captions)


def _surface(piece: PlacedPiece) -> Surface:
    return Surface(piece.piece.role, piece.side)


def worth_in(recipe: Recipe, papers: PaperSet, wish: Wish | None = None) -> Worth:
    """What all colourways of a proven recipe in one set are worth.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    what = seen(recipe)
    playing = options(recipe, papers)
    surfaces = {Surface(role, side) for role in playing for side in Side}
    return worth(papers, what, cast_of(surfaces, playing, face_look), wish=wish)


def ranked(recipe: Recipe, sets: Sequence[PaperSet], wanted: int, wish: Wish | None = None) -> Ranking:
    """The best colourways of a proven recipe, different from one another, the best first.

    Raises:
        NoColourway: No paper of one of the sets fits one of the roles.
    """
    return ranking([worth_in(recipe, papers, wish) for papers in sets], wanted)


@lru_cache(maxsize=256)
def best_colourway(recipe: Recipe, papers: PaperSet) -> Colourway:
    """The colourway that stands for a set.

    Raises:
        NoColourway: No paper of the set fits one of the roles.
    """
    return ranked(recipe, [papers], 1).colourways[0].colourway
