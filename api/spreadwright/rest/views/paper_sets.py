"""The paper sets."""

from typing import Any

from spreadwright.model import Paper
from spreadwright.rest.document_history import add_history
from spreadwright.rest.document_writes import add_writes
from spreadwright.rest.documents import document_form, tag_of
from spreadwright.rest.documents import links_of as links_of_document
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address
from spreadwright.rest.list_envelopes import PaperSetList
from spreadwright.rest.lists import Page, item_of, links_of, page_of
from spreadwright.rest.queries import FilterQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.store.values import Document
from spreadwright.tasks.answers import paper_figures

blueprint = Resources("paper-sets", __name__, description=__doc__)


def _list(arguments: Arguments, page: Page) -> dict[str, Any]:
    return {"count": page.count, "paper_sets": [_item(each, arguments) for each in page.items]}


def _item(papers: Document, arguments: Arguments) -> dict[str, Any]:
    links = {"self": address("paper-sets.paper_set", set_id=papers.id)}
    found = [_paper(papers.id, each) for each in collection().reading(papers).model.papers]
    return item_of(papers, arguments, links, papers=found)


def _paper(set_id: str, paper: Paper) -> dict[str, Any]:
    swatch = address("swatches.swatch", set_id=set_id, paper_id=paper.id)
    return {**paper_figures(paper), "links": {"swatch": swatch}}


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
