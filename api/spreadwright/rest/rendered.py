"""Pictures and prints that were made before, by this process or by another: found again by what they show."""

import pickle
from collections.abc import Callable
from hashlib import sha256

from flask import current_app, request

from spreadwright.errors import CannotWrite
from spreadwright.rest.forms import PDF, PNG, Arguments, Form
from spreadwright.rest.service import service
from spreadwright.store.renders import render_key

_KEPT = (PNG, PDF)
"""What takes long to make; the rest is made again as quickly as it is read."""


def kept_or_none(form: Form, arguments: Arguments, documents: tuple[object, ...]) -> bytes | None:
    """The file that shows these documents in this form; None where nobody made it yet."""
    if form.media_type not in _KEPT:
        return None
    return service().store.renders.get(_key(form, arguments, documents))


def keeping(form: Form, arguments: Arguments, documents: tuple[object, ...], make: Callable[[], bytes]) -> bytes:
    """What is made, kept for others where it takes long."""
    data = make()
    if form.media_type in _KEPT:
        _keep(_key(form, arguments, documents), data)
    return data


def _keep(key: str, data: bytes) -> None:
    """Where it can be kept: what was made is sent in any case."""
    try:
        service().store.renders.put(key, data)
    except CannotWrite as reason:
        current_app.logger.warning("%s", reason)


def _key(form: Form, arguments: Arguments, documents: tuple[object, ...]) -> str:
    view = str(request.endpoint).removesuffix("_as")
    return render_key(view, request.script_root, form.suffix, sorted(arguments.items()), *map(_digest, documents))


def _digest(document: object) -> str:
    """Of all that it consists of, pictures of papers included; equal ones may differ in it, others never agree."""
    return sha256(pickle.dumps(document, protocol=5)).hexdigest()
