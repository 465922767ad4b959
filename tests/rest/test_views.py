import json
from io import BytesIO

import pypdfium2
import pytest
from PIL import Image

from builder import SOUND, sound, spoilt
from spreadwright.document import canonical, schema_bytes
from spreadwright.drawing.raster import NARROWEST_PX, WIDEST_PX
from spreadwright.rest.links import page_links
from spreadwright.rest.queries import FURTHEST


def linked(response, relation):
    """The address that a Link header gives for a relation."""
    links = (part for part in response.headers.getlist("Link") if f'rel="{relation}"' in part)
    return next((part.split(">")[0][1:] for part in links), None)


def test_recipes_are_listed_with_figures_and_links(client):
    found = client.get("/recipes").json
    assert found["count"] == 3
    seat = found["recipes"][1]
    assert (seat["id"], seat["pages"], seat["sheets"], seat["photos"]) == ("window-seat", 2, 4, 3)
    assert all(client.get(target).status_code == 200 for target in seat["links"].values())


def test_pages_of_a_list_join_without_gap_or_overlap(client):
    seen, target = [], "/recipes?limit=2"
    while target:
        response = client.get(target)
        seen += [each["id"] for each in response.json["recipes"]]
        target = linked(response, "next")
    assert seen == ["broken", "window-seat", "window-two"]


def test_a_document_comes_back_in_canonical_form(client, folder):
    for path in ("/recipes/window-seat", "/recipes/window-seat.json"):
        response = client.get(path)
        assert response.data == canonical(json.loads((folder / "window-seat.json").read_bytes()))
        assert '</schema/recipe/1>; rel="describedby"' in response.headers.getlist("Link")


def test_preview_comes_as_svg_png_and_pdf(client):
    assert client.get("/recipes/window-seat/preview").content_type == "image/svg+xml"
    assert client.get("/recipes/window-seat/preview.svg").data.startswith(b"<")
    image = Image.open(BytesIO(client.get("/recipes/window-seat/preview.png?width=300").data))
    assert (image.format, image.width) == ("PNG", 300)
    assert len(pypdfium2.PdfDocument(client.get("/recipes/window-seat/preview.pdf").data)) == 1


@pytest.mark.parametrize("width", [NARROWEST_PX, 1199, WIDEST_PX])
def test_png_is_as_wide_as_asked_for(client, width):
    response = client.get(f"/paper-sets/two/swatches/fog.png?width={width}")
    assert Image.open(BytesIO(response.data)).width == width


@pytest.mark.parametrize("width", [NARROWEST_PX - 1, -5, WIDEST_PX + 1, 99_999_999])
@pytest.mark.parametrize("path", ["/recipes/window-seat/preview.png", "/paper-sets/two/swatches/fog.png"])
def test_width_that_cannot_be_drawn_is_refused_with_the_range(client, path, width):
    response = client.get(f"{path}?width={width}")
    assert response.status_code == 400 and response.json["errors"][0]["parameter"] == "width"
    assert f"from {NARROWEST_PX} to {WIDEST_PX}" in response.json["errors"][0]["detail"]


def test_accept_decides_where_no_suffix_does(client):
    path = "/recipes/window-seat/cuts"
    assert client.get(path).content_type == "application/json"
    assert client.get(path, headers={"Accept": "image/png;q=0.4, image/svg+xml;q=0.5"}).mimetype == "image/svg+xml"
    assert client.get(path, headers={"Accept": "application/pdf"}).mimetype == "application/pdf"
    assert set(client.get(path).vary) == {"Accept", "Accept-Language"}
    assert client.get(path + ".png", headers={"Accept": "application/pdf"}).mimetype == "image/png"


@pytest.mark.parametrize(("bench", "unit"), [("bench-inch", "in"), ("bench-metric", "mm")])
def test_cuts_speak_the_unit_of_the_bench(client, bench, unit):
    found = client.get(f"/recipes/window-seat/cuts?bench={bench}").json
    assert found["bench"]["unit"] == unit and found["steps"][0]["reading"]["text"].endswith(unit)


