import json
from copy import deepcopy
from fractions import Fraction
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from builder import PAPERS, spoilt
from spreadwright.document import read_any, read_paper_set
from spreadwright.errors import Severity, UnreadablePicture
from spreadwright.images import encode_jpeg, encode_png, read
from spreadwright.model import Basis, Kind, Pattern, Texture, basis_weight

SMOOTH = {"pattern": "plain", "colours": ["#ffffff"]}
PICTURE = {"pattern": "picture", "picture": "rope.png", "repeat": "1 in"}
ROPE = np.zeros((60, 120, 3), dtype=np.uint8)
ROPE[:, :, 0] = 255
SLOPE = np.repeat(np.linspace(0, 250, 120)[None, :, None], 60, axis=0).repeat(3, axis=2).astype(np.uint8)


def with_paper(**members):
    """A set whose first paper has these members, too; None takes one away."""

    def put(document):
        paper = document["papers"][0]
        paper.update(members)
        for name in [name for name, value in paper.items() if value is None]:
            del paper[name]

    return spoilt(put, PAPERS)


def first(data, pictures=None):
    reading = read_paper_set(data, "two", pictures)
    assert reading.findings == ()
    return reading.model.papers[0]


def found(data, pictures=None):
    return [(finding.code, finding.where) for finding in read_paper_set(data, "two", pictures).findings]


def folder(**files):
    return lambda name: files[name.split(".")[0]]


def test_weight_is_grammage_or_basis_weight():
    assert first(with_paper()).weight.grammage == 200
    assert first(with_paper(grammage=216)).weight.grammage == 216
    sold = first(with_paper(weight="65 lb cover")).weight
    assert sold == basis_weight(Fraction(65), Basis.COVER) and str(sold) == "176 g/m² (65 lb cover)"


@pytest.mark.parametrize("kind", Basis)
def test_every_kind_of_pound_is_read(kind):
    assert first(with_paper(weight=f"67.5 lb {kind.value}")).weight == basis_weight(Fraction(135, 2), kind)


@pytest.mark.parametrize(
    ("members", "code", "where"),
    [
        ({"weight": "65 lb"}, "wrong-text", "/papers/0/weight"),
        ({"weight": "65 lb cardboard"}, "wrong-text", "/papers/0/weight"),
        ({"weight": "65 lb cover\n"}, "wrong-text", "/papers/0/weight"),
        ({"weight": "6 lb text"}, "weight-out-of-range", "/papers/0/weight"),
        ({"weight": "400 lb cover"}, "weight-out-of-range", "/papers/0/weight"),
        ({"weight": "65 lb cover", "grammage": 176}, "members-not-together", "/papers/0/grammage"),
        ({"grammage": 12}, "wrong-value", "/papers/0/grammage"),
        ({"sheets": -1}, "wrong-value", "/papers/0/sheets"),
        ({"sheets": "four"}, "wrong-type", "/papers/0/sheets"),
        ({"front": {**SMOOTH, "texture": "linnen"}}, "wrong-value", "/papers/0/front/texture"),
        ({"front": {"pattern": "plain"}}, "missing-member", "/papers/0/front"),
        ({"front": {**SMOOTH, "picture": "a.png"}}, "members-not-together", "/papers/0/front/picture"),
        ({"front": {**PICTURE, "picture": "../rope.png"}}, "picture-outside-folder", "/papers/0/front/picture"),
        ({"front": {**PICTURE, "picture": "/etc/rope.png"}}, "picture-outside-folder", "/papers/0/front/picture"),
        ({"front": {**PICTURE, "picture": "C:\\rope.png"}}, "picture-outside-folder", "/papers/0/front/picture"),
        ({"front": {**PICTURE, "picture": "rope.gif"}}, "not-a-picture", "/papers/0/front/picture"),
        ({"front": {**PICTURE, "picture": 7}}, "wrong-type", "/papers/0/front/picture"),
    ],
    ids=str,
)  # fmt: skip
def test_what_a_paper_cannot_be_is_found_where_it_stands(members, code, where):
    assert found(with_paper(**members)) == [(code, where)]


