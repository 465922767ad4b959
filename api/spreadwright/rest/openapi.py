"""The OpenAPI 3.1 document: what each route is, the schemas of documents as components, and examples that exist."""

import re
from collections.abc import Callable, Iterator, Sequence
from textwrap import dedent
from typing import Any

from flask import Flask, Response
from flask_smorest import Api, Blueprint

from spreadwright import __version__
from spreadwright.document import KINDS
from spreadwright.rest.bodies import TEXT, document_or_pieces
from spreadwright.rest.components import bundled, component
from spreadwright.rest.envelopes import Problem
from spreadwright.rest.examples import DOCUMENT
from spreadwright.rest.forms import HTML, JSON, Form
from spreadwright.rest.job_envelopes import JobState
from spreadwright.rest.preferences import MOST_WAIT_S
from spreadwright.rest.problems import PROBLEM_JSON, problem
from spreadwright.rest.resource import Resource
from spreadwright.rest.uploads import MOST_BYTES as MOST_UPLOADED_BYTES
from spreadwright.rest.uploads import MOST_PHOTOGRAPHS, MULTIPART, PHOTO, RECIPE, uploaded

Json = dict[str, Any]
Headers = dict[tuple[str, str], list[Json]]
"""Path and method: the parameters that it takes in headers."""
Decorator = Callable[[Any], Any]

DESCRIPTION = """Recipes for album layouts: proved, cut, placed, coloured and drawn.

Every address can be had with a suffix (`/recipes/low-tide/preview.png`) or by `Accept`. Errors are problem documents
(RFC 9457) whose `errors` carry JSON Pointers. Every GET has a strong ETag. Lists page by `Link` (RFC 8288)."""

