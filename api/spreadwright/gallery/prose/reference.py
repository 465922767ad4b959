"""The reference of the document formats, read from their schemas: every member, what it means, an example."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from spreadwright.document import KINDS, schema

Schema = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Member:
    """One member of an object."""

    name: str
    meaning: str
    form: str
    example: str
    default: str
    is_required: bool


@dataclass(frozen=True, slots=True)
class Section:
    """One kind of object and its members; `id` for links within the page."""

    id: str
    title: str
    meaning: str
    members: tuple[Member, ...]


@dataclass(frozen=True, slots=True)
class Chapter:
    """One kind of document: the whole of it first, then the objects that it holds."""

    kind: str
    title: str
    meaning: str
    sections: tuple[Section, ...]


def chapters() -> tuple[Chapter, ...]:
    """Every kind of document, in the order of the schemas."""
    return tuple(_chapter(kind) for kind in KINDS)


def _chapter(kind: str) -> Chapter:
    root = schema(kind)
    sections = [_section(kind, "document", root, root), *_sections(kind, root)]
    return Chapter(kind, root["title"], root["description"], tuple(sections))


def _sections(kind: str, root: Schema) -> Iterator[Section]:
    inner = {**root["properties"], **root.get("$defs", {})}
    for name, part in inner.items():
        if "properties" in part:
            yield _section(kind, name, part, root)


def _section(kind: str, name: str, part: Schema, root: Schema) -> Section:
    required = part.get("required", [])
    members = tuple(
        _member(key, _resolved(value, root), key in required, root) for key, value in part["properties"].items()
    )
    title = "The document" if part is root else part["title"]
    return Section(f"{kind}-{name}", title, "" if part is root else part["description"], members)


def _member(name: str, part: Schema, is_required: bool, root: Schema) -> Member:
    example = part.get("examples", [""])[0]
    return Member(
        name,
        part.get("description", ""),
        _form(part, root),
        json.dumps(example, ensure_ascii=False) if example != "" else "",
        json.dumps(part["default"], ensure_ascii=False) if "default" in part else "",
        is_required,
    )


def _resolved(part: Schema, root: Schema) -> Schema:
    """The part with what it refers to merged in; what stands beside a reference wins."""
    if "$ref" not in part:
        return part
    document, _, pointer = part["$ref"].partition("#")
    home = schema(document.removeprefix("../").split("/")[0]) if document else root
    target: Any = home
    for step in pointer.strip("/").split("/"):
        target = target[step]
    beside = {key: value for key, value in part.items() if key != "$ref"}
    return {**_resolved(target, home), **beside}


def _form(part: Schema, root: Schema) -> str:
    """In words, what a value looks like."""
    if "enum" in part:
        return "One of " + ", ".join(json.dumps(value, ensure_ascii=False) for value in part["enum"])
    if "const" in part:
        return "Always " + json.dumps(part["const"], ensure_ascii=False)
    if part.get("type") == "array":
        return "A list"
    words = {"string": "Text", "integer": "A whole number", "boolean": "True or false", "object": "An object"}
    return words.get(str(part.get("type")), "A value")
