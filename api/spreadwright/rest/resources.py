"""How a view becomes a resource: its routes, its query, its forms by suffix or Accept, and its place in OpenAPI.

A view returns the documents that it found; each form makes bytes of them. So a view never learns how it is shown, and
what was made lately is found again by the documents themselves.
"""

from collections.abc import Callable, Hashable, Iterable, Sequence

from flask import Response, request
from flask_smorest import Blueprint

from spreadwright.errors import UnknownName
from spreadwright.rest.bodies import document_bytes
from spreadwright.rest.forms import Arguments, Form
from spreadwright.rest.memory import Body
from spreadwright.rest.negotiation import preferred
from spreadwright.rest.openapi import documented, shared_parameters
from spreadwright.rest.pages import HTML
from spreadwright.rest.problems import NotAcceptable
from spreadwright.rest.queries import Query, QueryParser
from spreadwright.rest.replies import REVALIDATE, UNKEPT, redirect, reply
from spreadwright.rest.service import service

Documents = tuple[Hashable, ...]
Fetch = Callable[..., Documents]
Links = Callable[..., Iterable[str]]


class Resources(Blueprint):  # type: ignore[misc]
    """The resources of one kind."""

    ARGUMENTS_PARSER = QueryParser()

    def resource(
        self,
        rule: str,
        *forms: Form,
        query: type[Query] = Query,
        links: Links = lambda *_: (),
        page: str = "",
        cache: str = REVALIDATE,
    ) -> Callable[[Fetch], Fetch]:
        """Serves what the decorated view finds.

        Args:
            rule: The path, with its variables.
            forms: The representations, the default first; also to be had as `rule` and a suffix.
            query: The parameters that may stand in the query.
            links: Values of the Link header, from the arguments and the documents.
            page: The path of the gallery's page about it, to which browsers are sent if it exists.
            cache: What caches may do.
        """

        def register(fetch: Fetch) -> Fetch:
            def negotiated(arguments: Arguments, **ids: str) -> Response:
                documents = fetch(arguments, **ids)
                target = page.format(**ids)
                chosen = _accepted_type(forms, target)
                response = (
                    redirect(target, 303) if chosen == HTML else answered(_of_type(forms, chosen), arguments, documents)
                )
                if len(forms) > 1 or page:
                    response.vary.add("Accept")
                return response

            def suffixed(arguments: Arguments, suffix: str, **ids: str) -> Response:
                return answered(_named(forms, suffix), arguments, fetch(arguments, **ids))

            def answered(form: Form, arguments: Arguments, documents: Documents) -> Response:
                body = _remembered(form, arguments, documents)
                return reply(
                    body, form.media_type, links=(*_standing_links(), *links(arguments, *documents)), cache=cache
                )

            self._add(rule, fetch, negotiated, forms, query)
            if not rule.endswith("/"):
                self._add(f"{rule}.<suffix>", fetch, suffixed, forms, query)
            return fetch

        return register

    def task(self, rule: str, *forms: Form, query: type[Query] = Query) -> Callable[[Fetch], Fetch]:
        """Computes over a document that is posted, and keeps nothing; the view gets its bytes after the arguments."""

        def register(fetch: Fetch) -> Fetch:
            def posted(arguments: Arguments) -> Response:
                form = _of_type(forms, _accepted_type(forms))
                body = Body(form.make(arguments, *fetch(arguments, document_bytes())))
                return reply(body, form.media_type, cache=UNKEPT)

            self._add(rule, fetch, posted, forms, query, method="POST")
            return fetch

        return register

    def _add(
        self,
        rule: str,
        fetch: Fetch,
        view: Callable[..., Response],
        forms: Sequence[Form],
        query: type[Query],
        *,
        method: str = "GET",
    ) -> None:
        """Registers one route, described by the docstring of the view that finds the documents."""
        view.__name__ = fetch.__name__ if view.__name__ != "suffixed" else f"{fetch.__name__}_as"
        view.__doc__ = fetch.__doc__
        for each in (*documented(self, forms, view.__name__, method), self.arguments(query, location="query")):
            view = each(view)
        self.route(rule, methods=[method], parameters=shared_parameters(rule, forms, method))(view)


def _accepted_type(forms: Sequence[Form], target: str = "") -> str:
    """The media type that the client prefers; a page is offered last, if there is one at the target."""
    offers = [form.media_type for form in forms]
    if target and service().site.file(target):
        offers.append(HTML)
    chosen = preferred(offers, list(request.accept_mimetypes))
    if chosen is None:
        raise NotAcceptable(offers)
    return chosen


def _of_type(forms: Sequence[Form], media_type: str) -> Form:
    return next(form for form in forms if form.media_type == media_type)


def _named(forms: Sequence[Form], suffix: str) -> Form:
    for form in forms:
        if form.suffix == suffix:
            return form
    raise UnknownName("representation", suffix, [form.suffix for form in forms])


def _remembered(form: Form, arguments: Arguments, documents: Documents) -> Body:
    key = (form.make, request.script_root, tuple(sorted(arguments.items())), documents)
    return service().memory.body(key, lambda: form.make(arguments, *documents))


def _standing_links() -> tuple[str, ...]:
    return (f'<{request.script_root}/openapi.json>; rel="service-desc"; type="application/json"',)
