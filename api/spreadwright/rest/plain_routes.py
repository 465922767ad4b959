"""Routes whose view answers by itself, since what it answers with is no form of a document."""

import inspect
from collections.abc import Callable, Sequence

from flask import Response

from spreadwright.rest.openapi import PROBLEM_NAMES, Decorator, shared_parameters
from spreadwright.rest.parameters import Query
from spreadwright.rest.resources import Resources

_FAILURES: tuple[int | str, ...] = (400, "default")


def serve_plain(
    blueprint: Resources,
    method: str,
    rule: str,
    view: Callable[..., Response],
    *answers: Decorator,
    failures: Sequence[int],
    is_kept: bool = False,
) -> None:
    """Adds one route, named after its view and described by its docstring.

    Args:
        blueprint: Where it is added.
        method: Of HTTP.
        rule: The path, with its variables.
        view: What answers; it takes the arguments of the query, then the variables by name.
        answers: What describes the answers.
        failures: The statuses of problems, beside those that any request may run into.
        is_kept: Whether clients keep the answer, and ask with its ETag whether it is still the same.
    """
    name, told = view.__name__, inspect.getdoc(view) or ""
    summary, _, description = told.partition("\n")
    described = blueprint.doc(operationId=name, summary=summary, description=description.strip())
    problems = (blueprint.alt_response(each, PROBLEM_NAMES[each]) for each in (*_FAILURES, *failures))
    same = blueprint.alt_response(304, description="The client has it already: `If-None-Match` names its ETag.")
    for decorate in (described, *problems, *answers, *([same] if is_kept else ())):
        view = decorate(view)
    view = blueprint.arguments(Query(), location="query")(view)
    parameters = shared_parameters(rule, (), "GET" if is_kept else "DELETE")
    blueprint.route(rule, endpoint=name, methods=[method], parameters=parameters)(view)
