"""The client: one connection to one service."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any, Self
from urllib.parse import quote
from uuid import uuid4

import httpx

from spreadwright.client.documents import Stored
from spreadwright.client.jobs import Job
from spreadwright.client.problems import Problem, Stale, problem_of
from spreadwright.client.retries import Patience

Json = dict[str, Any]
_SAFE = ("GET", "HEAD", "OPTIONS")
MOST_TRIES = 20


class Client:
    """One connection to one service.

    Args:
        address: Where it is, such as `https://albums.example/`.
        token: For writing; reading needs none.
        timeout_s: How long one request may take.
        patience: How often a request is repeated.
        transport: What carries requests; the network when left out.
    """

    def __init__(
        self,
        address: str,
        token: str | None = None,
        *,
        timeout_s: float = 60.0,
        patience: Patience | None = None,
        transport: httpx.BaseTransport | None = None,
    ) -> None:
        self.patience = patience or Patience()
        headers = {"Accept": "application/json", "User-Agent": "spreadwright-client"}
        if token:
            headers["Authorization"] = f"Bearer {token}"
        base = address.rstrip("/") + "/"
        self._http = httpx.Client(base_url=base, headers=headers, timeout=timeout_s, transport=transport)
        self._seen: dict[tuple[str, str], Stored] = {}

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Lets go of the connection."""
        self._http.close()

    def request(
        self,
        method: str,
        path: str,
        *,
        is_repeatable: bool | None = None,
        headers: Mapping[str, str] | None = None,
        **options: Any,
    ) -> httpx.Response:
        """The answer to one request, which is repeated where that is safe.

        Args:
            method: Of HTTP.
            path: From `/` on, as the service tells it.
            is_repeatable: Whether doing it twice is doing it once; reading is.
            headers: Beside those of every request.
            options: What `httpx` takes: `params`, `json`, `content`, `files`.

        Raises:
            Problem: The service refused.
            Unreachable: It did not answer.
        """
        safe = method in _SAFE if is_repeatable is None else is_repeatable
        response = self.patience.send(
            lambda: self._http.request(method, path.lstrip("/"), headers=headers, **options), is_repeatable=safe
        )
        if response.is_error:
            raise problem_of(response)
        return response

    def documents(self, kind: str, **filters: str | int) -> Iterator[Json]:
        """Every document of a list, page by page as they are needed.

        Args:
            kind: `recipes`, `paper-sets` or `benches`.
            filters: The parameters of the list, such as `tag`, `q`, `sort`, `limit`.
        """
        response = self.request("GET", f"/{kind}", params=filters)
        while True:
            yield from response.json()[kind.replace("-", "_")]
            following = response.links.get("next")
            if following is None:
                return
            response = self.request("GET", str(response.url.join(following["url"])))

    def get(self, kind: str, name: str) -> Stored:
        """A document; the bytes travel only if it changed since it was last read."""
        known = self._seen.get((kind, name))
        headers = {"If-None-Match": known.etag} if known else None
        response = self.request("GET", _path(kind, name), headers=headers)
        if known and response.status_code == httpx.codes.NOT_MODIFIED:
            return known
        return self._remembered(Stored(kind, name, response.headers["ETag"], response.json()))

    def create(self, kind: str, content: Json, *, name: str | None = None, key: str | None = None) -> Stored:
        """A new draft. Sent twice with the same `key` it is made once; each call has a key of its own otherwise."""
        params = {"id": name} if name else None
        headers = {"Idempotency-Key": key or uuid4().hex}
        response = self.request("POST", f"/{kind}", json=content, params=params, headers=headers, is_repeatable=True)
        status = response.json()
        return self._remembered(Stored(kind, status["id"], status["etag"], content))

    def put(self, stored: Stored, content: Json, *, note: str = "") -> Stored:
        """The document with other content.

        Raises:
            Stale: Somebody else changed it first.
        """
        status = self._write("PUT", _path(stored.kind, stored.id), stored, note, json=content)
        return self._remembered(Stored(stored.kind, stored.id, status["etag"], content))

    def patch(self, stored: Stored, changes: Json, *, note: str = "") -> Stored:
        """The document with some members changed (RFC 7396); raises like `put`."""
        self._write("PATCH", _path(stored.kind, stored.id), stored, note, json=changes)
        return self.get(stored.kind, stored.id)

    def change(self, kind: str, name: str, edit: Callable[[Json], Json], *, note: str = "") -> Stored:
        """The document after an edit, which is made again whenever somebody else was quicker.

        Args:
            kind: `recipes`, `paper-sets` or `benches`.
            name: Its id.
            edit: Other content from the present one.
            note: Why; kept with the revision.
        """
        for _ in range(MOST_TRIES - 1):
            stored = self.get(kind, name)
            try:
                return self.put(stored, edit(stored.content), note=note)
            except Stale:
                continue
        stored = self.get(kind, name)
        return self.put(stored, edit(stored.content), note=note)

    def delete(self, stored: Stored, *, note: str = "") -> None:
        """Deletes the document; raises like `put`."""
        self._write("DELETE", _path(stored.kind, stored.id), stored, note)
        self._seen.pop((stored.kind, stored.id), None)

    def publish(self, stored: Stored, *, note: str = "") -> Stored:
        """The document, published; raises like `put`, and a `Problem` where the check finds errors."""
        return self._moved(stored, "publish", note)

    def withdraw(self, stored: Stored, *, note: str = "") -> Stored:
        """The document, withdrawn; raises like `put`."""
        return self._moved(stored, "withdraw", note)

    def pictures(self, set_id: str) -> Json:
        """The pictures of a paper set, where it names each, and those that are missing."""
        found: Json = self.request("GET", f"{_path('paper-sets', set_id)}/pictures").json()
        return found

    def picture(self, set_id: str, name: str) -> bytes:
        """A picture of a paper set, PNG or JPEG as its name says."""
        return self.request("GET", _picture(set_id, name), headers={"Accept": "*/*"}).content

    def put_picture(self, stored: Stored, name: str, data: bytes, *, note: str = "") -> Stored:
        """The paper set with a picture, new or in the place of another; raises like `put`.

        Args:
            stored: The paper set.
            name: By which papers name it: `ferns.jpg`.
            data: A PNG or JPEG.
            note: Why; kept with the revision.
        """
        headers = {"Content-Type": "image/png" if name.lower().endswith(".png") else "image/jpeg"}
        path = _picture(stored.id, name)
        return self._moved_on(stored, self._write("PUT", path, stored, note, content=data, headers=headers))

    def delete_picture(self, stored: Stored, name: str, *, note: str = "") -> Stored:
        """The paper set without one of its pictures; raises like `put`."""
        return self._moved_on(stored, self._write("DELETE", _picture(stored.id, name), stored, note))

    def check(self, content: Json, **query: str) -> Json:
        """What there is to say about a document; nothing is kept."""
        found: Json = self.request("POST", "/check", json=content, params=query, is_repeatable=True).json()
        return found

    def plan(self, pieces: Json, **query: str | int | float) -> Json:
        """How pieces are cut from the fewest sheets, however long that takes."""
        found: Json = self.compute("POST", "/plan", json=pieces, params=query).json()
        return found

    def booklet(self, recipe: str, **query: str) -> bytes:
        """The booklet of a recipe as PDF, however long that takes."""
        headers = {"Accept": "application/pdf"}
        return self.compute("GET", f"{_path('recipes', recipe)}/booklet", params=query, headers=headers).content

    def compute(self, method: str, path: str, **options: Any) -> httpx.Response:
        """What comes out of long work; takes what `request` takes."""
        response = self.request(method, path, is_repeatable=True, **options)
        return self._job(response).wait() if response.status_code == httpx.codes.ACCEPTED else response

    def start(self, method: str, path: str, **options: Any) -> Job:
        """Long work, begun and not waited for; takes what `request` takes."""
        headers = {**options.pop("headers", {}), "Prefer": "respond-async"}
        response = self.request(method, path, headers=headers, **options)
        if response.status_code != httpx.codes.ACCEPTED:
            raise Problem(response.status_code, {"title": "This is no long work; use request."})
        return self._job(response)

    def _job(self, response: httpx.Response) -> Job:
        job = Job(self, str(response.url.join(response.headers["Location"])))
        job.poll_s = float(response.headers.get("Retry-After", job.poll_s))
        return job

    def _moved(self, stored: Stored, verb: str, note: str) -> Stored:
        return self._moved_on(stored, self._write("POST", f"{_path(stored.kind, stored.id)}/{verb}", stored, note))

    def _write(self, method: str, path: str, stored: Stored, note: str, **options: Any) -> Json:
        """What has become of a document. A write whose answer was lost is not repeated: it would be told as stale."""
        params = {"note": note} if note else None
        headers = {**options.pop("headers", {}), "If-Match": stored.etag}
        response = self.request(method, path, params=params, headers=headers, **options)
        found: Json = response.json() if response.content else {}
        return found

    def _moved_on(self, stored: Stored, status: Json) -> Stored:
        """The same content at the next revision."""
        return self._remembered(Stored(stored.kind, stored.id, status["etag"], stored.content))

    def _remembered(self, stored: Stored) -> Stored:
        self._seen[stored.kind, stored.id] = stored
        return stored


def _path(kind: str, name: str) -> str:
    return f"/{kind}/{quote(name, safe='')}"


def _picture(set_id: str, name: str) -> str:
    return f"{_path('paper-sets', set_id)}/pictures/{quote(name, safe='')}"