def test_a_picture_of_cuts_shows_one_sheet_and_the_pdf_all(client):
    path = "/recipes/window-seat/cuts"
    first_cut = client.get(path).json["steps"][0]["sheet"]
    assert first_cut == 3
    assert client.get(f"{path}.svg").data == client.get(f"{path}.svg?sheet={first_cut}").data
    assert client.get(f"{path}.svg").data != client.get(f"{path}.svg?sheet=4").data
    assert len(pypdfium2.PdfDocument(client.get(f"{path}.pdf").data)) == 4


def test_placement_has_a_step_for_every_piece(client):
    steps = client.get("/recipes/window-seat/placement").json["steps"]
    assert len(steps) == len(SOUND["placements"])
    assert client.get("/recipes/window-seat/placement.svg").data.startswith(b"<")


def test_colourways_lead_to_their_previews(client):
    response = client.get("/recipes/window-seat/colourways/all?set=two&limit=3")
    found = response.json
    assert len(found["colourways"]) == 3 < found["count"]
    assert any('rel="next"' in part and "set=two" in part for part in response.headers.getlist("Link"))
    previews = {client.get(each["links"]["preview"]).data for each in found["colourways"]}
    assert len(previews) == 3


def test_last_colourways_are_reached_by_links(client):
    path = "/recipes/window-seat/colourways/all"
    count = client.get(path).json["count"]
    seen, target = [], f"{path}?limit=100"
    while target:
        response = client.get(target)
        assert response.status_code == 200
        seen += [each["id"] for each in response.json["colourways"]]
        target = linked(response, "next")
    assert len(seen) == len(set(seen)) == count


def test_no_link_leads_further_than_may_be_asked_for(client):
    with client.application.test_request_context("/recipes"):
        links = {start: "".join(page_links(start, 100, 10**6)) for start in (FURTHEST - 100, FURTHEST - 99)}
    assert f'start={FURTHEST}>; rel="next"' in links[FURTHEST - 100] and "next" not in links[FURTHEST - 99]


def test_swatches_have_two_sides(client):
    papers = client.get("/paper-sets").json["paper_sets"][0]["papers"]
    assert client.get(papers[3]["links"]["swatch"]).content_type == "image/svg+xml"
    assert client.get("/paper-sets/two/swatches/reed").data != client.get("/paper-sets/two/swatches/reed~back").data


def test_benches_are_listed_and_served(client):
    for bench in client.get("/benches").json["benches"]:
        assert client.get(bench["links"]["self"]).json["title"] == bench["title"]


def test_check_reports_a_sound_recipe_as_fine(client):
    response = client.post("/check?set=two", data=sound(), content_type="application/json")
    assert response.status_code == 200 and response.json["fine"]


def test_check_reports_errors_in_content_with_200(client):
    data = spoilt(lambda recipe: recipe["sheets"][1]["columns"][0].update(widht="7"))
    found = client.post("/check", data=data, content_type="application/json").json
    assert not found["fine"]
    assert any(f["code"] == "unknown-member" and "width" in f["remedy"] for f in found["findings"])


@pytest.mark.parametrize("kind", ["recipe", "paper-set", "bench", "pieces"])
def test_schemas_stand_where_their_ids_say(client, kind):
    own = json.loads(schema_bytes(kind))["$id"].split(".example")[1]
    for path in (own, f"/schema/{kind}", f"/schema/{kind}.schema.json"):
        response = client.get(path)
        assert response.content_type == "application/schema+json" and response.data == schema_bytes(kind)


def test_schema_list_leads_to_every_schema(client):
    found = client.get("/schema").json["schemas"]
    assert [client.get(each["links"]["self"]).json["title"] for each in found] == [each["title"] for each in found]


def test_home_and_health_answer(client):
    assert all(client.get(target).status_code in (200, 405) for target in client.get("/").json["links"].values())
    assert client.get("/health").json["status"] == "ok"


def test_links_stay_below_the_path_of_a_proxy(client):
    mounted = {"SCRIPT_NAME": "/workshop"}
    for recipe in client.get("/recipes", environ_overrides=mounted).json["recipes"]:
        assert all(target.startswith("/workshop/recipes/") for target in recipe["links"].values())
    assert client.get("/recipes").json["recipes"][0]["links"]["self"] == "/recipes/broken"
    assert client.get("/openapi.json", environ_overrides=mounted).json["servers"] == [{"url": "/workshop"}]
