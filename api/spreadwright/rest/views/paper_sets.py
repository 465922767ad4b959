"""The paper sets of the collection."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import PaperSet
from spreadwright.rest.documents import document_form, named
from spreadwright.rest.envelopes import PaperSetList
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address, described_by
from spreadwright.rest.lists import Page, links_of, page_of
from spreadwright.rest.queries import PageQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks.answers import paper_set_figures

blueprint = Resources("paper-sets", __name__, description=__doc__)


def _list(_: Arguments, page: Page[Reading[PaperSet]]) -> dict[str, Any]:
    return {"count": page.count, "start": page.start, "paper_sets": [_item(each.model) for each in page.items]}


def _item(papers: PaperSet) -> dict[str, Any]:
    figures = paper_set_figures(papers)
    for each in figures["papers"]:
        each["links"] = {"swatch": address("swatches.swatch", set_id=papers.id, paper_id=each["id"])}
    return {**figures, "links": {"self": address("paper-sets.paper_set", set_id=papers.id)}}


@blueprint.resource("/paper-sets", json_form(_list, PaperSetList), query=PageQuery, links=links_of, page="/paper-sets/")
def paper_sets(arguments: Arguments) -> Documents:
    """The paper sets, by id."""
    return (page_of(collection().paper_sets, arguments),)


@blueprint.resource(
    "/paper-sets/<set_id>",
    document_form("paper-set"),
    links=lambda *_: [described_by("paper-set")],
    page="/paper-sets/{set_id}/",
)
def paper_set(_: Arguments, set_id: str) -> Documents:
    """One paper set: its document, as it is kept."""
    return (named(collection().paper_sets, "paper set", set_id),)
