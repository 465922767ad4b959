"""The paths of a sheet as DXF: the only door to the library that writes it.

It is imported when first needed, since it takes longer to load than most commands to run.
"""

from io import StringIO
from typing import TYPE_CHECKING

from spreadwright.drawing.canvas import printable
from spreadwright.drawing.cut_paths import CUT, LABEL, SHEET, CutPaths
from spreadwright.drawing.path import Point
from spreadwright.errors import CannotDraw
from spreadwright.lengths import TICKS, Unit

if TYPE_CHECKING:
    from ezdxf.document import Drawing

_VERSION = "R2000"
"""The oldest that states its unit, so that nearly every program reads it."""
_LAYERS = {SHEET: 8, CUT: 7, LABEL: 9}
"""Layers with their indexed colours: grey, black on white paper, light grey."""


def cut_paths_dxf(paths: CutPaths) -> bytes:
    """The paths as DXF in millimetres, y upward from the lower left corner; the same paths give the same bytes.

    Raises:
        CannotDraw: The library refused; its error is the cause.
    """
    try:
        drawing = _drawing()
        _draw(drawing, paths)
        out = StringIO()
        drawing.write(out)
    except Exception as cause:  # the library raises whatever its validation raises
        raise CannotDraw("The DXF") from cause
    return out.getvalue().encode(drawing.output_encoding, "replace")


def _drawing() -> "Drawing":
    from ezdxf import units
    from ezdxf._options import options
    from ezdxf.filemanagement import new

    options.write_fixed_meta_data_for_testing = True  # neither the date nor a random id
    drawing = new(_VERSION, units=units.MM)
    drawing.header["$MEASUREMENT"] = 1
    for name, colour in _LAYERS.items():
        drawing.layers.add(name, color=colour)
    return drawing


def _draw(drawing: "Drawing", paths: CutPaths) -> None:
    from ezdxf.enums import TextEntityAlignment

    space, (wide, high) = drawing.modelspace(), (paths.size.width, paths.size.height)
    first, last = (0, 0, 0), (*_point((wide, 0), high), 0)
    space.reset_extents(first, last)
    drawing.header["$EXTMIN"], drawing.header["$EXTMAX"] = first, last  # the library takes a corner at nought for none
    corners = [_point(corner, high) for corner in ((0, high), (wide, high), (wide, 0), (0, 0))]
    space.add_lwpolyline(corners, close=True, dxfattribs={"layer": SHEET})
    for line in paths.lines:
        space.add_line(_point(line.start, high), _point(line.end, high), dxfattribs={"layer": CUT})
    for label in paths.labels:
        attributes = {"layer": LABEL, "rotation": 90 if label.is_upright else 0}
        text = space.add_text(printable(label.words), height=label.height / _MM, dxfattribs=attributes)
        text.set_placement(_point(label.middle, high), align=TextEntityAlignment.MIDDLE_CENTER)


_MM = TICKS[Unit.MILLIMETRE]


def _point(point: Point, high: int) -> tuple[float, float]:
    """Millimetres, y upward."""
    return point[0] / _MM, (high - point[1]) / _MM
