from letters import letters
from spreadwright.drawing import relief
from spreadwright.drawing.canvas import Canvas, filled
from spreadwright.geometry import Rect, Size
from spreadwright.model import Core

MM = 320
WHOLE = Rect(0, 0, 40 * MM, 40 * MM)
PIECE = Rect(10 * MM, 10 * MM, 20 * MM, 20 * MM)


def test_shadow_falls_to_the_lower_right():
    canvas = Canvas(WHOLE.size, title="Shadow")
    canvas.rect(WHOLE, filled("#ffffff"))
    relief.shadow(canvas, PIECE, 4 * MM, opacity=0.9)
    canvas.rect(PIECE, filled("#00ff00"))
    rows = letters(canvas, 40, {"-": "#ffffff", "+": "#9a948e", "p": "#00ff00"}, pixels=6)
    assert (rows[20][5], rows[5][20]) == ("-", "-") and (rows[20][32], rows[32][20]) == ("+", "+")


def test_shadow_grows_with_the_layers():
    depths = [relief.depth_of(layer) for layer in range(1, 9)]
    assert depths == sorted(depths) and depths[0] == relief.LAYER_HEIGHT and depths[-1] == depths[-2]


def test_a_dyed_core_shows_its_own_colour():
    shown = []
    for core in Core:
        canvas = Canvas(Size(10, 10), title="Edge")
        relief.cut_edge(canvas, WHOLE, "#204060", core)
        shown.append("#ffffff" in canvas.outline()[-2])
    assert shown == [True, False]
