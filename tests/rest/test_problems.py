import pytest

from builder import sound
from spreadwright.rest import create_app
from spreadwright.store import Collection


def refused(response, status, name):
    """The problem document of a response, after what all of them have in common was checked."""
    problem = response.json
    assert response.status_code == problem["status"] == status
    assert response.content_type == "application/problem+json"
    assert problem["type"].endswith(f"/problems/{name}")
    assert problem["title"] and problem["instance"].startswith("/")
    assert response.headers["Cache-Control"] == "no-store"
    return problem


@pytest.mark.parametrize(
    ("path", "hint"),
    [
        ("/recipes/window-saet", "window-seat"),
        ("/recipes/window-saet/cuts.svg", "window-seat"),
        ("/recipes/window-seat/cuts?bench=bench-inhc", "bench-inch"),
        ("/recipes/window-seat/preview?set=tow", "two"),
        ("/recipes/window-seat/preview?colourway=two.fog.slate.roep", "rope"),
        ("/recipes/window-seat/cuts.svg?sheet=9", "4"),
        ("/recipes/window-seat/cuts.jsn", "json"),
        ("/paper-sets/tow", "two"),
        ("/paper-sets/two/swatches/fgo", "fog"),
        ("/benches/bench-metrc", "bench-metric"),
        ("/schema/recpe", "recipe"),
        ("/schema/recipe/2", "1"),
    ],
)
def test_unknown_name_comes_with_the_nearest_one(client, path, hint):
    problem = refused(client.get(path), 404, "unknown-name")
    assert f"{hint}" in problem["errors"][0]["remedy"]


@pytest.mark.parametrize(
    ("path", "near"), [("/recips", "/recipes"), ("/opnapi.json", "/openapi.json"), ("/paper-set", "/paper-sets")]
)
def test_unknown_path_comes_with_one_that_is_near_and_answers(client, path, near):
    problem = refused(client.get(path), 404, "not-found")
    assert f"Did you mean “{near}”?" in problem["detail"] and problem["errors"] == []
    assert client.get(near).status_code == 200


@pytest.mark.parametrize("path", ["/nope", "/x", "/opening", "/" + "a" * 5000])
def test_path_that_is_near_nothing_comes_with_where_all_are_listed(client, path):
    detail = refused(client.get(path), 404, "not-found")["detail"]
    assert "Did you mean" not in detail and "“/openapi.json”" in detail


def test_unknown_path_is_unknown_to_every_method(client):
    refused(client.post("/recips"), 404, "not-found")


@pytest.mark.parametrize("method", ["put", "post", "patch", "delete", "trace"])
def test_another_method_is_told_which_ones_there_are(client, method):
    response = getattr(client, method)("/recipes/window-seat/cuts")
    refused(response, 405, "method-not-allowed")
    assert set(response.headers["Allow"].split(", ")) == {"GET", "HEAD", "OPTIONS"}


def test_unacceptable_is_told_what_exists(client):
    response = client.get("/recipes/window-seat/cuts", headers={"Accept": "text/html, image/*;q=0"})
    problem = refused(response, 406, "not-acceptable")
    assert problem["available"] == ["application/json", "image/svg+xml", "image/png", "application/pdf"]


@pytest.mark.parametrize(
    ("query", "code", "remedy"),
    [
        ("widht=3", "unknown-parameter", "“width”"),
        ("sheet=two", "wrong-parameter", "number of the sheet"),
        ("sheet=0", "wrong-parameter", "number of the sheet"),
        ("sheet=1_0", "wrong-parameter", "number of the sheet"),
        ("sheet=" + "9" * 5000, "wrong-parameter", "number of the sheet"),
        ("width=1.5", "wrong-parameter", "Width of a PNG"),
        ("bench=", "wrong-parameter", "id of the bench"),
        ("bench=a&bench=b", "parameter-twice", "one of them"),
    ],
)
def test_bad_query_names_the_parameter(client, query, code, remedy):
    problem = refused(client.get(f"/recipes/window-seat/cuts?{query}"), 400, "bad-query")
    assert [each["code"] for each in problem["errors"]] == [code]
    assert remedy in problem["errors"][0]["remedy"] and problem["errors"][0]["parameter"] == query.split("=")[0]


def test_all_that_is_wrong_with_a_query_is_said_at_once(client):
    problem = refused(client.get("/recipes?limit=0&start=-1&strat=2"), 400, "bad-query")
    assert {each["parameter"] for each in problem["errors"]} == {"limit", "start", "strat"}


@pytest.mark.parametrize("view", ["preview", "cuts", "placement", "colourways", "colourways/all"])
def test_a_recipe_with_errors_is_refused_with_its_findings(client, view):
    problem = refused(client.get(f"/recipes/broken/{view}"), 422, "invalid-document")
    assert {"code", "severity", "pointer", "detail", "remedy"} == set(problem["errors"][0])
    assert client.get("/recipes/broken").status_code == 200


def test_a_fault_of_ours_is_logged_and_kept_to_ourselves(folder, caplog):
    app = create_app(Collection(folder))

    @app.get("/fault")
    def fault():
        raise RuntimeError("the combination is 4711")

    response = app.test_client().get("/fault")
    problem = refused(response, 500, "internal")
    assert "4711" not in response.text and "detail" not in problem and "Traceback" not in response.text
    assert "4711" in caplog.text


def test_recipe_that_cannot_be_read_hides_no_other(folder):
    (folder / "torn.json").write_bytes(sound()[:100])
    client = create_app(Collection(folder)).test_client()
    for rest in ("", "/cuts", "/preview"):
        problem = refused(client.get(f"/recipes/torn{rest}"), 422, "invalid-document")
        assert [each["code"] for each in problem["errors"]] == ["unreadable"]
    assert client.get("/recipes/window-seat/cuts").status_code == 200
    assert {each["id"] for each in client.get("/recipes").json["recipes"]} >= {"torn", "window-seat"}


def test_a_collection_without_papers_says_so(tmp_path):
    (tmp_path / "window-seat.json").write_bytes(sound())
    client = create_app(Collection(tmp_path)).test_client()
    refused(client.get("/recipes/window-seat/preview"), 404, "unknown-name")
    refused(client.get("/recipes/window-seat/colourways"), 404, "unknown-name")


@pytest.mark.parametrize("path", ["/jobs/none", f"/contents/{'0' * 64}", f"/pictures/{'0' * 64}"])
def test_what_has_names_that_are_nobodys_business_is_not_said_to_have_none(client, path):
    problem = refused(client.get(path), 404, "unknown-name")
    assert problem["detail"].endswith("”.") and problem["errors"][0]["remedy"] == ""
