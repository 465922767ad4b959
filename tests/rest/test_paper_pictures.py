import json

import numpy as np
import pytest

from builder import PAPERS
from spreadwright.images import encode_png, read
from spreadwright.rest import create_app
from spreadwright.store import Collection

ROPE = {
    "id": "rope-scan",
    "title": "Rope",
    "size": ["12", "12"],
    "front": {"pattern": "picture", "picture": "rope.png", "repeat": "15 mm"},
    "weight": "65 lb cover",
    "sheets": 3,
}
DOCUMENT = {**PAPERS, "papers": [*PAPERS["papers"], ROPE]}


@pytest.fixture(scope="module")
def client(tmp_path_factory):
    """A service whose one paper set brings a red picture along."""
    folder = tmp_path_factory.mktemp("collection") / "paper-sets"
    (folder / "two").mkdir(parents=True)
    (folder / "two.json").write_text(json.dumps(DOCUMENT))
    red = np.zeros((40, 40, 3), dtype=np.uint8)
    red[..., 0] = 220
    (folder / "two" / "rope.png").write_bytes(encode_png(red))
    return create_app(Collection(folder.parent)).test_client()


def test_a_swatch_shows_the_picture_of_its_paper(client):
    svg = client.get("/paper-sets/two/swatches/rope-scan.svg")
    assert svg.data.count(b"data:image/png;base64,") == 1
    assert "img-src data:" in svg.headers["Content-Security-Policy"]
    pixels = read(client.get("/paper-sets/two/swatches/rope-scan.png?width=200").data).pixels
    assert tuple(pixels[80, 80]) == (220, 0, 0)


def test_the_list_tells_what_papers_are(client):
    (papers,) = client.get("/paper-sets").json["paper_sets"]
    told = papers["papers"][-1]
    assert (told["front"], told["back"], told["core"], told["sheets"]) == ("printed", "plain", "white", 3)
    assert (told["grammage_g_per_m2"], told["sheet_g"]) == (175.77, 16.33)
    assert papers["papers"][0]["sheets"] is None


def test_a_posted_set_comes_without_its_pictures(client):
    report = client.post("/check", json=DOCUMENT).json
    assert report["fine"] and [f["code"] for f in report["findings"]] == ["picture-not-sent"]
    assert report["findings"][0]["where"] == "/papers/4/front/picture"


@pytest.mark.parametrize("name", ["../two.json", "/etc/passwd", "..\\two.png", "two/rope.png"])
def test_a_posted_set_reaches_no_file_of_the_server(client, name):
    reaching = {**DOCUMENT, "papers": [{**ROPE, "front": {**ROPE["front"], "picture": name}}]}
    report = client.post("/check", json=reaching).json
    assert not report["fine"]
    assert [(f["code"], f["where"]) for f in report["findings"]] == [
        ("picture-outside-folder", "/papers/0/front/picture")
    ]
