"""When a person asks: the pages of the gallery, beside the API that programs ask."""

from flask import Response, current_app, request
from werkzeug.exceptions import MethodNotAllowed, NotFound

from spreadwright.rest.forms import HTML, JSON
from spreadwright.rest.memory import Body
from spreadwright.rest.negotiation import preferred
from spreadwright.rest.problems import PROBLEM_JSON, problem
from spreadwright.rest.replies import redirect, reply
from spreadwright.rest.service import service
from spreadwright.rest.site import PAGE, media_type
from spreadwright.rest.stand_ins import discovery, is_taken_back, stand_in

_READING = ("GET", "HEAD")


def page() -> Response | None:
    """The file of the gallery that the request names; None where a route of the API claims the path.

    At `/` both do: whoever accepts HTML gets the gallery. A recipe that came after the gallery has a page here.
    """
    if not _is_home() and not isinstance(request.routing_exception, NotFound):
        return None
    file = service().site.file(request.path)
    if file is None:
        return (stand_in() if request.method in _READING else None) or _to_neighbour()
    if request.method not in _READING:
        raise MethodNotAllowed(_READING)
    if is_taken_back(request.path):
        raise NotFound
    kind = media_type(file)
    response = reply(Body(file.read_bytes()), kind, links=discovery(request.path) if kind == PAGE else ())
    if _is_home():
        response.vary.add("Accept")
    return response


def _is_home() -> bool:
    is_read = request.path == "/" and request.method in _READING
    return is_read and preferred([HTML, JSON], list(request.accept_mimetypes)) == HTML


def _to_neighbour() -> Response | None:
    """To what differs by its last slash alone: the page of a folder, or a resource of the API."""
    path = request.path
    if service().site.file(f"{path}/"):
        return redirect(f"{path}/", 308)
    return redirect(path[:-1], 308) if path[1:].endswith("/") and _is_resource(path[:-1]) else None


def _is_resource(path: str) -> bool:
    routes = current_app.create_url_adapter(request)
    return routes is not None and routes.test(path, "GET")


def nothing_here(reason: NotFound) -> Response:
    """The gallery's own page for an unknown address, to whoever prefers pages; else a problem document."""
    file = service().site.file("/404.html")
    if file is None or preferred([PROBLEM_JSON, HTML], list(request.accept_mimetypes)) != HTML:
        return problem(reason)
    return Response(file.read_bytes(), 404, content_type=media_type(file))
