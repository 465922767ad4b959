"""Routes that write: described in OpenAPI like those that read, open to tokens only, and counted."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from flask import Response

from spreadwright.rest.openapi import PROBLEM_NAMES, shared_parameters
from spreadwright.rest.parameters import Query
from spreadwright.rest.resources import Resources

View = Callable[..., Response]
_TEXT = {"type": "string"}
_FAILURES: tuple[int | str, ...] = (400, 401, 403, 404, 429, "default")
_OF_CONDITION = (410, 412, 428)
_OF_BODY = (413, 415, 422)
TOLD = {
    "ETag": {"description": "Names the revision; send it as If-Match with the next write.", "schema": _TEXT},
    "Location": {"description": "The address of the document.", "schema": _TEXT},
}
IF_MATCH = {
    "name": "If-Match",
    "in": "header",
    "required": True,
    "description": "The ETag of the revision that is meant; 428 without it, 412 when there is a newer one.",
    "example": "*",
    "schema": _TEXT,
}
IF_NONE_MATCH = {
    "name": "If-None-Match",
    "in": "header",
    "description": "`*` makes what is not there yet, and nothing else: 412 when it is. Send it in place of If-Match.",
    "schema": _TEXT,
}
IDEMPOTENCY_KEY = {
    "name": "Idempotency-Key",
    "in": "header",
    "description": "1 to 128 characters of the client's own; the same request with the same key is done once.",
    "example": "b5a7c1f0-first-try",
    "schema": {"type": "string", "minLength": 1, "maxLength": 128, "pattern": "^[!-~]+$"},
}
SECURITY: list[dict[str, list[str]]] = [{"bearer": []}]


@dataclass(frozen=True, slots=True)
class Write:
    """What one route that writes is like.

    Attributes:
        name: Of the operation.
        answers: Status to shape and words; a status without a body has None as its shape.
        more: What there is to say beside the summary.
        body: As OpenAPI describes request bodies; None without one.
        is_conditional: Whether If-Match is needed.
        parameters: Further ones, of the header.
    """

    method: str
    rule: str
    name: str
    summary: str
    answers: Mapping[int, tuple[Any, str]]
    more: str = ""
    body: Mapping[str, Any] | None = None
    is_conditional: bool = True
    parameters: tuple[Mapping[str, Any], ...] = ()
    query: type[Query] = field(default=Query)


def write(blueprint: Resources, spec: Write, view: View) -> None:
    """Adds the route to a blueprint; the view gets the arguments of the query, then the variables of the path."""
    blueprint_parameters = [*shared_parameters(spec.rule, (), spec.method), *map(dict, spec.parameters)]
    if spec.is_conditional:
        blueprint_parameters.append({**IF_MATCH, "required": IF_NONE_MATCH not in spec.parameters})

    def answered(*found: Any, **ids: Any) -> Response:
        return view(*found, *ids.values())

    answered.__name__ = spec.name
    decorated: Any = answered
    for decorate in (*_documented(blueprint, spec), blueprint.arguments(spec.query(), location="query")):
        decorated = decorate(decorated)
    blueprint.route(spec.rule, endpoint=spec.name, methods=[spec.method], parameters=blueprint_parameters)(decorated)


def _documented(blueprint: Resources, spec: Write) -> list[Callable[[Any], Any]]:
    more = {"description": spec.more} if spec.more else {}
    body = {"requestBody": spec.body} if spec.body else {}
    found = [blueprint.doc(operationId=spec.name, summary=spec.summary, security=SECURITY, **more, **body)]
    for status, (shape, words) in spec.answers.items():
        headers = TOLD if status != 204 else None
        shaped = {} if shape is None else {"content_type": "application/json"}
        found.append(blueprint.response(status, shape, description=words, headers=headers, **shaped))
    failures = _FAILURES + (_OF_CONDITION if spec.is_conditional else ()) + (_OF_BODY if spec.body else ()) + (409,)
    found += [blueprint.alt_response(status, PROBLEM_NAMES[status]) for status in failures]
    return found
