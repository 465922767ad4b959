"""Lists of documents: what a query asks for, a page of them, and the link to the next one.

A page goes on after the last document of the one before, so that nothing is missed or seen twice while others write.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from spreadwright.errors import UnreadableLength
from spreadwright.lengths import Unit, ticks
from spreadwright.rest.forms import Arguments
from spreadwright.rest.identity import bearer, caller
from spreadwright.rest.links import here
from spreadwright.rest.parameters import wrong
from spreadwright.rest.service import service
from spreadwright.store.facts import COUNTED
from spreadwright.store.values import Document, State
from spreadwright.store.wanted import Range, Wanted

MOST_COUNTED = 1000
"""Counting further would take longer, the more there is."""
_SEVERAL = ("tag", "author", "role")


@dataclass(frozen=True, slots=True)
class Page:
    """Some documents of a list of `count`, and what the next page is asked for with."""

    items: tuple[Document, ...]
    count: int
    next: str | None


def page_of(kind: str, arguments: Arguments) -> Page:
    """The page that a query asks for.

    Raises:
        BadQuery: Something in it is not understood.
        NoToken, Forbidden: Other documents than published ones are asked for by somebody who may not read them.
    """
    wanted = wanted_of(kind, arguments)
    listing = service().store.listing
    found = listing.page(wanted)
    return Page(found.documents, listing.count(wanted, most=MOST_COUNTED), found.next)


def wanted_of(kind: str, arguments: Arguments) -> Wanted:
    """What the store is asked for; raises like `page_of`."""
    states, owner = _readable(arguments)
    ranges: dict[str, Any] = {name: range_of(arguments[name]) for name in COUNTED if name in arguments}
    several = {f"{name}s": _split(arguments.get(name, "")) for name in _SEVERAL}
    return Wanted(
        kind=kind,
        states=states,
        owner=owner,
        words=arguments.get("q", ""),
        tags=several["tags"],
        authors=several["authors"],
        roles=several["roles"],
        licence=arguments.get("licence"),
        language=arguments.get("lang"),
        page_size=_size(arguments["page_size"]) if "page_size" in arguments else None,
        **ranges,
        sort=arguments["sort"],
        limit=min(arguments["limit"], service().settings.list_items),
        after=arguments.get("after"),
    )


def _readable(arguments: Arguments) -> tuple[tuple[State, ...], str | None]:
    """States and owner; drafts and withdrawn documents are for their owners and for reviewers."""
    state, owner = State(arguments["state"]), arguments.get("owner")
    if state is State.PUBLISHED:
        return (state,), owner
    token = caller() or bearer("write")
    if token.may("review"):
        return (state,), owner
    if owner not in (None, token.owner):
        bearer("review")
    return (state,), token.owner


def _split(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.split(",") if part.strip())


def range_of(text: str) -> Range:
    """The range that text says, which `RANGE` matches.

    >>> range_of("2..4")
    Range(least=2, most=4)
    """
    least, dots, most = text.partition("..")
    return Range(int(least) if least else None, int(most) if most else None if dots else int(least))


def _size(text: str) -> tuple[int, int]:
    sides = re.split(r"[x×]", text)
    try:
        width, height = (ticks(side.strip(), Unit.INCH) for side in sides)
    except (UnreadableLength, ValueError):
        remedy = "Write it like 12x12 or 297 mm x 210 mm; inches when it has no unit."
        raise wrong("page_size", "This is no size.", remedy) from None
    return width, height


def links_of(_: Arguments, page: Page) -> Iterable[str]:
    """The links from one page to the first and to the next."""
    return links_after(page.next)


def links_after(following: str | None) -> Iterable[str]:
    """The links to the first page, and to the one that goes on from a place."""
    return here("after", ("first", None), *([("next", following)] if following else []))


def item_of(document: Document, arguments: Arguments, links: dict[str, str], **figures: Any) -> dict[str, Any]:
    """What a list tells of each document, as far as it is asked for: what any kind has, and figures of its own."""
    head, facts = document.head, document.facts
    told = {
        "id": document.id,
        "title": facts.title,
        "summary": facts.summary,
        "authors": list(facts.authors),
        "licence": facts.licence,
        "language": facts.language,
        "tags": list(facts.tags),
        "state": head.state.value,
        "revision": head.revision,
        "changed_at": head.changed_at.isoformat(),
        "links": links,
        **figures,
    }
    fields = _split(arguments.get("fields", ""))
    return {name: told[name] for name in told if name == "id" or name in fields} if fields else told
