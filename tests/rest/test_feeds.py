from io import BytesIO
from xml.etree.ElementTree import fromstring

import pytest
from PIL import Image

ATOM = "{http://www.w3.org/2005/Atom}"


def test_atom_feed_leads_to_the_page_of_each_recipe(client):
    response = client.get("/feed.atom")
    assert response.mimetype == "application/atom+xml"
    feed = fromstring(response.data)
    entries = {each.findtext(f"{ATOM}id"): each.findtext(f"{ATOM}title") for each in feed.iter(f"{ATOM}entry")}
    assert entries["http://localhost/recipes/window-seat/"] == "Window seat"
    for name in ("id", "title", "updated"):
        assert feed.findtext(ATOM + name)


def test_json_feed_says_what_atom_says(client):
    response = client.get("/feed.json")
    assert response.mimetype == "application/feed+json" and response.json["version"].endswith("/1.1")
    ids = {each.findtext(f"{ATOM}id") for each in fromstring(client.get("/feed").data).iter(f"{ATOM}entry")}
    assert {each["id"] for each in response.json["items"]} == ids


def test_sitemap_lists_every_page(client):
    text = client.get("/sitemap.xml").text
    assert all(f"<loc>http://localhost/recipes/{name}/</loc>" in text for name in ("window-seat", "window-two"))


@pytest.mark.parametrize("most", [(400, 100), (300, 900)])
def test_embedding_gives_a_picture_of_the_size_that_it_says(client, most):
    found = client.get(f"/oembed?url=http://localhost/recipes/window-seat/&maxwidth={most[0]}&maxheight={most[1]}").json
    picture = Image.open(BytesIO(client.get(found["url"]).data))
    assert found["type"] == "photo" and picture.size == (found["width"], found["height"])
    assert all(side <= bound for side, bound in zip(picture.size, most, strict=True))


@pytest.mark.parametrize(
    "url",
    [
        "http://elsewhere.example/recipes/window-seat",
        "http://localhost/recipes",
        "http://localhost/recipes/no",
        "http://[",
        "http://localhost/recipes/%00/",
        "javascript:alert(1)",
    ],
)
def test_embedding_of_anything_else_is_refused(client, url):
    assert client.get("/oembed", query_string={"url": url}).status_code == 404


def test_feeds_are_304_to_whoever_has_them(client):
    etag = client.get("/feed.atom").headers["ETag"]
    assert client.get("/feed.atom", headers={"If-None-Match": etag}).status_code == 304


@pytest.mark.parametrize("host", ["a b", 'a"><script>', "a/b"])
@pytest.mark.parametrize("path", ["/feed.atom", "/feed.json", "/sitemap.xml", "/oembed?url=http:/recipes/window-seat/"])
def test_whoever_names_no_host_is_told_no_address(client, path, host):
    assert client.get(path, headers={"Host": host}).status_code == 400
