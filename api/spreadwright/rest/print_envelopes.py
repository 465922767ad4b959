"""The shapes of what is answered about photographs, pieces and cut paths; the `answers` of `tasks` fill them."""

from marshmallow.fields import Boolean, Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import BenchName, Envelope, said


class PlainSize(Envelope):
    """Width and height, ticks and in words."""

    width = Integer()
    height = Integer()
    text = String()


class BorderWidth(Envelope):
    """What a mat shows round its photo, ticks and in words."""

    ticks = Integer()
    text = String()


class PrintSize(Envelope):
    """A print that a photo can be trimmed from."""

    size = Nested(PlainSize)
    title = String(metadata=said("Its name in inches and in centimetres."))
    lost = Float(metadata=said("The share of the print that falls, 0 to 1."))


class PixelSize(Envelope):
    """Pixels."""

    width = Integer()
    height = Integer()


class Resolutions(Envelope):
    """The fewest pixels that are enough."""

    at_300_per_inch = Nested(PixelSize)
    at_150_per_inch = Nested(PixelSize)


class CameraShape(Envelope):
    """What is cut off the picture of a camera."""

    shape = String(metadata=said("Long side to short side.", example="3:2"))
    lost = Float(metadata=said("The share of the picture that is cut off, 0 to 1."))


class BorderedPhoto(Envelope):
    """What depends on the border."""

    border = Nested(BorderWidth)
    size = Nested(PlainSize, metadata=said("As the photo lies on the page."))
    on_ruler = Nested(PlainSize, metadata=said("The same to the nearest marks of the bench's ruler."))
    prints = List(Nested(PrintSize), metadata=said("Large enough either way round, the least loss first."))
    pixels = Nested(Resolutions)


class SizedPhoto(BorderedPhoto):
    """One photograph on its mat."""

    on = String(metadata=said("The piece that is its mat."))
    mark = String()
    page = String()
    mat = Nested(PlainSize, metadata=said("As it lies on the page."))
    camera_shapes = List(Nested(CameraShape))
    words = String()
    wide = Nested(BorderedPhoto, allow_none=True, metadata=said("With 1/4 in; null for a mat too small for it."))


class Photos(Envelope):
    """Every photograph of a recipe."""

    recipe = String()
    bench = Nested(BenchName)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    photos = List(Nested(SizedPhoto))


class ListedPiece(Envelope):
    """One piece."""

    mark = String()
    id = String()
    sheet = Integer(metadata=said("The number of the sheet that it is cut from."))
    page = String(metadata=said("Where it goes, and so its pile."))
    size = Nested(PlainSize, metadata=said("As cut, before any turn."))
    turned = Boolean()
    face = String()
    role = String()
    photo = Nested(PlainSize, allow_none=True, metadata=said("Of the photograph on it, as cut."))


class PieceTable(Envelope):
    """Every piece of a recipe, sheet by sheet."""

    recipe = String()
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    pieces = List(Nested(ListedPiece))


class PathCut(Envelope):
    """One straight cut, x and y of its two ends."""

    start = List(Integer())
    end = List(Integer())


class PathSheet(Envelope):
    """The cuts of one sheet."""

    number = Integer()
    role = String()
    size = Nested(PlainSize)
    cuts = List(Nested(PathCut), metadata=said("In cutting order, none on another, ticks from the top left."))


class CutPaths(Envelope):
    """The cuts of every sheet as lines."""

    recipe = String()
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    sheets = List(Nested(PathSheet))
