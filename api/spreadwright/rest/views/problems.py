"""What went wrong, kind by kind."""

from typing import Any

from flask import request

from spreadwright.rest.forms import Arguments, html_form, json_form
from spreadwright.rest.links import address
from spreadwright.rest.problem_envelopes import ProblemKind, ProblemKindList
from spreadwright.rest.problem_pages import kind_named, kinds
from spreadwright.rest.reference import page
from spreadwright.rest.resources import Documents, Resources

blueprint = Resources("problems", __name__, description=__doc__)


def _list(_: Arguments) -> dict[str, Any]:
    return {"problems": [_linked(each) for each in kinds().values()]}


def _one(_: Arguments, code: str) -> dict[str, Any]:
    return _linked(kind_named(code))


def _linked(kind: dict[str, Any]) -> dict[str, Any]:
    return {**kind, "links": {"self": address("problems.problem_kind", code=kind["code"])}}


def _list_page(_: Arguments) -> bytes:
    return page("problems", request.script_root, problems=kinds().values())


def _page(_: Arguments, code: str) -> bytes:
    return page("problem", request.script_root, problem=kind_named(code))


@blueprint.resource("/problems", json_form(_list, ProblemKindList), html_form(_list_page))
def problem_kinds(_: Arguments) -> Documents:
    """The kinds of problems that a `type` may name."""
    return ()


@blueprint.resource("/problems/<code>", json_form(_one, ProblemKind), html_form(_page))
def problem_kind(_: Arguments, code: str) -> Documents:
    """What one kind of problem means, and what helps."""
    return (kind_named(code)["code"],)
