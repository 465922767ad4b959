from hashlib import sha256

import pytest

PATHS = [
    "/",
    "/health",
    "/openapi.json",
    "/recipes",
    "/recipes/window-seat",
    "/recipes/window-seat/preview.svg",
    "/recipes/window-seat/preview.png?width=64",
    "/recipes/window-seat/cuts",
    "/recipes/window-seat/placement",
    "/recipes/window-seat/colourways",
    "/recipes/window-seat/colourways/all",
    "/paper-sets/two",
    "/benches/bench-inch",
    "/schema/recipe/1",
]

DOCUMENTS = ("/recipes/window-seat", "/paper-sets/two", "/benches/bench-inch")
"""Their ETags name the revision, too."""


@pytest.mark.parametrize("path", PATHS)
def test_etag_is_strong_and_spares_the_body(client, path):
    first = client.get(path)
    digest = sha256(first.data).hexdigest()
    assert first.headers["ETag"] == (f'"1-{digest[:16]}"' if path in DOCUMENTS else f'"{digest}"')
    again = client.get(path, headers={"If-None-Match": first.headers["ETag"]})
    assert (again.status_code, again.data) == (304, b"")
    assert again.headers["ETag"] == first.headers["ETag"]
    assert again.headers["Cache-Control"] == first.headers["Cache-Control"]


def test_another_etag_gets_the_body(client):
    response = client.get("/recipes/window-seat", headers={"If-None-Match": '"stale", W/"older"'})
    assert response.status_code == 200 and response.data


def test_a_list_of_etags_and_a_star_are_understood(client):
    etag = client.get("/recipes/window-seat").headers["ETag"]
    for condition in (f'"x", W/{etag}', "*"):
        assert client.get("/recipes/window-seat", headers={"If-None-Match": condition}).status_code == 304


@pytest.mark.parametrize("path", PATHS)
def test_head_is_get_without_the_body(client, path):
    get, head = client.get(path), client.head(path)
    assert head.data == b"" and head.status_code == 200
    for name in ("Content-Type", "Content-Length", "ETag", "Cache-Control"):
        assert head.headers[name] == get.headers[name]


def test_options_names_the_methods_to_browsers_of_other_sites(client):
    response = client.options("/check", headers={"Origin": "https://elsewhere.example"})
    assert (response.status_code, response.data) == (204, b"")
    assert response.headers["Access-Control-Allow-Origin"] == "*"
    assert set(response.headers["Allow"].split(", ")) == {"OPTIONS", "POST"}
    assert "Content-Type" in response.headers["Access-Control-Allow-Headers"]


@pytest.mark.parametrize("path", [*PATHS, "/nowhere", "/recipes/nobody"])
def test_everything_may_be_read_and_nothing_sniffed(client, path):
    headers = client.get(path).headers
    assert headers["Access-Control-Allow-Origin"] == "*"
    assert {"ETag", "Link", "Location"} <= set(headers["Access-Control-Expose-Headers"].split(", "))
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Content-Security-Policy"].startswith("default-src 'none'")


def test_pictures_can_run_nothing(client):
    policy = client.get("/recipes/window-seat/preview.svg").headers["Content-Security-Policy"]
    assert policy == "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"


def test_every_resource_names_the_description_of_the_service(client):
    assert any('rel="service-desc"' in part for part in client.get("/recipes").headers.getlist("Link"))


def test_same_request_gives_same_bytes_without_memory(folder):
    from spreadwright.rest import create_app
    from spreadwright.store import Collection

    paths = ["/recipes/window-seat/preview.svg", "/recipes/window-seat/cuts.pdf", "/openapi.json"]
    clients = [create_app(Collection(folder)).test_client() for _ in range(2)]
    assert [clients[0].get(path).data for path in paths] == [clients[1].get(path).data for path in paths]
