"""What is known of a document beside what stands in it."""

from typing import Any

from spreadwright.rest.documents import address_about, document_address
from spreadwright.rest.identity import may_see
from spreadwright.rest.links import address
from spreadwright.rest.service import service
from spreadwright.store.values import Document, Head, State

Relatives = tuple[tuple[Head, ...], tuple[Head, ...]]
"""What a document is derived from, and what is derived from it."""


def relatives_of(document: Document) -> Relatives:
    """Those of its relatives that whoever asks may see, deleted parents among them."""
    lineage = service().store.lineage
    parents = lineage.parents(document.kind, document.id)
    seen = tuple(each for each in parents if each.state is State.DELETED or may_see(each))
    return seen, lineage.children(document.kind, document.id)


def status_of(document: Document, relatives: Relatives | None = None) -> dict[str, Any]:
    """The status of a document, and what it is related to."""
    head = document.head
    parents, children = relatives or relatives_of(document)
    return {
        "kind": head.kind,
        "id": head.id,
        "title": document.facts.title,
        "state": head.state.value,
        "revision": head.revision,
        "etag": f'"{head.etag}"',
        "sha256": head.digest,
        "owner": head.owner,
        "created_at": document.created_at.isoformat(),
        "changed_at": head.changed_at.isoformat(),
        "published_at": document.published_at.isoformat() if document.published_at else None,
        "review_note": document.review_note,
        "derived_from": [relative(each) for each in parents],
        "derived": [relative(each) for each in children],
        "links": _links(head),
    }


def relative(head: Head) -> dict[str, Any]:
    """A document that another is derived from, or that is derived from it."""
    return {"id": head.id, "state": head.state.value, "links": {"self": document_address(head.kind, head.id)}}


def _links(head: Head) -> dict[str, str]:
    return {
        "self": document_address(head.kind, head.id),
        "status": address_about("status_of", head.kind, head.id),
        "revisions": address_about("revisions_of", head.kind, head.id),
        "content": address("contents.content", digest=head.digest),
    }
