"""The spread as it will lie on the table: papers at real scale, layers, prints, pencilled captions."""

from collections.abc import Callable, Hashable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from spreadwright.cutting import cut_sheets
from spreadwright.drawing import relief
from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.drawing.path import Point
from spreadwright.drawing.patterns import draw_face
from spreadwright.drawing.pencil import free_room, write_lines
from spreadwright.drawing.scenes import Scene, chosen, draw_print
from spreadwright.drawing.theme import MM, TABLE
from spreadwright.errors import CannotDraw
from spreadwright.geometry import Rect, Size
from spreadwright.model import Choice, Colourway, Core, Face, Recipe, Side, Texture
from spreadwright.photos import MattedPhoto
from spreadwright.placing import PlacedPiece

_BLANK_PAGE = "#fdfcf8"

FaceAt = Callable[[Choice], str]
"""The address of the picture of a whole sheet, with the face up that a choice says."""


@dataclass(frozen=True, slots=True)
class _Sheet:
    """Where a piece lay on its sheet, and how wide that sheet is; ticks."""

    place: Rect
    width: int


@dataclass(frozen=True, slots=True)
class Print:
    """A photograph, the piece that it lies on, and what it shows: a scene of ours, or a JPEG."""

    mat: PlacedPiece
    rect: Rect
    scene: Scene
    picture: bytes = b""


def spread_picture(
    recipe: Recipe,
    placed: Sequence[PlacedPiece],
    photos: Sequence[MattedPhoto],
    colourway: Colourway,
    *,
    papers: str = "",
    prefix: str = "",
    surface: str = TABLE,
    pictures: Mapping[str, bytes] | None = None,
    face_at: FaceAt | None = None,
) -> Canvas:
    """All pages of a recipe side by side, seen from straight above.

    Args:
        face_at: Where the picture of a whole sheet with a choice's face lies, for pages that exchange papers: each
            piece shows its part of that picture. Papers are drawn in place when left out.
        pictures: What the photographs show, as JPEG by the piece that they lie on; the other mats stay empty. Scenes of
            ours when left out.
        papers: What the paper set is called.
        prefix: Stands before every id, so that several pictures can lie in one page.
        surface: What the pages lie on; empty for nothing.

    Raises:
        CannotDraw: The recipe does not say how large its pages are.
    """
    whole = spread_size(recipe)
    size = size_on_table(whole)
    margin = (size.height - whole.height) // 2
    count = len(prints(recipe, placed, photos, pictures))
    canvas = Canvas(
        size, title=_title(recipe, count, papers), description=_description(recipe, colourway), prefix=prefix
    )
    if surface:
        relief.table(canvas, Rect.at(0, 0, size), surface)
    draw_spread(canvas, recipe, placed, photos, colourway, at=(margin, margin), pictures=pictures, face_at=face_at)
    return canvas


