import json
import re

import pytest
from jsonschema import Draft202012Validator, ValidationError
from openapi_spec_validator import validate
from referencing import Registry
from referencing.jsonschema import DRAFT202012

from builder import SOUND, sound, spoilt

VALUES = {"recipe_id": "window-seat", "set_id": "two", "paper_id": "fog", "bench_id": "bench-inch"}


@pytest.fixture(scope="session")
def described(app):
    return app.test_client().get("/openapi.json").json


def fits(described, instance, shape):
    """Raises where an answer is not of the shape that the document promises."""
    registry = Registry().with_resource("urn:described", DRAFT202012.create_resource(described))
    pointed = json.loads(json.dumps(shape).replace('"#/', '"urn:described#/'))
    Draft202012Validator(pointed, registry=registry).validate(instance)


def operations(described):
    for path, item in described["paths"].items():
        for method, operation in item.items():
            if method != "parameters":
                yield path, method, {**operation, "parameters": item.get("parameters", []) + operation["parameters"]}


def examples(operation):
    return {each["name"]: each["example"] for each in operation["parameters"] if "example" in each}


def test_document_is_openapi_3_1(described):
    assert described["openapi"].startswith("3.1")
    validate(described)


def test_every_operation_is_described_in_full(described):
    names = [operation["operationId"] for _, _, operation in operations(described)]
    assert len(names) == len(set(names)) and all(re.fullmatch(r"\w+", name) for name in names)
    for _, _, operation in operations(described):
        assert operation["summary"] and operation["tags"] and operation["responses"]["default"]
        assert all(each["description"] for each in operation["parameters"])
        known = {"suffix", "If-None-Match"}
        assert all("example" in each for each in operation["parameters"] if each["name"] not in known)


def parts(part):
    yield part
    for each in part.values() if isinstance(part, dict) else part if isinstance(part, list) else ():
        yield from parts(each)


def test_clients_can_be_generated_from_it(described):
    """Every answer has a shape, every shape a name of its own, and none needs what generators have no words for."""
    responses = described["components"]["responses"]
    for path, _, operation in operations(described):
        for status, response in operation["responses"].items():
            told = responses[response["$ref"].rpartition("/")[2]] if "$ref" in response else response
            assert bool(told.get("content")) == (status not in ("204", "303", "304")), (path, status)
            assert all(each["schema"] for each in told.get("content", {}).values()), (path, status)
    shapes = described["components"]["schemas"]
    called = [re.sub(r"\W", "", shape.get("title", name)).lower() for name, shape in shapes.items()]
    assert len(called) == len(set(called)) and all(re.fullmatch(r"[A-Z]\w+", name) for name in shapes)
    for part in parts(shapes):
        if isinstance(part, dict):
            assert not isinstance(part.get("items", {}), bool)
            assert "type" in part or not isinstance(part.get("const"), bool)
            assert not any(isinstance(each, list) for each in part.get("enum", ()))
            assert re.fullmatch(r"#/components/schemas/\w+", part.get("$ref", "#/components/schemas/x"))


def test_every_route_is_described(app, described):
    routes = {re.sub(r"<(\w+)>", r"{\1}", rule.rule) for rule in app.url_map.iter_rules()}
    assert routes == set(described["paths"])


def test_every_get_answers_as_described_at_its_examples(client, described):
    asked = 0
    for path, method, operation in operations(described):
        if method != "get" or "{job_id}" in path or "/pictures/" in path:  # of these the collection has none
            continue
        given = examples(operation)
        suffixes = next((p["schema"]["enum"] for p in operation["parameters"] if p["name"] == "suffix"), [""])
        for suffix in suffixes:
            where = path.format(**{**given, **VALUES, "suffix": suffix})
            query = {p["name"]: given[p["name"]] for p in operation["parameters"] if p["in"] == "query"}
            response = client.get(where, query_string=query)
            assert response.status_code == 200, where
            contents = operation["responses"]["200"]["content"]
            content = contents[response.mimetype if response.mimetype in contents else response.content_type]
            if response.is_json:
                fits(described, response.json, content["schema"])
            asked += 1
    assert asked > 40


def test_reports_and_problems_are_of_the_shapes_described(client, described):
    shapes = {name: {"$ref": f"#/components/schemas/{name}"} for name in ("Report", "Problem")}
    broken = spoilt(lambda recipe: recipe["placements"].pop())
    fits(described, client.post("/check", data=broken).json, shapes["Report"])
    problems = ["/nowhere", "/recipes/nobody", "/recipes?x=1", "/recipes/broken/cuts"]
    for response in [*(client.get(path) for path in problems), client.post("/check", data=b"{")]:
        fits(described, response.json, shapes["Problem"])
    fits(described, client.get("/recipes", headers={"Accept": "a/b"}).json, shapes["Problem"])


def test_documents_are_components_as_strict_as_the_schemas(described, folder):
    recipe, papers = ({"$ref": f"#/components/schemas/{name}"} for name in ("Recipe", "PaperSet"))
    fits(described, SOUND, recipe)
    fits(described, json.loads((folder / "paper-sets" / "two.json").read_bytes()), papers)
    wrong = {**SOUND, "sheets": [{"role": "plain", "size": ["12", "12"], "spare": True, "piece": "panel"}]}
    with pytest.raises(ValidationError):
        fits(described, wrong, recipe)


def test_the_example_query_of_every_parameter_works_for_a_check(client, described):
    operation = next(op for path, _, op in operations(described) if path == "/check")
    response = client.post("/check", data=sound(), query_string=examples(operation))
    assert response.status_code == 200 and response.json["fine"]
