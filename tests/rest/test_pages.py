import re
from base64 import b64encode
from hashlib import sha256
from html import unescape

import pytest

from builder import sound
from spreadwright.rest import create_app
from spreadwright.store import Collection

BROWSER = {"Accept": "text/html,application/xhtml+xml,application/xml;q=0.9,image/webp,*/*;q=0.8"}


def test_home_is_the_gallery_unless_json_is_asked_for(site):
    assert site.get("/").content_type == "text/html; charset=utf-8"
    assert site.get("/", headers=BROWSER).mimetype == "text/html"
    assert site.get("/", headers={"Accept": "application/json"}).json["title"] == "Spreadwright"


@pytest.mark.parametrize(("path", "page"), [("/recipes/window-seat", "/recipes/window-seat/"), ("/recipes", "/")])
def test_a_browser_is_sent_to_the_page(site, path, page):
    response = site.get(path, headers=BROWSER)
    assert (response.status_code, response.headers["Location"]) == (303, page)
    assert response.headers["Vary"] == "Accept"
    assert site.get(page, headers=BROWSER).status_code == 200


def test_a_program_gets_the_document_at_the_same_address(site):
    assert site.get("/recipes/window-seat").mimetype == "application/json"


def test_a_recipe_that_came_after_the_gallery_has_a_page_at_the_address_that_feeds_tell(site):
    sent = site.get("/recipes/window-two", headers={"Accept": "text/html"})
    assert (sent.status_code, sent.headers["Location"]) == (303, "/recipes/window-two/")
    page = site.get("/recipes/window-two/")
    assert page.mimetype == "text/html" and '<h1 lang="en">Window seat</h1>' in page.text
    assert site.get("/recipes/window-two/", headers={"If-None-Match": page.headers["ETag"]}).status_code == 304
    addresses = re.findall(r'(?:href|src)="(/recipes/window-two[^"]*|/feed[^"]*|/oembed[^"]*)"', page.text)
    assert len(addresses) > 10
    for each in addresses:
        assert site.get(unescape(each)).status_code in (200, 202), each
    assert '<link rel="canonical" href="http://localhost/recipes/window-two/">' in page.text


def test_the_page_of_a_recipe_with_errors_offers_no_prints(site):
    page = site.get("/recipes/broken/").text
    assert "errors" in page and "booklet.pdf" not in page and "/recipes/broken.json" in page


def test_the_gallery_shows_no_recipe_that_was_taken_back(folder, gallery):
    app = create_app(Collection(folder), gallery)
    publishing, site = app.extensions["spreadwright"].store.publishing, app.test_client()
    there = ("/recipes/window-seat/", "/recipes/window-seat/index.html")
    for verb, status in ((publishing.withdraw, 404), (publishing.publish, 200)):
        verb("recipes", "window-seat", "Ann", expected=None)
        assert [site.get(path, headers=BROWSER).status_code for path in there] == [status] * 2
        assert site.get("/about/").status_code == 200


def test_there_is_no_page_about_what_nobody_may_see(site, site_app):
    store = site_app.extensions["spreadwright"].store
    made = store.documents.create("recipes", sound(), "Ann", name="kept-to-myself").document
    for path in ("/recipes/kept-to-myself/", "/recipes/never-was/"):
        response = site.get(path)
        assert (response.status_code, response.headers["Location"]) == (308, path[:-1])
        assert site.get(path[:-1], headers=BROWSER).status_code == 404
    store.documents.delete("recipes", made.id, "Ann", expected=None)


def test_pages_lead_to_feeds_and_to_how_they_are_embedded(site):
    for path in ("/about/", "/recipes/window-seat/", "/recipes/window-two/"):
        links = site.get(path).headers.getlist("Link")
        assert '</feed.atom>; rel="alternate"; type="application/atom+xml"' in links
        embedding = [each[1:].split(">")[0] for each in links if "oembed" in each]
        assert len(embedding) == (path != "/about/")
        assert all(site.get(each).json["title"] == "Window seat" for each in embedding)
    assert "Link" not in site.get("/style.css").headers


