"""The JSON Schemas of the documents."""

from typing import Any

from spreadwright.document import KINDS, schema, schema_bytes
from spreadwright.errors import UnknownName
from spreadwright.rest.envelopes import SchemaList
from spreadwright.rest.forms import JSON, SCHEMA_JSON, Arguments, Form, json_form
from spreadwright.rest.links import address
from spreadwright.rest.replies import FIXED
from spreadwright.rest.resources import Documents, Resources

VERSION = 1

blueprint = Resources("schema", __name__, description=__doc__)


def _list(_: Arguments, kinds: tuple[str, ...]) -> dict[str, Any]:
    return {"schemas": [_item(kind) for kind in kinds]}


def _item(kind: str) -> dict[str, Any]:
    links = {"self": address("schema.schema_version", kind=kind, version=VERSION)}
    return {"kind": kind, "title": schema(kind)["title"], "version": VERSION, "links": links}


def _schema(_: Arguments, kind: str) -> bytes:
    return schema_bytes(kind)


_FORMS = tuple(Form("json", media_type, _schema, {"type": "object"}) for media_type in (SCHEMA_JSON, JSON))


@blueprint.resource("/schema", json_form(_list, SchemaList))
def schemas(_: Arguments) -> Documents:
    """The kinds of documents, with the schemas of their current versions."""
    return (KINDS,)


@blueprint.resource("/schema/<kind>", *_FORMS)
def current_schema(_: Arguments, kind: str) -> Documents:
    """The schema of one kind of document, in its current version; `recipe.schema.json` names it too."""
    return (_known(kind.removesuffix(".schema")),)


@blueprint.resource("/schema/<kind>/<version>", *_FORMS, cache=FIXED)
def schema_version(_: Arguments, kind: str, version: str) -> Documents:
    """The schema of one kind of document in one version, at the path of its `$id`."""
    if version != str(VERSION):
        raise UnknownName("version", version, [str(VERSION)])
    return (_known(kind),)


def _known(kind: str) -> str:
    schema_bytes(kind)
    return kind