def draw_spread(
    canvas: Canvas,
    recipe: Recipe,
    placed: Sequence[PlacedPiece],
    photos: Sequence[MattedPhoto],
    colourway: Colourway,
    *,
    at: Point = (0, 0),
    pictures: Mapping[str, bytes] | None = None,
    repeats: str = "",
    face_at: FaceAt | None = None,
) -> None:
    """The pages side by side on a canvas that holds more, at real scale, their top left corner at a point.

    Args:
        pictures, face_at: As for `spread_picture`.
        repeats: A name for the layout, when it is drawn several times at the same point: what does not differ is drawn
            once. Surfaces are smooth then, for so many spreads are small ones.

    Raises:
        CannotDraw: The recipe does not say how large its pages are.
    """
    whole = Rect.at(*at, spread_size(recipe))
    page = Size(whole.width // len(recipe.spread.pages), whole.height)
    relief.shadow(canvas, whole, 5 * MM, opacity=0.3)
    relief.shadow(canvas, whole, 3 * MM // 2, opacity=0.26)
    shown = prints(recipe, placed, photos, pictures)
    pages = {
        name: Rect.at(whole.left + number * page.width, whole.top, page)
        for number, name in enumerate(recipe.spread.pages)
    }
    _Spread(canvas, recipe, placed, colourway, shown, repeats, face_at).draw(pages)


def size_on_table(whole: Size) -> Size:
    """What a picture of pages of this size shows, with what they lie on around them."""
    margin = whole.height // 16
    return Size(whole.width + 2 * margin, whole.height + 2 * margin)


def spread_size(recipe: Recipe) -> Size:
    """All pages side by side, ticks.

    Raises:
        CannotDraw: The recipe does not say how large its pages are.
    """
    page = recipe.spread.size
    if page is None:
        raise CannotDraw(f"The spread of “{recipe.title}”")
    return Size(page.width * len(recipe.spread.pages), page.height)


def _title(recipe: Recipe, photos: int, papers: str) -> str:
    what = "double-page spread" if len(recipe.spread.pages) == 2 else "single page"
    count = f" with {photos} photo{'s' if photos != 1 else ''}" if photos else ""
    return f"{recipe.title}{f', in {papers} papers' if papers else ''}: {what}{count}"


def _description(recipe: Recipe, colourway: Colourway) -> str:
    parts = [
        f"{recipe_role.title or role}: {choice.paper.title}{' (back)' if choice.side is Side.BACK else ''}"
        for role, choice in colourway.choices
        if (recipe_role := recipe.role(role)) is not None
    ]
    return f"Papers: {'; '.join(parts)}." if parts else ""


def prints(
    recipe: Recipe,
    placed: Sequence[PlacedPiece],
    photos: Sequence[MattedPhoto],
    pictures: Mapping[str, bytes] | None = None,
) -> tuple[Print, ...]:
    """The photographs of a spread, in order; `pictures` as in `spread_picture`."""
    by_piece = {piece.piece.id: piece for piece in placed}
    lying = [(mat, photo.rect_on(mat.rect)) for photo in photos if (mat := by_piece.get(photo.on)) is not None]
    scenes = chosen([rect.size for _, rect in lying], recipe.id)
    found = [Print(mat, rect, scene) for (mat, rect), scene in zip(lying, scenes, strict=True)]
    if pictures is None:
        return tuple(found)
    shown = [(each, pictures.get(each.mat.piece.id)) for each in found]
    return tuple(replace(each, picture=picture) for each, picture in shown if picture)


class _Spread:
    """One picture under construction."""

    def __init__(
        self,
        canvas: Canvas,
        recipe: Recipe,
        placed: Sequence[PlacedPiece],
        colourway: Colourway,
        prints: tuple[Print, ...],
        repeats: str = "",
        face_at: FaceAt | None = None,
    ) -> None:
        self._repeats = repeats
        self._face_at = face_at
        self._canvas = canvas
        self._recipe = recipe
        self._placed = placed
        self._colourway = colourway
        self._prints = prints
        self._sheets = _sheets(recipe)

    def draw(self, pages: Mapping[str, Rect]) -> None:
        """Each page from the bottom upward, then the fold over all."""
        for name, page in pages.items():
            with self._canvas.group(clip=page):
                self._canvas.rect(page, filled(_BLANK_PAGE))
                self._page(name, page)
                relief.sheen(self._canvas, page)
        for page in list(pages.values())[1:]:
            relief.fold(self._canvas, page.left, page.top, page.bottom)

    def _page(self, name: str, page: Rect) -> None:
        pieces = [piece for piece in self._placed if piece.page == name]
        written = {caption.on for caption in self._recipe.captions}
        for piece in pieces:
            face = self._face(piece)
            core = self._colourway.choice(piece.piece.role).paper.core
            rect = piece.rect.moved(page.left, page.top)
            if not rect.contains(page):  # a shadow that falls beside the page is not seen
                self._once((piece.piece.id,), partial(relief.shadow, self._canvas, rect, relief.depth_of(piece.layer)))
            self._once((piece.piece.id, face, core), partial(self._piece, piece, rect, face, core))
        for number, piece in enumerate(pieces):
            if piece.piece.id in written:
                covers, ground = self._covers(piece, pieces[number + 1 :]), self._face(piece).colours[0]
                self._once((piece.piece.id, ground), partial(self._caption, piece, covers, page))
        self._once(("photographs", name), partial(self._photographs, name, page))

    def _once(self, what: tuple[Hashable, ...], draw: Callable[[], None]) -> None:
        """Something that does not differ from one spread in the picture to the next is drawn only once in it."""
        if self._repeats:
            self._canvas.repeated((self._repeats, *what), draw)
        else:
            draw()

    def _face(self, piece: PlacedPiece) -> Face:
        face = _shown(self._colourway, piece)
        return replace(face, texture=Texture.SMOOTH) if self._repeats else face

    def _photographs(self, name: str, page: Rect) -> None:
        for photo in self._prints:
            if photo.mat.page == name:
                self._print(photo, photo.rect.moved(page.left, page.top))

    def _piece(self, piece: PlacedPiece, rect: Rect, face: Face, core: Core) -> None:
        with self._canvas.group(names=_names("piece", piece), clip=rect):
            self._paper(piece, rect, face)
            relief.cut_edge(self._canvas, rect, face.colours[0], core)

    def _paper(self, piece: PlacedPiece, rect: Rect, face: Face) -> None:
        """The print runs as it ran on the sheet: moved, and turned with the piece."""
        area = self._area(piece, rect)
        at = (
            (rect.right + area.top, rect.top - area.left)
            if piece.is_turned
            else (rect.left - area.left, rect.top - area.top)
        )
        with self._canvas.group(at=at, turned_deg=90 if piece.is_turned else 0):
            self._print_of(piece, face, area)

    def _print_of(self, piece: PlacedPiece, face: Face, area: Rect) -> None:
        if self._face_at is None:
            draw_face(self._canvas, face, area)
            return
        choice = _lying(self._colourway, piece)
        self._canvas.linked_image(Rect.at(0, 0, choice.paper.size), self._face_at(choice))

    def _area(self, piece: PlacedPiece, rect: Rect) -> Rect:
        """Where the piece lay on its sheet, seen from the side that is up."""
        sheet = self._sheets.get(piece.piece.id)
        if sheet is None:
            return Rect.at(0, 0, rect.size.turned() if piece.is_turned else rect.size)
        if piece.side is Side.BACK:
            return Rect(sheet.width - sheet.place.right, sheet.place.top, sheet.place.width, sheet.place.height)
        return sheet.place

    def _covers(self, piece: PlacedPiece, later: Sequence[PlacedPiece]) -> list[Rect]:
        photos = [photo.rect for photo in self._prints if photo.mat.page == piece.page]
        return photos + [above.rect for above in later]

    def _caption(self, piece: PlacedPiece, covers: Sequence[Rect], page: Rect) -> None:
        room = free_room(piece.rect, covers)
        if room is not None:
            ground = _shown(self._colourway, piece).colours[0]
            with self._canvas.group(names=_names("caption", piece)):
                write_lines(
                    self._canvas, room.moved(page.left, page.top), ground, f"{self._recipe.id}/{piece.piece.id}"
                )

    def _print(self, photo: Print, rect: Rect) -> None:
        relief.shadow(self._canvas, rect, relief.LAYER_HEIGHT)
        with self._canvas.group(names={"photo": photo.mat.piece.id}):
            if photo.picture:
                self._canvas.image(rect, photo.picture, "image/jpeg")
            else:
                draw_print(self._canvas, rect, photo.scene, day=self._recipe.id, seed=photo.mat.piece.id)


def _names(what: str, piece: PlacedPiece) -> dict[str, str]:
    """By what a page finds a piece, and what belongs to it."""
    return {what: piece.piece.id, "role": piece.piece.role, "side": piece.side.value}


def _lying(colourway: Colourway, piece: PlacedPiece) -> Choice:
    """What is up: the role's own face, or its reverse for a piece that is placed back up."""
    return colourway.choice(piece.piece.role).lying(piece.side)


def _shown(colourway: Colourway, piece: PlacedPiece) -> Face:
    return _lying(colourway, piece).face


def _sheets(recipe: Recipe) -> dict[str, _Sheet]:
    return {
        part.id: _Sheet(part.rect, sheet.size.width)
        for sheet in cut_sheets(recipe)
        for part in sheet.parts
        if part.rect is not None and sheet.size is not None
    }
