"""A stretch of a list, and the links to the others."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Generic, TypeVar

from spreadwright.rest.forms import Arguments
from spreadwright.rest.links import page_links

Item = TypeVar("Item")


@dataclass(frozen=True, slots=True)
class Page(Generic[Item]):
    """Some items of a list that has `count` of them, after the first `start`."""

    items: tuple[Item, ...]
    start: int
    limit: int
    count: int


def page_of(documents: Mapping[str, Item], arguments: Arguments) -> Page[Item]:
    """The stretch that a query asks for."""
    start, limit = arguments["start"], arguments["limit"]
    return Page(tuple(islice(documents.values(), start, start + limit)), start, limit, len(documents))


def links_of(_: Arguments, page: "Page[Item]") -> Iterable[str]:
    """The links from one page to the others."""
    return page_links(page.start, page.limit, page.count)