PATH_WORDS = {
    "recipe_id": "The id of a recipe of the collection.",
    "set_id": "The id of a paper set of the collection.",
    "paper_id": "The id of a paper of the set.",
    "bench_id": "The id of a bench of the collection.",
    "digest": "The SHA-256 of the content, hexadecimal.",
    "number": "The number of a revision, from 1.",
    "picture": "The name of a picture, such as `rope.png`.",
    "job_id": "The id of a job, as `Location` named it.",
    "code": "The last part of the `type` of a problem.",
    "kind": "A kind of document.",
    "version": "The version of the schema.",
    "suffix": "The representation.",
}
_FAILURES = {
    "BadRequest": "The query or the body is not understood.",
    "Unauthorized": "It needs a token, or the token opens nothing.",
    "Forbidden": "The token does not open this.",
    "NotFound": "There is nothing of that name.",
    "NotAcceptable": "None of the representations is accepted.",
    "Conflict": "It is in another state, or the name is taken.",
    "Gone": "It was deleted.",
    "PreconditionFailed": "Somebody else changed it since.",
    "TooLarge": "The body is too large.",
    "UnsupportedMediaType": "The body is of another type.",
    "Unprocessable": "A document has errors, the papers do not fill the roles, or there is no plan.",
    "PreconditionRequired": "Say with `If-Match` which revision is meant.",
    "TooMany": "Enough is under way, or was asked for; `Retry-After` says when to ask again.",
    "Busy": "The service has too much to do; `Retry-After` says when to ask again.",
    "Failure": "Any other error.",
}
PROBLEM_NAMES: dict[int | str, str] = {
    400: "BadRequest",
    401: "Unauthorized",
    403: "Forbidden",
    404: "NotFound",
    406: "NotAcceptable",
    409: "Conflict",
    410: "Gone",
    412: "PreconditionFailed",
    413: "TooLarge",
    415: "UnsupportedMediaType",
    422: "Unprocessable",
    428: "PreconditionRequired",
    429: "TooMany",
    500: "Failure",
    503: "Busy",
    "default": "Failure",
}
"""The component that describes the problems of a status."""
_READING = (400, 404, 406, 422, "default")
_POSTING = (*_READING, 413, 415)
_LATER = (429, 503)
_HERE = "The representation."
_TEXT = {"schema": {"type": "string"}}
_HEADERS = {
    "Content-Language": {"description": "In which language its instructions speak, if it has any.", **_TEXT},
    "ETag": {"description": "Names the bytes of the body.", **_TEXT},
    "Link": {"description": "Where to go on from here (RFC 8288).", **_TEXT},
}
RETRY_AFTER = {"Retry-After": {"description": "In how many seconds to ask again.", "schema": {"type": "integer"}}}
_OF_ACCEPTED = {"Location": {"description": "The job.", **_TEXT}, **RETRY_AFTER}
_PREFER = {
    "name": "Prefer",
    "in": "header",
    "description": f"`wait=N` waits N seconds for what takes long, at most {MOST_WAIT_S}; `respond-async` makes it a "
    "job in any case (RFC 7240).",
    "example": f"wait={MOST_WAIT_S}",
    **_TEXT,
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
        scheme = {"type": "http", "scheme": "bearer", "description": "Made with `spreadwright token create`."}
        self.spec.components.security_scheme("bearer", scheme)
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
    if resource.expected_s:
        words = "It takes long: a job, whose `links.result` appears when it is done."
        yield blueprint.alt_response(202, schema=JobState, content_type=JSON, description=words, headers=_OF_ACCEPTED)
        yield from (blueprint.alt_response(status, PROBLEM_NAMES[status]) for status in _LATER)
    for status in _READING if method == "GET" else _POSTING:
        yield blueprint.alt_response(status, PROBLEM_NAMES[status])


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


def shared_parameters(rule: str, forms: Sequence[Form], method: str, *, is_long: bool = False) -> list[Json]:
    """The variables of a path, in words, the condition that every GET takes, and how long a client would wait."""
    parameters: list[Json] = [dict(_IF_NONE_MATCH)] if method == "GET" else []
    parameters += [dict(_PREFER)] if is_long else []
    for name in re.findall(r"<(\w+)>", rule):
        shape: Json = {"type": "string", "minLength": 1}
        if name == "suffix":
            shape["enum"] = list(dict.fromkeys(form.suffix for form in forms))
        parameters.append(
            {"name": name, "in": "path", "required": True, "description": PATH_WORDS[name], "schema": shape}
        )
    return parameters


def openapi_document(described: Json, headers: Headers, examples: Json) -> Json:
    """The whole document: what the routes describe, the documents' schemas, and an example for each known parameter."""
    components = {
        **described["components"],
        "schemas": {**described["components"]["schemas"], **bundled()},
    }
    for (path, method), parameters in headers.items():
        described["paths"][path][method]["parameters"][:0] = parameters
    for path in described["paths"].values():
        operations = [each for each in path.values() if isinstance(each, dict)]
        for parameter in (*path.get("parameters", []), *(each for own in operations for each in own["parameters"])):
            if parameter["name"] in examples:
                parameter["example"] = examples[parameter["name"]]
        for operation in operations:
            _add_example(operation, examples)
            _add_links(operation)
    return {**described, "components": components}


def _add_example(operation: Json, examples: Json) -> None:
    """A whole document that can be sent."""
    content = operation.get("requestBody", {}).get("content", {}).get(JSON)
    kind = "pieces" if operation["operationId"] == "plan_pieces" else "recipe"
    if content and "example" not in content and DOCUMENT + kind in examples:
        content["example"] = examples[DOCUMENT + kind]


def _add_links(operation: Json) -> None:
    """Where an answer leads on to."""
    for status, leading in _LEADS.get(operation["operationId"], {}).items():
        response = operation["responses"].get(status)
        if response is not None:
            response["links"] = {
                name: {"operationId": name, "parameters": {f"path.{variable}": pointer}}
                for name, (variable, pointer) in leading.items()
            }
    accepted = operation["responses"].get("202")
    if accepted is not None:
        accepted["links"] = {
            name: {"operationId": name, "parameters": {"path.job_id": "$response.body#/id"}}
            for name in ("job", "cancel_job", "job_result")
        }


def _lead(variable: str, pointer: str, *names: str) -> dict[str, tuple[str, str]]:
    return dict.fromkeys(names, (variable, f"$response.body#/{pointer}"))


_LEADS: dict[str, dict[str, dict[str, tuple[str, str]]]] = {
    "recipes": {
        "200": _lead("recipe_id", "recipes/0/id", "recipe", "cuts", "placement", "photos", "pieces", "preview")
    },
    "paper_sets": {"200": _lead("set_id", "paper_sets/0/id", "paper_set")},
    "benches": {"200": _lead("bench_id", "benches/0/id", "bench")},
    "problem_kinds": {"200": _lead("code", "problems/0/code", "problem_kind")},
    "schemas": {"200": _lead("kind", "schemas/0/kind", "current_schema")},
}
"""Operation, status: the operations that it leads to, with what they take from the answer."""
