"""Where to begin, how the service is, and what it offers."""

from typing import Any

from flask import current_app, request

from spreadwright import __version__
from spreadwright.rest.envelopes import Health, Home
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address
from spreadwright.rest.lists import MOST_COUNTED
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import service
from spreadwright.store.wanted import Wanted

blueprint = Resources("service", __name__, description=__doc__)


def _home(_: Arguments) -> dict[str, Any]:
    lists = ("recipes.recipes", "paper-sets.paper_sets", "benches.benches", "schema.schemas")
    views = (*lists, "check.check_document", "plan.plan_pieces")
    links = {view.split(".")[0]: address(view) for view in views}
    more = {"service-desc": address("service.openapi_as", suffix="json"), "health": address("service.health")}
    return {"title": "Spreadwright", "version": __version__, "links": {**links, **more}}


def _health(_: Arguments, recipes: int, paper_sets: int, benches: int) -> dict[str, Any]:
    counts = {"recipes": recipes, "paper_sets": paper_sets, "benches": benches}
    return {"status": "ok", "version": __version__, **counts}


def _openapi(_: Arguments, root: str) -> dict[str, Any]:
    described: dict[str, Any] = current_app.extensions["openapi"]
    return {**described, "servers": [{"url": root or "/"}]}


@blueprint.resource("/", json_form(_home, Home, is_work=False))
def home(_: Arguments) -> Documents:
    """Where to begin; whoever accepts HTML gets the gallery here, where there is one."""
    return ()


@blueprint.resource("/health", json_form(_health, Health, is_work=False), cache=UNKEPT)
def health(_: Arguments) -> Documents:
    """That the service answers, and how much it serves."""
    count = service().store.listing.count
    return tuple(count(Wanted(kind), most=MOST_COUNTED) for kind in ("recipes", "paper-sets", "benches"))


@blueprint.resource("/openapi", json_form(_openapi, {"type": "object"}, is_work=False))
def openapi(_: Arguments) -> Documents:
    """This service, described as OpenAPI 3.1."""
    return (request.script_root,)
