"""The benches of the collection."""

from typing import Any

from spreadwright.document import Reading
from spreadwright.model import Bench
from spreadwright.rest.documents import document_form, named
from spreadwright.rest.envelopes import BenchList
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.links import address, described_by
from spreadwright.rest.lists import Page, links_of, page_of
from spreadwright.rest.queries import PageQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection

blueprint = Resources("benches", __name__, description=__doc__)


def _list(_: Arguments, page: Page[Reading[Bench]]) -> dict[str, Any]:
    return {"count": page.count, "start": page.start, "benches": [_item(each.model) for each in page.items]}


def _item(bench: Bench) -> dict[str, Any]:
    links = {"self": address("benches.bench", bench_id=bench.id)}
    return {"id": bench.id, "title": bench.title, "unit": bench.unit.value, "links": links}


@blueprint.resource("/benches", json_form(_list, BenchList), query=PageQuery, links=links_of)
def benches(arguments: Arguments) -> Documents:
    """The benches, by id."""
    return (page_of(collection().benches, arguments),)


@blueprint.resource("/benches/<bench_id>", document_form("bench"), links=lambda *_: [described_by("bench")])
def bench(_: Arguments, bench_id: str) -> Documents:
    """One bench: its document, as it is kept."""
    return (named(collection().benches, "bench", bench_id),)
