"""The OpenAPI 3.1 document: what each route is, the schemas of documents as components, and examples that exist."""

import re
from collections.abc import Callable, Iterator, Sequence
from textwrap import dedent
from typing import Any

from flask import Flask, Response
from flask_smorest import Api, Blueprint

from spreadwright import __version__
from spreadwright.document import KINDS, schema
from spreadwright.rest.bodies import TEXT, document_or_pieces
from spreadwright.rest.envelopes import Problem
from spreadwright.rest.forms import JSON, Form
from spreadwright.rest.pages import HTML
from spreadwright.rest.problems import PROBLEM_JSON, problem
from spreadwright.rest.resource import Resource
from spreadwright.rest.uploads import MOST_BYTES as MOST_UPLOADED_BYTES
from spreadwright.rest.uploads import MOST_PHOTOGRAPHS, MULTIPART, PHOTO, RECIPE, uploaded

Json = dict[str, Any]
Decorator = Callable[[Any], Any]

DESCRIPTION = """Recipes for album layouts: proved, cut, placed, coloured and drawn.

Every address can be had with a suffix (`/recipes/low-tide/preview.png`) or by `Accept`. Errors are problem documents
(RFC 9457) whose `errors` carry JSON Pointers. Every GET has a strong ETag. Lists page by `Link` (RFC 8288)."""

PATH_WORDS = {
    "recipe_id": "The id of a recipe of the collection.",
    "set_id": "The id of a paper set of the collection.",
    "paper_id": "The id of a paper of the set.",
    "bench_id": "The id of a bench of the collection.",
    "kind": "A kind of document.",
    "version": "The version of the schema.",
    "suffix": "The representation.",
}
_FAILURES = {
    "BadRequest": "The query or the body is not understood.",
    "NotFound": "There is nothing of that name.",
    "NotAcceptable": "None of the representations is accepted.",
    "TooLarge": "The body is too large.",
    "UnsupportedMediaType": "The body is of another type.",
    "Unprocessable": "A document has errors, the papers do not fill the roles, or there is no plan.",
    "Failure": "Any other error.",
}
_READING = {400: "BadRequest", 404: "NotFound", 406: "NotAcceptable", 422: "Unprocessable", "default": "Failure"}
_POSTING = {**_READING, 413: "TooLarge", 415: "UnsupportedMediaType"}
_HERE = "The representation."
_TEXT = {"schema": {"type": "string"}}
_HEADERS = {
    "Content-Language": {"description": "In which language its instructions speak, if it has any.", **_TEXT},
    "ETag": {"description": "Names the bytes of the body.", **_TEXT},
    "Link": {"description": "Where to go on from here (RFC 8288).", **_TEXT},
}
_IF_NONE_MATCH = {
    "name": "If-None-Match",
    "in": "header",
    "description": "The ETag of what the client has already; the answer is 304 if it is still the same.",
    **_TEXT,
}


class OpenApi(Api):  # type: ignore[misc]
    """Fills the document, and answers every HTTP error with a problem."""

    ERROR_SCHEMA = Problem
    DEFAULT_ERROR_RESPONSE_NAME = None

    def __init__(self, app: Flask) -> None:
        options = {"info": {"description": DESCRIPTION, "license": {"name": "MIT", "identifier": "MIT"}}}
        super().__init__(
            app,
            spec_kwargs={"title": "Spreadwright", "version": __version__, "openapi_version": "3.1.0", **options},
        )

    def handle_http_exception(self, error: Any) -> Response:
        """The problem document of an error."""
        return problem(error)

    def _register_responses(self) -> None:
        for name, words in _FAILURES.items():
            content = {PROBLEM_JSON: {"schema": Problem}}
            self.spec.components.response(name, {"description": words, "content": content})


def described(blueprint: Blueprint, method: str, rule: str, name: str, resource: Resource) -> Iterator[Decorator]:
    """The decorators that describe one route: by its view's docstring, its forms, and what may go wrong."""
    summary, _, more = (resource.fetch.__doc__ or "").partition("\n")
    yield blueprint.doc(operationId=name, summary=summary, **({"description": dedent(more).strip()} if more else {}))
    headers = _HEADERS if method == "GET" else None
    for form in reversed(resource.forms):
        yield blueprint.response(200, form.shape, content_type=form.media_type, description=_HERE, headers=headers)
    if rule == "/":
        yield blueprint.response(200, {"type": "string"}, content_type=HTML, description=_HERE)
    if resource.page:
        yield blueprint.alt_response(303, description="To the page about it, for whoever prefers HTML.")
    if method == "GET":
        yield blueprint.alt_response(304, description="The client has it already: `If-None-Match` names its ETag.")
    else:
        yield blueprint.doc(requestBody=_upload_body() if resource.reads is uploaded else _document_body(resource))
    for status, failure in (_READING if method == "GET" else _POSTING).items():
        yield blueprint.alt_response(status, failure)


