"""One resource: what it is, in which forms it comes, and how a request is answered with one of them.

A view returns the documents that it found; each form makes bytes of them. So a view never learns how it is shown, and
what was made lately is found again by the documents themselves.
"""

from collections.abc import Callable, Hashable, Iterable
from dataclasses import dataclass
from typing import Any

from flask import Response, request

from spreadwright.errors import UnknownName
from spreadwright.rest.bodies import as_sent, document_bytes
from spreadwright.rest.bounds import refuse_beyond
from spreadwright.rest.forms import HTML, Arguments, Form
from spreadwright.rest.jobs import is_put_off, put_off
from spreadwright.rest.languages import chosen
from spreadwright.rest.links import service_description
from spreadwright.rest.memory import Body
from spreadwright.rest.negotiation import preferred
from spreadwright.rest.problems import NotAcceptable
from spreadwright.rest.rates import WORK, charge
from spreadwright.rest.rendered import keeping, kept_or_none
from spreadwright.rest.replies import REVALIDATE, UNKEPT, redirect, reply
from spreadwright.rest.service import service
from spreadwright.rest.shortcut import rests_on
from spreadwright.words import SOURCE, speaking

Documents = tuple[Hashable, ...]
Fetch = Callable[..., Documents]
Links = Callable[..., Iterable[str]]
Told = Callable[..., str]


@dataclass(frozen=True, slots=True)
class Resource:
    """What `Resources.resource` was told.

    Attributes:
        forms: The representations, the default first.
        links: Values of the Link header, from the arguments and the documents.
        page: The path of the gallery's page about it, to which browsers are sent if it exists.
        has_page: Whether there is one at that path even where the gallery has none.
        cache: What caches may do, or what tells it from the arguments and the documents.
        tag: The ETag, from the arguments and the documents; empty for the hash of the body.
        reads: What takes the body of a request that posts one.
        speaks: Whether it has words for makers, in the language that the client likes.
        expected_s: How many seconds it may take, from the arguments and the documents; what takes long becomes a job.
    """

    fetch: Fetch
    forms: tuple[Form, ...]
    links: Links = lambda *_: ()
    page: str = ""
    has_page: bool = False
    cache: str | Told = REVALIDATE
    tag: Told = lambda *_: ""
    reads: Callable[[], Any] = document_bytes
    speaks: bool = False
    expected_s: Callable[..., float] | None = None

    def negotiated(self, arguments: Arguments, **ids: str) -> Response:
        """The form, or the page, that the client prefers."""
        refuse_beyond(arguments)
        documents = self.fetch(arguments, **ids)
        page = self.page.format(**ids)
        form = self._accepted(page)
        response = redirect(page, 303) if form is None else self._answered(form, arguments, documents)
        if len(self.forms) > 1 or self.page:
            response.vary.add("Accept")
        return response

    def suffixed(self, arguments: Arguments, suffix: str, **ids: str) -> Response:
        """The form that the path names."""
        named = next((form for form in self.forms if form.suffix == suffix), None)
        if named is None:
            raise UnknownName("representation", suffix, dict.fromkeys(form.suffix for form in self.forms))
        refuse_beyond(arguments)
        return self._answered(named, arguments, self.fetch(arguments, **ids))

    def posted(self, arguments: Arguments) -> Response:
        """What a view finds out about the body of the request; nothing is kept."""
        form = self._accepted() or self.forms[0]
        refuse_beyond(arguments)
        charge(WORK)
        language = chosen(arguments, ()) if self.speaks else SOURCE
        data = self.reads()
        documents = self.fetch(arguments, data)
        if self._is_put_off(form, arguments, documents):
            return put_off(*as_sent(data))
        with speaking(language):
            body = Body(form.make(arguments, *documents))
        response = reply(body, form.media_type, cache=UNKEPT)
        if self.speaks:
            response.headers["Content-Language"] = language
        return response

    def _accepted(self, page: str = "") -> Form | None:
        """The form that the client prefers; None when it prefers the page, which is offered last, if it exists."""
        offers = [form.media_type for form in self.forms]
        if page and (self.has_page or service().site.file(page)):
            offers.append(HTML)
        found = preferred(offers, list(request.accept_mimetypes))
        if found is None:
            raise NotAcceptable(offers)
        return next((form for form in self.forms if form.media_type == found), None)

    def _answered(self, form: Form, arguments: Arguments, documents: Documents) -> Response:
        language = chosen(arguments, documents) if self.speaks else SOURCE
        asked = {**arguments, "language": language} if self.speaks else arguments
        key = (form.make, request.script_root, tuple(sorted(asked.items())), documents)
        kept = None if key in service().memory else kept_or_none(form, asked, documents)
        if kept is None and key not in service().memory and self._is_put_off(form, asked, documents):
            charge(WORK)
            return put_off()
        with speaking(language):
            body = service().memory.body(key, lambda: kept or _made(form, asked, documents))
        links = (service_description(), *self.links(arguments, *documents))
        cache = self.cache if isinstance(self.cache, str) else self.cache(arguments, *documents)
        tag = self.tag(arguments, *documents)
        rests_on(documents)
        response = reply(body, form.media_type, links=links, cache=cache, tag=tag)
        if self.speaks:
            response.headers["Content-Language"] = language
            if "language" not in arguments:
                response.vary.add("Accept-Language")
        return response

    def _is_put_off(self, form: Form, arguments: Arguments, documents: Documents) -> bool:
        """Whether it is done later, by a job."""
        if self.expected_s is None:
            return False
        return is_put_off(0 if form.is_quick else self.expected_s(arguments, *documents))


def _made(form: Form, arguments: Arguments, documents: Documents) -> bytes:
    """The bytes of a body that nobody has asked for lately; those that take work are counted."""
    if form.is_work:
        charge(WORK)
    return keeping(form, arguments, documents, lambda: form.make(arguments, *documents))
