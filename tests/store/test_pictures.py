import json
import os

import numpy as np
import pytest

from builder import PAPERS
from spreadwright.errors import UnreadablePicture
from spreadwright.images import encode_jpeg, encode_png
from spreadwright.store import Collection, pictures_beside
from spreadwright.store.pictures import MOST_BYTES

ROPE = np.zeros((40, 80, 3), dtype=np.uint8)
ROPE[:, ::2] = 200
WITH_PICTURE = {
    **PAPERS,
    "papers": [
        *PAPERS["papers"],
        {
            "id": "rope-scan",
            "title": "Rope",
            "size": ["12", "12"],
            "front": {"pattern": "picture", "picture": "rope.png", "repeat": "30 mm"},
        },
    ],
}


@pytest.fixture
def document(tmp_path):
    """A paper set as a file, with the folder of its pictures."""
    file = tmp_path / "paper-sets" / "harbour.json"
    (tmp_path / "paper-sets" / "harbour").mkdir(parents=True)
    file.write_text(json.dumps(WITH_PICTURE))
    (tmp_path / "paper-sets" / "harbour" / "rope.png").write_bytes(encode_png(ROPE))
    return file


def reading(document):
    return Collection(document.parents[1]).paper_sets["harbour"]


def test_pictures_lie_in_the_folder_of_the_sets_name(document):
    front = reading(document).model.papers[-1].front
    assert reading(document).findings == ()
    assert front.picture.name == "rope.png" and (front.picture.width, front.picture.height) == (80, 40)
    assert front.colours == ("#929292",)  # half black, half grey, mixed as light


def test_a_set_keeps_its_pictures_under_a_name_that_was_made_fit_for_addresses(document):
    document.rename(document.with_name("My Harbour.json"))
    document.with_suffix("").rename(document.with_name("My Harbour"))
    found = Collection(document.parents[1])
    assert found.paper_sets["my-harbour"].is_sound
    assert found.pictures("my-harbour")("rope.png") == encode_png(ROPE)


@pytest.mark.parametrize(
    "name", ["../harbour.json", "/etc/hostname", "sub/rope.png", "..", ".hidden.png", "", "a\0.png"]
)
def test_no_name_leads_out_of_the_folder(document, name):
    with pytest.raises(UnreadablePicture) as refusal:
        pictures_beside(document)(name)
    assert refusal.value.code == "picture-outside-folder"


def test_a_link_out_of_the_folder_is_not_followed(document):
    outside = document.parent / "secret.png"
    outside.write_bytes(encode_png(ROPE))
    (document.with_suffix("") / "linked.png").symlink_to(outside)
    with pytest.raises(UnreadablePicture) as refusal:
        pictures_beside(document)("linked.png")
    assert refusal.value.code == "picture-outside-folder"


def test_a_folder_that_is_a_link_is_outside_too(document):
    elsewhere = document.parents[1] / "elsewhere"
    document.with_suffix("").rename(elsewhere)
    document.with_suffix("").symlink_to(elsewhere)
    (finding,) = reading(document).findings
    assert finding.code == "picture-outside-folder"


def test_what_never_ends_is_no_picture(document):
    os.mkfifo(document.with_suffix("") / "pipe.png")
    with pytest.raises(UnreadablePicture, match="no file"):
        pictures_beside(document)("pipe.png")


def test_a_missing_picture_is_named_with_the_nearest(document):
    (document.with_suffix("") / "rope.png").rename(document.with_suffix("") / "ropes.png")
    (finding,) = reading(document).findings
    assert (finding.code, finding.where) == ("picture-missing", "/papers/4/front/picture")
    assert "rope.png" in finding.message and finding.remedy == "Did you mean “ropes.png”?"


def test_no_more_is_read_than_a_picture_may_have(document):
    with (document.with_suffix("") / "rope.png").open("ab") as file:
        file.truncate(MOST_BYTES + 1)
    (finding,) = reading(document).findings
    assert finding.code == "picture-too-large" and "16 MB" in finding.message


def test_a_cut_off_picture_is_a_finding(document):
    noisy = np.random.default_rng(1).integers(0, 255, (300, 300, 3), dtype=np.uint8)
    (document.with_suffix("") / "rope.png").write_bytes(encode_jpeg(noisy)[:5000])
    (finding,) = reading(document).findings
    assert (finding.code, finding.where) == ("picture-damaged", "/papers/4/front/picture")


def test_shipped_pictures_are_small_and_all_are_used():
    shipped = Collection()
    for set_id, papers in shipped.paper_sets.items():
        folder = shipped.folder / "paper-sets" / set_id
        faces = [face for paper in papers.model.papers for face in (paper.front, paper.back)]
        files = sorted(folder.iterdir()) if folder.is_dir() else []
        assert {file.name for file in files} == {face.picture.name for face in faces if face.picture}
        assert all(file.stat().st_size < 60_000 for file in files)