def test_a_picture_needs_its_name_and_its_width_on_paper():
    reading = read_paper_set(with_paper(front={"pattern": "picture"}))
    assert [f.message for f in reading.findings] == [
        "The member “picture” is missing.",
        "The member “repeat” is missing.",
    ]


def test_sheets_at_hand_are_counted_or_not():
    assert first(with_paper()).sheets is None
    assert [first(with_paper(sheets=count)).sheets for count in (0, 4)] == [0, 4]


def test_linen_is_plain_paper_with_that_texture():
    front = first(with_paper()).front
    assert front.pattern is Pattern.LINEN and front.texture is Texture.LINEN and front.kind is Kind.PLAIN
    canvas = {"pattern": "plain", "colours": ["#dfe3e3"], "texture": "canvas"}
    assert str(first(with_paper(front=canvas)).front) == "plain, canvas texture"


def test_a_picture_is_read_and_made_ready_to_be_embedded():
    front = first(with_paper(front={**PICTURE, "directional": True}), folder(rope=encode_png(ROPE))).front
    assert front.kind is Kind.PATTERNED and front.colours == ("#ff0000",) and str(front) == "printed, one-way"
    picture = front.picture
    assert (picture.name, picture.media_type, picture.width, picture.height) == ("rope.png", "image/png", 120, 60)
    assert read(picture.data).pixels.shape == (60 + picture.overlap, 120 + picture.overlap, 3)


def test_stated_colours_of_a_picture_are_those_of_its_edges():
    front = first(with_paper(front={**PICTURE, "colours": ["#00FF00"]}), folder(rope=encode_png(ROPE))).front
    assert front.colours == ("#00ff00",)


def test_a_large_picture_is_embedded_small_and_without_what_came_along():
    data = BytesIO()
    chance = np.random.default_rng(5)
    image = Image.fromarray(chance.integers(0, 255, (1500, 3000, 3), dtype=np.uint8))
    exif = Image.Exif()
    exif[0x010E] = "taken at home"
    image.save(data, "PNG", exif=exif)
    picture = first(with_paper(front={**PICTURE, "repeat": "12 in"}), folder(rope=data.getvalue())).front.picture
    assert picture.media_type == "image/jpeg" and b"taken at home" not in picture.data
    assert max(read(picture.data).pixels.shape) <= 1024
    assert (picture.width, picture.height) == (992, 496)


def test_a_picture_that_lies_on_its_side_is_set_upright():
    data = BytesIO()
    exif = Image.Exif()
    exif[0x0112] = 6
    Image.fromarray(ROPE).save(data, "JPEG", exif=exif)
    front = {**PICTURE, "picture": "rope.jpg"}
    picture = first(with_paper(front=front), folder(rope=data.getvalue())).front.picture
    assert (picture.width, picture.height) == (60, 120)


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"", "not-a-picture"),
        (b"GIF89a no more", "not-a-picture"),
        (b"<svg xmlns='http://www.w3.org/2000/svg'/>", "not-a-picture"),
        (encode_jpeg(np.random.default_rng(2).integers(0, 255, (90, 90, 3), dtype=np.uint8))[:900], "picture-damaged"),
    ],
    ids=["empty", "cut-off", "svg", "truncated"],
)
def test_bytes_that_are_no_picture_are_found(data, code):
    assert found(with_paper(front=PICTURE), folder(rope=data)) == [(code, "/papers/0/front/picture")]


def test_a_huge_header_is_refused_before_it_is_decoded():
    data = BytesIO()
    Image.new("1", (6000, 6000)).save(data, "PNG")
    assert len(data.getvalue()) < 20_000
    (finding,) = read_paper_set(with_paper(front=PICTURE), "two", folder(rope=data.getvalue())).findings
    assert finding.code == "picture-too-large" and "6000 × 6000 pixels" in finding.message


