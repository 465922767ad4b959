"""The paper sets."""

from typing import Any

from spreadwright.rest.document_history import add_history
from spreadwright.rest.document_writes import add_writes
from spreadwright.rest.documents import document_form, tag_of
from spreadwright.rest.documents import links_of as links_of_document
from spreadwright.rest.envelopes import PaperSetList
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address
from spreadwright.rest.lists import Page, item_of, links_of, page_of, sparse
from spreadwright.rest.queries import FilterQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.store.values import Document
from spreadwright.tasks.answers import paper_set_figures

blueprint = Resources("paper-sets", __name__, description=__doc__)


def _list(arguments: Arguments, page: Page) -> dict[str, Any]:
    return {"count": page.count, "paper_sets": [_item(each, arguments) for each in page.items]}


def _item(papers: Document, arguments: Arguments) -> dict[str, Any]:
    links = {"self": address("paper-sets.paper_set", set_id=papers.id)}
    told = item_of(papers, arguments, links)
    swatches = sparse({"id": papers.id, "papers": _papers(papers)}, arguments)
    return told | swatches


def _papers(papers: Document) -> list[dict[str, Any]]:
    figures: list[dict[str, Any]] = paper_set_figures(collection().reading(papers).model)["papers"]
    for each in figures:
        each["links"] = {"swatch": address("swatches.swatch", set_id=papers.id, paper_id=each["id"])}
    return figures


@blueprint.resource(
    "/paper-sets", json_form(_list, PaperSetList, is_work=False), query=FilterQuery, links=links_of, page="/paper-sets/"
)
def paper_sets(arguments: Arguments) -> Documents:
    """The paper sets; filtered, searched and sorted as the query says."""
    return (page_of("paper-sets", arguments),)


@blueprint.resource(
    "/paper-sets/<set_id>",
    document_form("paper-sets"),
    links=links_of_document,
    page="/paper-sets/{set_id}/",
    tag=tag_of,
)
def paper_set(_: Arguments, set_id: str) -> Documents:
    """One paper set: its document, as it is kept."""
    return (collection().head("paper-sets", set_id),)


add_writes(blueprint, "paper-sets")
add_history(blueprint, "paper-sets")
