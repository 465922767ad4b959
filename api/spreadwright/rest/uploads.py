"""Photographs that are uploaded: held in memory while they are looked at, and never written to a disk.

A body of `multipart/form-data` (RFC 7578): a part named `photo` for each photograph, and at most one named `recipe`
with a recipe as JSON.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256
from io import BytesIO
from typing import IO, Any

from flask import request
from werkzeug.exceptions import RequestEntityTooLarge, UnsupportedMediaType
from werkzeug.formparser import FormDataParser

from spreadwright.document import MOST_BYTES as MOST_DOCUMENT_BYTES
from spreadwright.errors import UnreadableDocument
from spreadwright.images import pixel_count
from spreadwright.rest.bodies import refuse_compressed
from spreadwright.rest.service import service

MULTIPART = "multipart/form-data"
PHOTO, RECIPE = "photo", "recipe"

MOST_PHOTOGRAPHS = 12
MOST_BYTES = 48_000_000
"""Of a body with all its parts."""
MOST_PIXELS = 240_000_000
"""Of all photographs together, so that no request takes longer than `turn` is told: a dozen of 20 million."""
_LONGEST_NAME = 80


@dataclass(frozen=True, slots=True)
class Upload:
    """What was uploaded: photographs by name, and the bytes of a recipe if one came along."""

    photographs: tuple[tuple[str, bytes], ...]
    recipe: bytes | None = None

    def as_body(self) -> tuple[bytes, str]:
        """The same as a body of its own, and the type of that."""
        boundary = sha256(b"".join(data for _, data in self.photographs)).hexdigest()
        parts = [(PHOTO, name, data) for name, data in self.photographs]
        parts += [(RECIPE, "recipe.json", self.recipe)] if self.recipe is not None else []
        whole = b"".join(b"--%s\r\n%s\r\n\r\n%s\r\n" % (boundary.encode(), _head(*each[:2]), each[2]) for each in parts)
        return whole + b"--%s--\r\n" % boundary.encode(), f"{MULTIPART}; boundary={boundary}"


def uploaded() -> Upload:
    """The parts of the body.

    Raises:
        UnsupportedMediaType: It is of another type, or compressed.
        RequestEntityTooLarge: It is longer than `MOST_BYTES`, has too many parts, or its photographs too many pixels.
        UnreadableDocument: There is no photograph in it, or something that is neither photograph nor recipe.
    """
    if request.mimetype != MULTIPART:
        raise UnsupportedMediaType(f"Send the photos as {MULTIPART}, each in a part named “{PHOTO}”.")
    refuse_compressed()
    fields, files = _parts()
    _refuse_others([*fields, *files])
    photographs = [(_name(file.filename, number), file.read()) for number, file in enumerate(files.getlist(PHOTO), 1)]
    if not photographs:
        raise UnreadableDocument("No photo was sent.", f"Send each in a part named “{PHOTO}”, with a file name.")
    if len(photographs) > MOST_PHOTOGRAPHS:
        reason = f"{len(photographs)} photos were sent; the most is {MOST_PHOTOGRAPHS}."
        raise UnreadableDocument(reason, "Send fewer at a time.")
    _refuse_many_pixels(photographs)
    return Upload(tuple(photographs), _recipe(fields, files))


def _head(part: str, name: str) -> bytes:
    quoted = name.replace("\\", "\\\\").replace('"', '\\"').replace("\r", " ").replace("\n", " ")
    return f'Content-Disposition: form-data; name="{part}"; filename="{quoted}"'.encode("utf-8", "replace")


def _parts() -> tuple[Any, Any]:
    """Fields and files, all in memory: the parser's own choice would be a file on disk for whatever is large."""
    most = service().settings.upload_bytes
    request.max_content_length = most
    if (request.content_length or 0) > most:
        raise RequestEntityTooLarge(_too_large())
    parser = FormDataParser(
        stream_factory=_in_memory,
        max_form_memory_size=MOST_DOCUMENT_BYTES,
        max_content_length=most,
        max_form_parts=MOST_PHOTOGRAPHS + 8,
        silent=False,
    )
    try:
        _, fields, files = parser.parse(
            request.stream, request.mimetype, request.content_length, request.mimetype_params
        )
    except RequestEntityTooLarge:
        raise RequestEntityTooLarge(_too_large()) from None
    except ValueError as reason:
        remedy = "Send it as RFC 7578 says, with the boundary that the header names."
        raise UnreadableDocument("The body is no multipart/form-data.", remedy) from reason
    return fields, files


def _in_memory(*_: Any, **__: Any) -> IO[bytes]:
    return BytesIO()


def _too_large() -> str:
    most_mb = f"{service().settings.upload_bytes / 1e6:.3g} MB"
    return f"All photos together may have {most_mb}, and there may be {MOST_PHOTOGRAPHS} of them."


def _refuse_many_pixels(photographs: Sequence[tuple[str, bytes]]) -> None:
    """Told by the headers, before anything is decoded."""
    pixels = sum(pixel_count(data) for _name, data in photographs)
    if pixels > MOST_PIXELS:
        told = (
            f"The photos have {pixels / 1e6:.0f} million pixels together; the most is {MOST_PIXELS / 1e6:.0f} million."
        )
        raise RequestEntityTooLarge(f"{told} Send fewer at a time, or smaller ones: 2000 pixels a side are plenty.")


def _refuse_others(names: list[str]) -> None:
    other = next((name for name in names if name not in (PHOTO, RECIPE)), None)
    if other is not None:
        reason = f"The part “{other[:_LONGEST_NAME]}” is not known here."
        raise UnreadableDocument(reason, f"Name the parts “{PHOTO}” and “{RECIPE}”.")


def _recipe(fields: Any, files: Any) -> bytes | None:
    found = [each.encode() for each in fields.getlist(RECIPE)] + [each.read() for each in files.getlist(RECIPE)]
    if len(found) > 1:
        raise UnreadableDocument(f"{len(found)} recipes were sent.", "Send one.")
    return found[0] if found else None


def _name(filename: str | None, number: int) -> str:
    """The last part of the path that the client gave."""
    name = (filename or "").replace("\\", "/").split("/")[-1].strip()
    return name[:_LONGEST_NAME] or f"photo {number}"
