"""The documents' own schemas as components of the OpenAPI document, in words that generators of clients know."""

import re
from typing import Any

from spreadwright.document import KINDS, schema

Json = dict[str, Any]


def component(kind: str) -> Json:
    """The reference to the schema of a kind of document."""
    return {"$ref": f"#/components/schemas/{_camel(kind)}"}


def bundled() -> dict[str, Json]:
    """The schema of every kind of document and of each of its definitions, as components that refer to one another."""
    components: dict[str, Json] = {}
    for kind in KINDS:
        whole = {name: part for name, part in schema(kind).items() if name not in ("$schema", "$id", "$defs")}
        components[_camel(kind)] = _repointed(whole, kind)
        for name, definition in schema(kind).get("$defs", {}).items():
            components[_camel(f"{kind}-{name}")] = _repointed(_untitled(definition), kind)
    return components


def _untitled(definition: Json) -> Json:
    """A component is called by its name; generators of clients would take the title in its place, and titles meet."""
    return {name: part for name, part in definition.items() if name != "title"}


def _repointed(part: Any, kind: str) -> Any:
    """With every reference pointing at a component."""
    if isinstance(part, list):
        return [_repointed(each, kind) for each in part]
    if not isinstance(part, dict):
        return part
    if isinstance(part.get("enum", [""])[0], list):
        part = {**{name: each for name, each in part.items() if name != "enum"}, "oneOf": _rows(part["enum"])}
    if isinstance(part.get("const"), bool):
        part = {"type": "boolean", **part}
    return {name: _target(each, kind) if name == "$ref" else _repointed(each, kind) for name, each in part.items()}


def _rows(rows: list[list[str]]) -> list[Json]:
    """What an enumeration of arrays says, in words that generators of clients know."""
    return [
        {
            "type": "array",
            "prefixItems": [{"type": "string", "enum": [each]} for each in row],
            "minItems": len(row),
            "maxItems": len(row),
        }
        for row in rows
    ]


def _target(reference: str, kind: str) -> str:
    """`../recipe/1#/$defs/line` in any schema, `#/$defs/line` in the recipe's: `#/components/schemas/RecipeLine`."""
    file, _, inside = reference.partition("#")
    kind = file.split("/")[-2] if file else kind
    if inside.startswith("/$defs/"):
        return f"#/components/schemas/{_camel(kind + '-' + inside.removeprefix('/$defs/'))}"
    return f"#/components/schemas/{_camel(kind)}{inside}"


def _camel(name: str) -> str:
    return "".join(word[:1].upper() + word[1:] for word in re.split(r"[-_]", name))
