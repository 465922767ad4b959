from xml.etree.ElementTree import fromstring

import pytest

from spreadwright.drawing.canvas import Canvas, Stop, filled, stroked
from spreadwright.drawing.svg import markup, svg_bytes
from spreadwright.geometry import Rect, Size

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture
def canvas() -> Canvas:
    return Canvas(Size(3200, 1600), title="Two squares", prefix="p-")


def test_size_is_written_in_millimetres(canvas: Canvas):
    root = fromstring(markup(canvas))
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("10mm", "5mm", "0 0 10 5")


def test_verbs_are_recorded_in_order(canvas: Canvas):
    with canvas.group(names={"role": "plain"}):
        canvas.rect(Rect(0, 0, 320, 640), filled("#112233"))
    canvas.line((0, 0), (32, 0), stroked("#000000", 160, dash=(320, 160)))
    assert canvas.outline()[1:] == (
        "g data-role=plain",
        "  rect x=0 y=0 width=1 height=2 fill=#112233",
        "line x1=0 y1=0 x2=0.1 y2=0 fill=none stroke=#000000 stroke-width=0.5 stroke-dasharray=1 0.5",
    )


def test_a_clip_stays_put_when_its_group_is_turned(canvas: Canvas):
    with canvas.group(clip=Rect(0, 0, 320, 320), turned_deg=90):
        canvas.circle((0, 0), 320, filled("#000000"))
    clipped, turned, circle = canvas.outline()[-3:]
    assert "clip-path" in clipped and turned.strip() == "g transform=rotate(90)" and circle.startswith("    circle")


def test_equal_clips_and_gradients_share_a_definition(canvas: Canvas):
    stops = (Stop(0, "#000000"), Stop(1, "#ffffff", 0.5))
    fills = {canvas.gradient((0, 0), (320, 0), stops) for _ in range(2)}
    for _ in range(2):
        with canvas.group(clip=Rect(0, 0, 320, 320)):
            canvas.rect(Rect(0, 0, 320, 320), filled(fills.copy().pop()))
    assert len(fills) == 1 and sum(line.startswith("  clipPath") for line in canvas.outline()) == 1


def test_every_id_carries_the_prefix(canvas: Canvas):
    with canvas.motif("leaf") as leaf:
        canvas.circle((0, 0), 32, filled("#000000"))
    canvas.use(leaf, (320, 320))
    with canvas.group(clip=Rect(0, 0, 1, 1)):
        canvas.rect(Rect(0, 0, 1, 1), filled(canvas.gradient((0, 0), (1, 1), (Stop(0, "#000000"),))))
    ids = [name for element in fromstring(markup(canvas)).iter() if (name := element.get("id"))]
    assert len(ids) == len(set(ids)) == 4 and all(name.startswith("p-") for name in ids)


def test_words_are_escaped():
    root = fromstring(markup(Canvas(Size(1, 1), title='<script>&"\x07', description="a<b")))
    assert root.findtext(f"{SVG}title") == '<script>&" ' and root.findtext(f"{SVG}desc") == "a<b"


def test_a_picture_names_itself(canvas: Canvas):
    root = fromstring(svg_bytes(canvas))
    assert root.get("role") == "img" and root.get("aria-labelledby") == "p-title"


def test_nothing_defined_leaves_no_definitions(canvas: Canvas):
    assert "defs" not in markup(canvas)


def test_a_canvas_may_be_drawn_on_after_it_was_written(canvas: Canvas):
    markup(canvas)
    with canvas.group(clip=Rect(0, 0, 1, 1)):
        pass
    assert "<defs><clipPath" in markup(canvas)
