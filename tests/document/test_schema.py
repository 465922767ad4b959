import json
from collections.abc import Iterator
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from spreadwright.document import KINDS, read_any, schema, schema_bytes
from spreadwright.document.schema import schema_findings
from spreadwright.errors import UnknownName


def subschemas(node: Any, where: str = "#") -> Iterator[tuple[str, dict[str, Any]]]:
    """Every member of a closed object and every definition."""
    for name, child in (node.get("properties") or {}).items():
        if child != {"not": {}}:
            yield f"{where}/properties/{name}", child
            yield from subschemas(child, f"{where}/properties/{name}")
    for name, child in (node.get("$defs") or {}).items():
        yield f"{where}/$defs/{name}", child
        yield from subschemas(child, f"{where}/$defs/{name}")
    if isinstance(node.get("items"), dict):
        yield from subschemas(node["items"], f"{where}/items")


@pytest.mark.parametrize("kind", KINDS)
def test_schema_is_valid_and_carries_its_version(kind):
    Draft202012Validator.check_schema(schema(kind))
    assert schema(kind)["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema(kind)["$id"].endswith(f"/schema/{kind}/1")
    assert json.loads(schema_bytes(kind)) == schema(kind)


@pytest.mark.parametrize("kind", KINDS)
def test_every_member_has_title_description_and_examples(kind):
    for where, sub in subschemas(schema(kind)):
        target = {**_target(sub), **sub}
        assert target.get("title") and target.get("description"), where
        assert target.get("examples"), where


def _target(sub: dict[str, Any]) -> dict[str, Any]:
    """What a reference leads to."""
    name = sub.get("$ref", "").split("/")[-1]
    for kind in KINDS:
        found = schema(kind).get("$defs", {}).get(name) or schema(kind)["properties"].get(name)
        if "$ref" in sub and found:
            return {**_target(found), **found}
    return {}


@pytest.mark.parametrize("kind", KINDS)
def test_every_object_is_closed(kind):
    for where, sub in [("#", schema(kind)), *subschemas(schema(kind))]:
        if sub.get("type") == "object":
            assert "additionalProperties" in sub and sub["additionalProperties"] is not True, where


@pytest.mark.parametrize("kind", KINDS)
def test_examples_of_the_schema_are_sound(kind):
    for example in schema(kind)["examples"]:
        reading = read_any(json.dumps(example).encode())
        assert (reading.kind, reading.findings) == (kind, ())


def test_unknown_kind_names_the_nearest():
    with pytest.raises(UnknownName, match="“recipe”"):
        schema_bytes("recipes")


@pytest.mark.parametrize(
    ("colours", "told"),
    [([], "has 0 items; at least 1 is needed"), (["#2f4858"] * 7, "has 7 items; at most 6 are allowed")],
)
def test_a_list_that_is_too_short_or_too_long_is_counted(colours, told):
    document = {**schema("paper-set")["examples"][0]}
    document["papers"] = [{**document["papers"][0], "front": {"pattern": "stripe", "colours": colours}}]
    assert told in schema_findings(document, "paper-set")[0].message


def test_one_side_of_a_size_is_told_as_one():
    document = {**schema("recipe")["examples"][0], "spread": {"pages": ["page"], "size": ["12"]}}
    assert "has 1 item; at least 2 are needed" in schema_findings(document, "recipe")[0].message
