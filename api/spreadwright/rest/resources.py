"""The resources of one kind: their routes, and their place in the OpenAPI document."""

import re
from collections.abc import Callable, Sequence
from typing import Any

from flask import Response
from flask_smorest import Blueprint

from spreadwright.rest.forms import Form
from spreadwright.rest.openapi import Headers, Json, described, shared_parameters
from spreadwright.rest.parameters import Query, QueryParser
from spreadwright.rest.resource import Documents, Fetch, Resource

__all__ = ["Documents", "Resources"]


class Resources(Blueprint):  # type: ignore[misc]
    """What the views of one module serve."""

    ARGUMENTS_PARSER = QueryParser()

    def __init__(self, *args: Any, **options: Any) -> None:
        super().__init__(*args, **options)
        self.headers: Headers = {}

    def route(self, rule: str, *, parameters: Sequence[Json] = (), **options: Any) -> Callable[[Any], Any]:
        """A route; what it takes in headers is its own, while variables are shared by all methods of a path."""
        place = (re.sub(r"<(\w+)>", r"{\1}", rule), options["methods"][0].lower())
        self.headers[place] = [each for each in parameters if each["in"] == "header"]
        shared = [each for each in parameters if each["in"] != "header"]
        decorator: Callable[[Any], Any] = super().route(rule, parameters=shared, **options)
        return decorator

    def resource(self, rule: str, *forms: Form, query: type[Query] = Query, **options: Any) -> Callable[[Fetch], Fetch]:
        """Serves what the decorated view finds, at a path by Accept and at that path with a suffix.

        Args:
            rule: The path, with its variables.
            forms: The representations, the default first.
            query: The parameters that may stand in the query.
            options: `links`, `page`, `has_page`, `cache`, `tag` and `expected_s` of the `Resource`.
        """

        def register(fetch: Fetch) -> Fetch:
            resource = Resource(fetch, forms, speaks="language" in query().fields, **options)
            self._add("GET", rule, resource.negotiated, resource, query)
            if not rule.endswith("/"):
                self._add("GET", f"{rule}.<suffix>", resource.suffixed, resource, query, name=f"{fetch.__name__}_as")
            return fetch

        return register

    def task(self, rule: str, *forms: Form, query: type[Query] = Query, **options: Any) -> Callable[[Fetch], Fetch]:
        """Computes over a document that is posted; the decorated view gets its bytes after the arguments.

        Args:
            rule: The path.
            forms: The representations, the default first.
            query: The parameters that may stand in the query.
            options: `reads` and `expected_s` of the `Resource`.
        """

        def register(fetch: Fetch) -> Fetch:
            resource = Resource(fetch, forms, speaks="language" in query().fields, **options)
            self._add("POST", rule, resource.posted, resource, query)
            return fetch

        return register

    def _add(
        self,
        method: str,
        rule: str,
        view: Callable[..., Response],
        resource: Resource,
        query: type[Query],
        *,
        name: str = "",
    ) -> None:
        name = name or resource.fetch.__name__
        answering = told = self.arguments(query(), location="query")(view)
        for decorate in described(self, method, rule, name, resource):
            told = decorate(told)
        answering._apidoc = told._apidoc  # what describes it need not be gone through by every request
        parameters = shared_parameters(rule, resource.forms, method, is_long=resource.expected_s is not None)
        self.route(rule, endpoint=name, methods=[method], parameters=parameters)(answering)
