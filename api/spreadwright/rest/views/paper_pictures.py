"""The pictures of papers: sent one by one to a paper set, listed, shown, deleted."""

from collections.abc import Callable
from typing import Any

from flask import Response

from spreadwright.document import PICTURE_SUFFIXES, bare_picture
from spreadwright.errors import UnknownName, UnreadablePicture
from spreadwright.images import pixel_count
from spreadwright.rest.bodies import picture_bytes
from spreadwright.rest.document_envelopes import Status
from spreadwright.rest.document_writes import told
from spreadwright.rest.forms import JPEG, PNG, Arguments, json_form
from spreadwright.rest.links import address, link
from spreadwright.rest.memory import Body
from spreadwright.rest.permissions import Turn, own
from spreadwright.rest.picture_envelopes import PictureList
from spreadwright.rest.plain_routes import serve_plain
from spreadwright.rest.queries import NoteQuery
from spreadwright.rest.replies import IMMUTABLE, REVALIDATE, reply
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection, service
from spreadwright.rest.turns import turn
from spreadwright.rest.writing import Write, write
from spreadwright.store.values import Document

blueprint = Resources("paper-pictures", __name__, description=__doc__)

KIND = "paper-sets"
_RULE = "/paper-sets/<set_id>/pictures"
_LARGE, _SECONDS = 4_000_000, 2
"""A picture of more pixels takes long enough to read that it waits for a turn."""
LONGEST_NAME = 100
_SIGNS = {b"\x89PNG": PNG, b"\xff\xd8\xff": JPEG}
"""What files begin with; whatever else was imported is sent as bytes that nobody takes for something."""


def _faces(document: Document) -> dict[str, list[str]]:
    """Where the set names its pictures, by their names."""
    found: dict[str, list[str]] = {}
    for number, paper in enumerate(document.content.get("papers", ())):
        for side in ("front", "back"):
            name = paper.get(side, {}).get("picture")
            if name:
                found.setdefault(name, []).append(f"/papers/{number}/{side}/picture")
    return found


def _listed(_: Arguments, document: Document) -> dict[str, Any]:
    faces = _faces(document)
    return {
        "id": document.id,
        "etag": f'"{document.head.etag}"',
        "pictures": [_item(document, name, faces.get(name, [])) for name in sorted(document.pictures)],
        "missing": sorted(set(faces) - set(document.pictures)),
    }


def _item(document: Document, name: str, faces: list[str]) -> dict[str, Any]:
    digest = document.pictures[name]
    links = {
        "self": address("paper-pictures.picture", set_id=document.id, picture=name),
        "content": address("paper-pictures.picture_content", digest=digest),
    }
    return {"name": name, "sha256": digest, "faces": faces, "links": links}


@blueprint.resource(_RULE, json_form(_listed, PictureList, is_work=False))
def pictures(_: Arguments, set_id: str) -> Documents:
    """The pictures of a paper set, and those that it names and that were not sent yet."""
    return (collection().document(KIND, set_id),)


def picture(_: Arguments, set_id: str, picture: str) -> Response:
    """One picture of a paper set, as PNG or JPEG.

    It has its pixels alone, at most 2048 each way, and nothing on where or by whom it was taken.
    """
    document = collection().document(KIND, set_id)
    data = service().store.documents.picture(document, _known(document, picture))
    fixed = address("paper-pictures.picture_content", digest=document.pictures[picture])
    return reply(Body(data), _type_of(data), links=[link(fixed, "duplicate")], cache=REVALIDATE)


def picture_content(_: Arguments, digest: str) -> Response:
    """A picture of some paper set by its SHA-256, for ever the same."""
    data = service().store.history.content(digest.lower())
    if _type_of(data) not in _SIGNS.values():
        raise UnknownName("picture", digest, None)
    return reply(Body(data), _type_of(data), cache=IMMUTABLE)


def _known(document: Document, name: str) -> str:
    if name not in document.pictures:
        raise UnknownName("picture", name, sorted(document.pictures))
    return name


def _type_of(data: bytes) -> str:
    return next((kind for sign, kind in _SIGNS.items() if data.startswith(sign)), "application/octet-stream")


def put_picture(arguments: Arguments, set_id: str, picture: str) -> Response:
    """A picture added, or put in the place of another."""
    taken = own(KIND, set_id)
    most = service().settings.set_pictures
    there = service().store.documents.get(KIND, set_id).pictures
    if picture not in there and len(there) >= most:
        refusal = f"The set has {len(there)} pictures already; the most is {most}."
        raise UnreadablePicture("too-many-pictures", refusal, "Delete one that no paper names.", name=picture)
    kept = _rewritten(picture, picture_bytes())
    return _written(service().store.documents.put_pictures, taken, arguments, {picture: kept})


def delete_picture(arguments: Arguments, set_id: str, picture: str) -> Response:
    """A picture deleted; earlier revisions of the set keep it."""
    return _written(service().store.documents.delete_picture, own(KIND, set_id), arguments, picture)


def _written(verb: Callable[..., Document], taken: Turn, arguments: Arguments, what: Any) -> Response:
    return told(verb(taken.head.id, what, taken.who, expected=taken.expected, note=arguments.get("note", "")))


def _rewritten(name: str, data: bytes) -> bytes:
    if not name.lower().endswith(PICTURE_SUFFIXES) or len(name) > LONGEST_NAME or not name.isprintable():
        refusal = "Its name is none of a PNG or JPEG."
        remedy = f"End it in {', '.join(PICTURE_SUFFIXES)}; {LONGEST_NAME} characters are the most."
        raise UnreadablePicture("not-a-picture", refusal, remedy, name=name[:LONGEST_NAME])
    most = service().settings.picture_pixels
    if not _LARGE < pixel_count(data) <= most:  # what is too large is refused by its header
        return bare_picture(data, name, most_pixels=most)
    with turn(_SECONDS):
        return bare_picture(data, name, most_pixels=most)


_BINARY = {"type": "string", "format": "binary"}
_BODY = {
    "description": "A PNG or JPEG: one repeat of a print, or a whole sheet.",
    "required": True,
    "content": {kind: {"schema": _BINARY} for kind in (PNG, JPEG)},
}
_TOLD = {200: (Status, "What has become of the set, with the ETag for the next write.")}
_PUTS = (
    "Its owner may. Names are those of files and end in `.png` or `.jpg`. A set may have pictures that it does not "
    "name yet, and while it is a draft name some that are yet to come."
)
_DELETES = "Its owner may. A published set keeps those that its papers name."
_ONE = f"{_RULE}/<picture>"

_shown = [blueprint.response(200, _BINARY, content_type=kind, description="The picture.") for kind in (PNG, JPEG)]
serve_plain(blueprint, "GET", _ONE, picture, *_shown, failures=(404, 410), is_kept=True)
serve_plain(blueprint, "GET", "/pictures/<digest>", picture_content, *_shown, failures=(404,), is_kept=True)
for _spec, _view in (
    (Write("PUT", _ONE, "put_picture", "A picture of a paper set.", _TOLD, _PUTS, _BODY, query=NoteQuery), put_picture),
    (Write("DELETE", _ONE, "delete_picture", "A picture deleted.", _TOLD, _DELETES, query=NoteQuery), delete_picture),
):
    write(blueprint, _spec, _view)
