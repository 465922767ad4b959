from spreadwright.drawing.booklet.album import Album, Picture
from spreadwright.drawing.canvas import Canvas
from spreadwright.geometry import Size


def test_title_of_a_picture_is_escaped():
    shown = Album().shown(Picture(Canvas(Size(320, 320), title=""), '"><script>'))
    assert "<script>" not in shown and "&#34;&gt;&lt;script&gt;" in shown


def test_each_picture_has_its_own_address_and_size():
    album, canvas = Album(), Canvas(Size(3200, 1600), title="")
    shown = [album.shown(Picture(canvas, "wide")), album.shown(Picture(canvas, "narrow", 1600))]
    assert list(album.pictures) == ["picture:1", "picture:2"]
    assert "width:10mm;height:5mm" in shown[0] and "width:5mm;height:2.5mm" in shown[1]
