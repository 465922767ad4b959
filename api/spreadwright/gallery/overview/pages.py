"""The pages about many recipes: the index, paper sets, tags and authors, and every one of them."""

from collections.abc import Iterator, Sequence

from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.overview.feeds import FeedLink
from spreadwright.gallery.overview.finding import found_by, kinds, laid_out
from spreadwright.gallery.overview.groups import authors, tags
from spreadwright.gallery.overview.paper_set import paper_set_page
from spreadwright.gallery.shell import PageOf
from spreadwright.model import PaperSet


def overviews(recipes: Sequence[Facts], papers: Sequence[PaperSet], feeds: Sequence[FeedLink] = ()) -> Iterator[PageOf]:
    """Every page about many recipes, in the language that is spoken, which is that of the facts."""
    ordered = laid_out(recipes)
    sets = [paper_set_page(each, ordered) for each in papers]
    groups = {"tag": tags(ordered), "author": authors(ordered)}
    everywhere = {"set_titles": {each.id: each.title for each in papers}, "recipes": ordered, "feeds": feeds}
    found = {"kinds": kinds(ordered), "found_by": found_by(ordered)}
    yield "index.html", "index.html", {**everywhere, **found, "sets": sets, "tags": groups["tag"]}
    yield "paper_sets.html", "paper-sets/index.html", {**everywhere, "sets": sets}
    for each in sets:
        yield "paper_set.html", each.path, {**everywhere, "set": each}
    for kind, named in groups.items():
        yield "groups.html", f"{kind}s/index.html", {**everywhere, "kind": kind, "groups": named}
        for group in named:
            yield "group.html", group.path, {**everywhere, "kind": kind, "group": group}