def test_redirects_stay_below_the_path_of_a_proxy(site):
    response = site.get("/recipes", headers=BROWSER, environ_overrides={"SCRIPT_NAME": "/workshop"})
    assert response.headers["Location"] == "/workshop/"


def test_files_have_the_types_that_we_give_them(site):
    assert site.get("/recipes/window-seat/index.html").content_type == "text/html; charset=utf-8"
    assert site.get("/style.css").content_type == "text/css; charset=utf-8"
    assert site.get("/mark.svg").headers["Content-Security-Policy"].endswith("sandbox")


@pytest.mark.parametrize(
    ("path", "target"), [("/about", "/about/"), ("/benches/", "/benches"), ("/health/", "/health")]
)
def test_what_differs_by_a_slash_is_found(site, path, target):
    response = site.get(path)
    assert (response.status_code, response.headers["Location"]) == (308, target)
    assert site.get(target).status_code == 200


def test_files_have_etags(site):
    etag = site.get("/style.css").headers["ETag"]
    assert site.get("/style.css", headers={"If-None-Match": etag}).status_code == 304


@pytest.mark.parametrize("path", ["/", "/recipes/window-seat/", "/mark.svg"])
def test_what_a_browser_has_keeps_the_policy_that_it_came_with(site, path):
    came = site.get(path, headers=BROWSER)
    again = site.get(path, headers={**BROWSER, "If-None-Match": came.headers["ETag"]})
    assert came.headers["Content-Security-Policy"]
    assert again.status_code == 304 and "Content-Security-Policy" not in again.headers


def test_files_are_only_read(site):
    response = site.post("/style.css")
    assert response.status_code == 405 and "GET" in response.headers["Allow"]


def test_pages_load_from_their_own_address_alone(site):
    policy = site.get("/").headers["Content-Security-Policy"]
    own = b64encode(sha256(b"var here = 1").digest()).decode()
    assert "default-src 'self'" in policy and f"script-src 'self' 'sha256-{own}'" in policy


def test_an_unknown_page_is_a_page_to_people_and_a_problem_to_programs(site):
    person, program = site.get("/nowhere", headers=BROWSER), site.get("/nowhere")
    assert (person.status_code, person.mimetype) == (404, "text/html")
    assert (program.status_code, program.mimetype) == (404, "application/problem+json")


@pytest.mark.parametrize(
    "path",
    [
        "/../secret.txt",
        "/%2e%2e/secret.txt",
        "/recipes/../../secret.txt",
        "/recipes/%2e%2e/%2e%2e/secret.txt",
        "//etc/passwd",
        "/%2fetc/passwd",
        "/..%5csecret.txt",
        "/way-out.txt",
        "/.hidden",
        "/%00",
        "/style.css%00.html",
        "/" + "a" * 5000,
    ],
)
def test_no_path_leads_out_of_the_gallery(site, path):
    response = site.get(path)
    assert response.status_code == 404 and b"nobody's business" not in response.data


@pytest.mark.parametrize("path", ["//elsewhere.example", "//recipes/", "//about", "/\\about", "///about"])
def test_no_redirect_leads_to_another_host(site, path):
    response = site.get("/", environ_overrides={"PATH_INFO": path, "REQUEST_URI": path}, headers=BROWSER)
    target = response.headers.get("Location", "/")
    assert target.startswith("/") and target[1:2] not in ("/", "\\")


def test_pages_may_show_photographs_from_the_device_and_keep_a_worker(site):
    policy = site.get("/").headers["Content-Security-Policy"]
    assert "img-src 'self' data: blob:" in policy
    assert "worker-src 'self'" in policy and "manifest-src 'self'" in policy
    assert "unsafe-inline" not in policy.split("script-src")[1].split(";")[0]


def test_the_worker_may_fetch_from_its_own_address_alone(site):
    worker, other = site.get("/sw.js"), site.get("/app.js")
    assert worker.content_type == "text/javascript; charset=utf-8"
    assert worker.headers["Content-Security-Policy"] == "default-src 'self'"
    assert "default-src 'none'" in other.headers["Content-Security-Policy"]
    assert "no-cache" in worker.headers["Cache-Control"]
