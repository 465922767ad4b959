"""The documents of a service of ours, by HTTP: bounded in number, bytes and time, from nowhere else, all or nothing.

What was fetched before is kept with its ETag, so that what is unchanged does not travel again. It needs the extra
`client` (httpx).
"""

import re
import time
from collections.abc import Iterator
from dataclasses import dataclass
from typing import cast
from urllib.parse import quote, urlsplit

import httpx

from spreadwright.client import Client, Problem, Unreachable
from spreadwright.document import MOST_BYTES
from spreadwright.errors import UnreadablePicture
from spreadwright.gallery.make import Made
from spreadwright.gallery.refusals import CannotFetch
from spreadwright.gallery.work.documents import Document, Documents, collected, with_pictures
from spreadwright.gallery.work.fingerprints import fingerprint
from spreadwright.gallery.work.kept import Kept
from spreadwright.store import Collection
from spreadwright.store.pictures import MOST_BYTES as MOST_PICTURE_BYTES

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_A_PAGE = 100
_PICTURES = "pictures"


@dataclass(frozen=True, slots=True)
class Bounds:
    """How much of a service is fetched at most."""

    documents: int = 20_000
    answer_bytes: int = MOST_BYTES
    picture_bytes: int = MOST_PICTURE_BYTES
    seconds: float = 1800.0


def fetched(
    address: str,
    kept: Kept | None = None,
    *,
    bounds: Bounds | None = None,
    transport: httpx.BaseTransport | None = None,
) -> Documents:
    """Everything that a service has published.

    Args:
        address: Where the service is.
        kept: What was fetched before, if it is kept.
        bounds: More than this is refused.
        transport: What carries requests; the network when left out.

    Raises:
        CannotFetch: The service refuses, does not answer, is none of ours, or gives more than it may.
    """
    bounds = bounds or Bounds()
    carried = _Bounded(transport or httpx.HTTPTransport(), address, bounds)
    try:
        with Client(address, transport=carried) as client:
            service = _Service(client, address, kept, bounds)
            return Documents(
                service.all_of("recipes"),
                tuple(service.dressed(each) for each in service.all_of("paper-sets")),
                tuple((unit, service.bench(ours)) for unit, ours in collected(Collection()).benches),
            )
    except (Problem, Unreachable) as reason:
        raise CannotFetch(address, str(reason) or "it does not answer") from reason
    except (ValueError, KeyError, TypeError, AttributeError) as reason:
        raise CannotFetch(address, "its answers are not those of a service of Spreadwright") from reason


class _Service:
    """One service, asked for documents as they are kept there."""

    def __init__(self, client: Client, address: str, kept: Kept | None, bounds: Bounds) -> None:
        self._client, self._address, self._kept, self._bounds = client, address, kept, bounds

    def all_of(self, kind: str) -> tuple[Document, ...]:
        """Every document of a kind, by id."""
        return tuple(Document(name, self._data(f"/{kind}/{name}")) for name in sorted(set(self._ids(kind))))

    def dressed(self, papers: Document) -> Document:
        """A paper set with the pictures that it names."""

        def find(name: str) -> bytes:
            try:
                return self._data(f"/paper-sets/{papers.id}/{_PICTURES}/{quote(name, safe='')}")
            except Problem as reason:
                if reason.status != httpx.codes.NOT_FOUND:
                    raise
                told, remedy = f"{self._address} does not have it.", "Send it there, or leave it out of the set."
                raise UnreadablePicture("picture-missing", told, remedy, name=name) from reason

        return with_pictures(papers.id, papers.data, find)

    def bench(self, ours: Document) -> Document:
        """Its own bench of a name, or the one that ships."""
        try:
            return Document(ours.id, self._data(f"/benches/{ours.id}"))
        except Problem as reason:
            if reason.status == httpx.codes.NOT_FOUND:
                return ours
            raise

    def _ids(self, kind: str) -> Iterator[str]:
        for number, item in enumerate(self._client.documents(kind, fields="id", limit=_A_PAGE)):
            name = item["id"]
            if number >= self._bounds.documents:
                raise CannotFetch(self._address, f"it lists more than {self._bounds.documents} {kind}")
            if not isinstance(name, str) or not _ID.fullmatch(name):  # it becomes a part of paths
                raise CannotFetch(self._address, f"“{str(name)[:60]}” is no id")
            yield name

    def _data(self, path: str) -> bytes:
        key = fingerprint(("fetched", self._address, path))
        known = self._kept.get(key, str) if self._kept else None
        headers = {"If-None-Match": known.told} if known else None
        answer = self._client.request("GET", path, headers=headers)
        if known and answer.status_code == httpx.codes.NOT_MODIFIED:
            return known.files["answer"]
        if self._kept and "ETag" in answer.headers:
            self._kept.put(key, Made({"answer": answer.content}, answer.headers["ETag"]))
        return answer.content


class _Bounded(httpx.BaseTransport):
    """Carries requests to one origin, plain answers of a sensible size back, and only so long."""

    def __init__(self, inner: httpx.BaseTransport, address: str, bounds: Bounds) -> None:
        self._inner, self._address, self._bounds = inner, address, bounds
        self._end = time.monotonic() + bounds.seconds

    def handle_request(self, request: httpx.Request) -> httpx.Response:
        """The answer, whose body is read bit by bit."""
        if _origin(str(request.url)) != _origin(self._address):
            raise CannotFetch(self._address, f"it leads elsewhere, to {request.url}")
        request.headers["Accept-Encoding"] = "identity"
        response = self._inner.handle_request(request)
        if response.headers.get("Content-Encoding", "identity") != "identity":
            raise CannotFetch(self._address, "it answers in a form that was not asked for")
        return httpx.Response(
            response.status_code, headers=response.headers, content=b"".join(self._parts(request, response))
        )

    def _parts(self, request: httpx.Request, response: httpx.Response) -> Iterator[bytes]:
        is_picture = f"/{_PICTURES}/" in request.url.path
        total, most = 0, self._bounds.picture_bytes if is_picture else self._bounds.answer_bytes
        try:
            for part in cast(httpx.SyncByteStream, response.stream):
                total += len(part)
                if total > most:
                    raise CannotFetch(self._address, f"an answer has more than {most} bytes")
                if time.monotonic() > self._end:
                    raise CannotFetch(self._address, f"it takes more than {self._bounds.seconds:.0f} s")
                yield part
        finally:
            response.close()

    def close(self) -> None:
        """Lets go of the connection."""
        self._inner.close()


def _origin(address: str) -> tuple[str, str | None, int | None]:
    parts = urlsplit(address)
    return parts.scheme, parts.hostname, parts.port or {"http": 80, "https": 443}.get(parts.scheme)
