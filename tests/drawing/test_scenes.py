from io import BytesIO

import pytest
from PIL import Image

from spreadwright.drawing.canvas import Canvas
from spreadwright.drawing.raster import png
from spreadwright.drawing.scenes import SCENES, Scene, chosen, draw_print, outdoors
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.geometry import Rect, Size

MM = 320
SHAPES = [Size(100 * MM, 150 * MM), Size(150 * MM, 100 * MM), Size(90 * MM, 90 * MM), Size(300 * MM, 80 * MM)]


def printed(scene: Scene, size: Size, *, day: str = "low-tide", seed: str = "mat-1") -> Canvas:
    canvas = Canvas(size, title="A photograph")
    draw_print(canvas, Rect.at(0, 0, size), scene, day=day, seed=seed)
    return canvas


@pytest.mark.parametrize("scene", SCENES)
@pytest.mark.parametrize("size", SHAPES)
def test_every_scene_suits_every_shape(scene: Scene, size: Size):
    image = Image.open(BytesIO(png(svg_bytes(printed(scene, size)), 320))).convert("RGB")
    assert len(image.getcolors(320 * 480) or range(999)) > 200
    assert min(image.getpixel((1, 1))) > 245  # the border of the print


@pytest.mark.parametrize("scene", SCENES)
def test_a_scene_stays_small(scene: Scene):
    assert len(svg_bytes(printed(scene, SHAPES[1]))) < 26_000


@pytest.mark.parametrize("scene", SCENES)
def test_each_piece_gets_its_own_picture(scene: Scene):
    one, other = (markup(printed(scene, SHAPES[1], seed=seed)) for seed in ("mat-1", "mat-2"))
    assert one != other and one == markup(printed(scene, SHAPES[1]))


@pytest.mark.parametrize("size", [Size(1, 1), Size(2, 97536), Size(97536, 3200), Size(975360, 975360)])
def test_no_size_is_too_odd(size: Size):
    sizes = [len(svg_bytes(printed(scene, size))) for scene in chosen([size] * len(SCENES), "low-tide")]
    assert max(sizes) < 60_000


def test_one_day_has_one_light():
    skies = {
        line.split("stop-color=")[1].split()[0]
        for scene in (outdoors.coast, outdoors.park, outdoors.meadow)
        for line in printed(scene, SHAPES[0]).outline()
        if "stop offset=0 " in line and "stop-opacity" not in line
    }
    shared = [
        {line for line in printed(s, SHAPES[0]).outline() if "stop offset=0 " in line}
        for s in (outdoors.lake, outdoors.park)
    ]
    assert skies and shared[0] & shared[1]


def test_no_scene_is_seen_twice_before_all_were():
    sizes = [SHAPES[0]] * len(SCENES)
    assert set(chosen(sizes, "low-tide")) == set(SCENES)


def test_one_more_picture_keeps_the_others():
    assert chosen(SHAPES, "low-tide")[:3] == chosen(SHAPES[:3], "low-tide")
