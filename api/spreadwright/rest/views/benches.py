"""The benches."""

from typing import Any

from spreadwright.rest.document_history import add_history
from spreadwright.rest.document_writes import add_writes
from spreadwright.rest.documents import document_form, tag_of
from spreadwright.rest.documents import links_of as links_of_document
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address
from spreadwright.rest.list_envelopes import BenchList
from spreadwright.rest.lists import Page, item_of, links_of, page_of
from spreadwright.rest.queries import FilterQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.store.values import Document

blueprint = Resources("benches", __name__, description=__doc__)


def _list(arguments: Arguments, page: Page) -> dict[str, Any]:
    return {"count": page.count, "benches": [_item(each, arguments) for each in page.items]}


def _item(bench: Document, arguments: Arguments) -> dict[str, Any]:
    links = {"self": address("benches.bench", bench_id=bench.id)}
    unit = collection().reading(bench).model.unit.value
    return item_of(bench, arguments, links, unit=unit)


@blueprint.resource("/benches", json_form(_list, BenchList, is_work=False), query=FilterQuery, links=links_of)
def benches(arguments: Arguments) -> Documents:
    """The benches; filtered, searched and sorted as the query says."""
    return (page_of("benches", arguments),)


@blueprint.resource("/benches/<bench_id>", document_form("benches"), links=links_of_document, tag=tag_of)
def bench(_: Arguments, bench_id: str) -> Documents:
    """One bench: its document, as it is kept."""
    return (collection().head("benches", bench_id),)


add_writes(blueprint, "benches")
add_history(blueprint, "benches")
