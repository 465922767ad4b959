"""An OpenAPI document in the order in which people read it: groups of operations, then the shapes exchanged."""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import quote, urlencode

Json = Mapping[str, Any]
_METHODS = ("get", "post", "put", "patch", "delete")
_MOST_EXAMPLE = 80
_OTHERS = "other"
_EVERYWHERE = "If-None-Match"
"""Told once, at the head of the page."""
_STEPS = 3
"""Of a reference to a whole component; a longer one points into it."""


@dataclass(frozen=True, slots=True)
class Line:
    """A parameter, or a member of a shape; `link` is the component that it refers to."""

    name: str
    place: str
    form: str
    link: str
    meaning: str
    example: str
    is_required: bool


@dataclass(frozen=True, slots=True)
class Answer:
    """What may come back: its status, its media types with their components, and what it means."""

    status: str
    meaning: str
    types: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Operation:
    """One method of one address."""

    id: str
    method: str
    path: str
    summary: str
    description: str
    parameters: tuple[Line, ...]
    body: tuple[tuple[str, str], ...]
    answers: tuple[Answer, ...]
    example: str


@dataclass(frozen=True, slots=True)
class Group:
    """The operations of one tag."""

    id: str
    meaning: str
    operations: tuple[Operation, ...]


@dataclass(frozen=True, slots=True)
class Shape:
    """One component."""

    name: str
    meaning: str
    form: str
    members: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class Outline:
    """The whole of it."""

    groups: tuple[Group, ...]
    shapes: tuple[Shape, ...]


def outline(document: Json) -> Outline:
    """The parts of an OpenAPI document."""
    operations = list(_operations(document))
    groups = tuple(
        Group(tag["name"], tag.get("description", ""), tuple(each for tags, each in operations if tag["name"] in tags))
        for tag in document.get("tags", ())
    )
    shapes = document["components"]["schemas"]
    return Outline(groups, tuple(_shape(name, shapes[name]) for name in sorted(shapes)))


def _operations(document: Json) -> Iterator[tuple[list[str], Operation]]:
    for path, item in document["paths"].items():
        for method in _METHODS:
            if method in item:
                operation = item[method]
                shared = [*item.get("parameters", ()), *operation.get("parameters", ())]
                yield operation.get("tags", []), _operation(document, path, method, operation, shared)


def _operation(document: Json, path: str, method: str, operation: Json, shared: list[Json]) -> Operation:
    parameters = [_resolved(each, document) for each in shared]
    body = _resolved(operation.get("requestBody", {}), document)
    answers = (_answer(status, _resolved(each, document)) for status, each in sorted(operation["responses"].items()))
    return Operation(
        operation["operationId"],
        method.upper(),
        path,
        operation.get("summary", ""),
        operation.get("description", ""),
        tuple(_parameter(each) for each in parameters if each["name"] != _EVERYWHERE),
        _types(body),
        tuple(answers),
        _example(path, parameters) if method == "get" else "",
    )


def _resolved(part: Json, document: Json) -> Json:
    if "$ref" not in part:
        return part
    found: Any = document
    for step in part["$ref"].removeprefix("#/").split("/"):
        found = found[step]
    return found  # type: ignore[no-any-return]


def _parameter(each: Json) -> Line:
    shape = each.get("schema", {})
    example = _shown(each["example"]) if "example" in each else ""
    meaning = each.get("description", "")
    return Line(each["name"], each["in"], _form(shape), _link(shape), meaning, example, each.get("required", False))


def _answer(status: str, response: Json) -> Answer:
    return Answer(_OTHERS if status.lower() == "default" else status, response.get("description", ""), _types(response))


def _types(part: Json) -> tuple[tuple[str, str], ...]:
    return tuple((kind, _link(each.get("schema", {}))) for kind, each in part.get("content", {}).items())


def _example(path: str, parameters: list[Json]) -> str:
    """An address that can be tried; empty where a part of the path has no example."""
    needed = [each for each in parameters if each["in"] == "path"]
    if any("example" not in each for each in needed if each["name"] != "suffix"):
        return ""
    for each in needed:
        value = each.get("example", each.get("schema", {}).get("enum", [""])[0])
        path = path.replace(f"{{{each['name']}}}", quote(str(value), safe="~"))
    asked = {each["name"]: each["example"] for each in parameters if each["in"] == "query" and each.get("required")}
    return path + (f"?{urlencode(asked)}" if asked else "")


def _shape(name: str, shape: Json) -> Shape:
    required = shape.get("required", ())
    members = tuple(_member(key, each, key in required) for key, each in shape.get("properties", {}).items())
    return Shape(name, shape.get("description", shape.get("title", "")), _form(shape), members)


def _member(name: str, shape: Any, is_required: bool) -> Line:
    shape = shape if isinstance(shape, Mapping) else {}
    examples = [*shape.get("examples", ()), *([shape["example"]] if "example" in shape else ())]
    example = _shown(examples[0]) if examples else ""
    return Line(name, "", _form(shape), _link(shape), shape.get("description", ""), example, is_required)


def _shown(value: Any) -> str:
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= _MOST_EXAMPLE else ""


def _link(shape: Json) -> str:
    """The component that a shape is, or holds."""
    for each in (shape, shape.get("items", {}), shape.get("additionalProperties", {})):
        if isinstance(each, Mapping) and each.get("$ref", "").count("/") == _STEPS:
            return str(each["$ref"]).rpartition("/")[2]
    return ""


def _form(shape: Json) -> str:
    """In words, what a value looks like."""
    if "enum" in shape:
        return "one of " + ", ".join(str(each) for each in shape["enum"])
    if "const" in shape:
        return f"always {shape['const']}"
    kinds = shape.get("type", "")
    words = " or ".join(kinds) if isinstance(kinds, list) else str(kinds)
    bounds = [shape.get(name) for name in ("minimum", "maximum")]
    if None not in bounds:
        words += f", {bounds[0]} to {bounds[1]}"
    if "default" in shape:
        words += f"; {shape['default']} when left out"
    return words.replace("array", "list")
