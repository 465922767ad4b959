import re
from html.parser import HTMLParser

import pytest

from rest.test_problems import refused
from spreadwright.rest.explained import EXPLAINED
from spreadwright.rest.problem_pages import OF_HTTP
from spreadwright.rest.problems import KINDS
from spreadwright.rest.worker import STATUSES


class Links(HTMLParser):
    """What a page loads and where it leads."""

    def __init__(self, page):
        super().__init__()
        self.links, self.ids, self.loads = [], set(), []
        self.feed(page)

    def handle_starttag(self, tag, attributes):
        found = dict(attributes)
        self.ids.add(found.get("id"))
        if tag == "a":
            self.links.append(found["href"])
        self.loads += [found[name] for name in ("src", "href") if name in found and tag in ("script", "link", "img")]


@pytest.fixture(scope="session")
def page(app):
    return app.test_client().get("/reference", headers={"Accept": "text/html"}).text


def test_reference_has_every_operation_and_every_shape(page, client):
    described = client.get("/openapi.json").json
    names = {
        each["operationId"] for item in described["paths"].values() for each in item.values() if "responses" in each
    }
    shapes = {f"shape-{name}" for name in described["components"]["schemas"]}
    assert names | shapes <= Links(page).ids


def test_reference_loads_nothing_from_elsewhere(page):
    found = Links(page)
    assert found.loads and all(each.startswith("/assets/") for each in found.loads)
    assert all(each.startswith(("/", "#")) for each in found.links)


def test_every_link_of_the_reference_leads_somewhere(page, client):
    found = Links(page)
    assert [each for each in found.links if each.startswith("#") and each[1:] not in found.ids] == []
    inner = {each for each in found.links if each.startswith("/") and each != "/"}
    assert len(inner) > 20
    assert {each for each in inner if client.get(each).status_code not in (200, 404, 422)} == set()


def test_every_kind_of_problem_is_explained(client):
    assert sorted(EXPLAINED) == sorted(kind.name for kind in KINDS.values())
    assert set(STATUSES.values()) <= set(OF_HTTP)
    for each in client.get("/problems").json["problems"]:
        told = client.get(f"/problems/{each['code']}").json
        assert told == each and told["means"].endswith(".") and told["remedy"].endswith(".")


def test_people_get_a_page_and_programs_json(client):
    answer = client.get("/problems/no-plan", headers={"Accept": "text/html,*/*;q=0.8"})
    assert answer.mimetype == "text/html" and "It is proved" in answer.text
    assert client.get("/problems/no-plan").json["status"] == 422
    refused(client.get("/problems/no-paln"), 404, "unknown-name")


def test_problem_leads_to_its_page(client):
    answer = client.get("/recipes/nobody")
    path = re.search(r'<([^>]*)>; rel="help"', answer.headers["Link"])[1]
    assert client.get(path).json["type"] == answer.json["type"]