def test_a_picture_too_coarse_for_its_width_is_a_warning():
    reading = read_paper_set(with_paper(front={**PICTURE, "repeat": "6 in"}), "two", folder(rope=encode_png(ROPE)))
    (finding,) = reading.findings
    assert finding.code == "picture-coarse" and finding.severity is Severity.WARNING
    assert "120 pixels" in finding.message and "20 per inch" in finding.message and reading.is_sound


def test_a_picture_of_one_pixel_is_told_as_one():
    reading = read_paper_set(with_paper(front=PICTURE), "two", folder(rope=encode_png(ROPE[:1, :1])))
    assert "has 1 pixel for its repeat" in reading.findings[0].message


@pytest.mark.parametrize(
    ("pixels", "repeat", "edges"),
    [
        (SLOPE, "2 in", "its left and right edge"),
        (SLOPE.transpose(1, 0, 2), "1 in", "its upper and lower edge"),
        (ROPE, "2 in", ""),
        (SLOPE, "304.8 mm", ""),
    ],
    ids=["across", "down", "level", "whole sheet"],
)
def test_a_joint_that_will_be_seen_is_told(pixels, repeat, edges):
    reading = read_paper_set(with_paper(front={**PICTURE, "repeat": repeat}), "two", folder(rope=encode_png(pixels)))
    joints = [finding for finding in reading.findings if finding.code == "picture-joins-show"]
    assert [f"itself: {edges} differ" in finding.message for finding in joints] == [True] * bool(edges)


def test_a_set_without_its_folder_is_sound_and_says_what_is_not_known():
    reading = read_any(with_paper(front=PICTURE))
    (finding,) = reading.findings
    assert finding.code == "picture-not-sent" and finding.severity is Severity.NOTE and reading.is_sound
    assert reading.model.papers[0].front.picture is None


def test_one_bad_picture_hides_none_of_the_others():
    def spoil(document):
        document["papers"][0]["front"] = deepcopy(PICTURE)
        document["papers"][1]["back"] = {**PICTURE, "picture": "missing.png"}

    def pictures(name):
        raise UnreadablePicture("picture-missing", "There is no such file.", "Put it there.", name=name)

    assert found(spoilt(spoil, PAPERS), pictures) == [
        ("picture-missing", "/papers/0/front/picture"),
        ("picture-missing", "/papers/1/back/picture"),
    ]


def test_the_same_document_and_pictures_read_alike():
    readings = [read_paper_set(with_paper(front=PICTURE), "two", folder(rope=encode_png(ROPE))) for _ in range(2)]
    assert readings[0].model == readings[1].model and hash(readings[0].model) == hash(readings[1].model)
    assert json.loads(readings[0].data) == readings[0].document


ODD = [None, 7, "x", [], {}, [[]], {"pattern": "picture"}, {"pattern": 7, "colours": "red"}, True]


@pytest.mark.parametrize("odd", ODD, ids=str)
@pytest.mark.parametrize("member", ["front", "back", "size", "weight", "grammage", "core", "sheets", "id", "title"])
def test_members_of_any_shape_give_findings_only(member, odd):
    reading = read_paper_set(spoilt(lambda d: d["papers"][0].update({member: odd}), PAPERS), "two", folder())
    fits = (member, odd) in [("sheets", 7), ("title", "x"), ("id", "x")]
    assert reading.is_sound == fits and all(finding.remedy for finding in reading.findings)


@pytest.mark.parametrize("odd", ODD, ids=str)
@pytest.mark.parametrize("member", ["pattern", "colours", "repeat", "directional", "picture", "texture"])
def test_members_of_a_picture_of_any_shape_give_findings_only(member, odd):
    face = {**PICTURE, member: odd}
    reading = read_paper_set(with_paper(front=face), "two", folder(rope=encode_png(ROPE)))
    fits = (member, odd) == ("directional", True)
    assert reading.is_sound == fits and all(finding.remedy for finding in reading.findings)