def component(kind: str) -> Json:
    """The reference to the schema of a kind of document."""
    return {"$ref": f"#/components/schemas/{_camel(kind)}"}


def _document_body(resource: Resource) -> Json:
    """Anything is taken, to say what is wrong with it."""
    kinds = {"anyOf": [*(component(kind) for kind in KINDS), {"type": "object"}]}
    words = "A document of any kind, with or without errors."
    content: Json = {JSON: {"schema": kinds}}
    if resource.reads is document_or_pieces:
        content[TEXT] = {"schema": {"type": "string"}, "example": "7x7 left, 3 1/2x5 *2 right"}
    return {"description": words, "required": True, "content": content}


def _upload_body() -> Json:
    binary = {"type": "string", "contentMediaType": "application/octet-stream"}
    photos = {"type": "array", "items": binary, "minItems": 1, "maxItems": MOST_PHOTOGRAPHS}
    words = f"A part for each photograph, {MOST_UPLOADED_BYTES / 1e6:.0f} MB in all; at most one with a recipe."
    shape = {"type": "object", "properties": {PHOTO: photos, RECIPE: component("recipe")}, "required": [PHOTO]}
    return {"description": words, "required": True, "content": {MULTIPART: {"schema": shape}}}


def shared_parameters(rule: str, forms: Sequence[Form], method: str) -> list[Json]:
    """The variables of a path, in words, and the condition that every GET takes."""
    parameters: list[Json] = [dict(_IF_NONE_MATCH)] if method == "GET" else []
    for name in re.findall(r"<(\w+)>", rule):
        shape: Json = {"type": "string", "minLength": 1}
        if name == "suffix":
            shape["enum"] = list(dict.fromkeys(form.suffix for form in forms))
        parameters.append(
            {"name": name, "in": "path", "required": True, "description": PATH_WORDS[name], "schema": shape}
        )
    return parameters


def bundled() -> dict[str, Json]:
    """The schema of every kind of document and of each of its definitions, as components that refer to one another."""
    components: dict[str, Json] = {}
    for kind in KINDS:
        whole = {name: part for name, part in schema(kind).items() if name not in ("$schema", "$id", "$defs")}
        components[_camel(kind)] = _repointed(whole, kind)
        for name, definition in schema(kind).get("$defs", {}).items():
            components[_camel(f"{kind}-{name}")] = _repointed(definition, kind)
    return components


def _repointed(part: Any, kind: str) -> Any:
    """With every reference pointing at a component."""
    if isinstance(part, list):
        return [_repointed(each, kind) for each in part]
    if not isinstance(part, dict):
        return part
    return {name: _target(each, kind) if name == "$ref" else _repointed(each, kind) for name, each in part.items()}


def _target(reference: str, kind: str) -> str:
    """`../recipe/1#/$defs/line` in any schema, `#/$defs/line` in the recipe's: `#/components/schemas/RecipeLine`."""
    file, _, inside = reference.partition("#")
    kind = file.split("/")[-2] if file else kind
    if inside.startswith("/$defs/"):
        return f"#/components/schemas/{_camel(kind + '-' + inside.removeprefix('/$defs/'))}"
    return f"#/components/schemas/{_camel(kind)}{inside}"


def _camel(name: str) -> str:
    return "".join(word[:1].upper() + word[1:] for word in re.split(r"[-_]", name))


def openapi_document(described: Json, examples: Json) -> Json:
    """The whole document: what the routes describe, the documents' schemas, and an example for each known parameter."""
    components = described["components"]
    document = {**described, "components": {**components, "schemas": {**components["schemas"], **bundled()}}}
    for path in document["paths"].values():
        shared = path.get("parameters", [])
        own = [each for operation in path.values() if isinstance(operation, dict) for each in operation["parameters"]]
        for parameter in (*shared, *own):
            if parameter["name"] in examples:
                parameter["example"] = examples[parameter["name"]]
    return document
