"""A small collection with awkward titles, and what is found in a built folder."""

import hashlib
import json
from collections.abc import Iterator
from copy import deepcopy
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

from builder import PAPERS, SOUND

HOSTILE = '<script>alert(1)</script> & *stars* "quoted" {{ 7 * 7 }} ' + 12 * "wide"

SINGLE = {
    "schema": "recipe/1",
    "title": HOSTILE,
    "summary": "<img src=x onerror=alert(2)> of 10 mm",
    "authors": ["Nobody" * 12],
    "language": "en",
    "unit": "mm",
    "spread": {"pages": ["page"], "size": ["300", "300"]},
    "roles": {"plain": {"kind": "plain", "title": "<b>Plain</b>"}},
    "sheets": [
        {"role": "plain", "size": ["300", "300"], "piece": "base"},
        {
            "role": "plain",
            "size": ["300", "300"],
            "columns": [{"width": "292", "piece": "mat"}, {"width": "rest", "piece": "sliver"}],
        },
    ],
    "placements": [
        {"piece": "base", "page": "page", "left": "0", "top": "0"},
        {"piece": "mat", "page": "page", "left": "8", "top": "0"},
        {"piece": "sliver", "page": "page", "left": "0", "top": "0"},
    ],
    "photos": [{"on": "mat", "border": "5"}],
}

METRIC_PAPERS = {
    "schema": "paper-set/1",
    "title": "Kitchen <i>table</i>",
    "summary": "Flour on sheets of 300 × 300 mm.",
    "unit": "mm",
    "papers": [
        {
            "id": "main",
            "title": "Flour",
            "size": ["300", "300"],
            "front": {"pattern": "linen", "colours": ["#f7f1e8"]},
        },
    ],
}

METRIC_BENCH = {
    "schema": "bench/1",
    "title": "320 mm arm trimmer with a millimetre scale",
    "unit": "mm",
    "trimmer": {"length": "320", "graduation": "1", "measures": "kept", "shortest": "12"},
    "ruler": {"graduation": "1"},
}


def write_collection(folder: Path) -> Path:
    """Two recipes, two paper sets and a bench; each recipe can be laid in one of the sets."""
    in_other_papers = deepcopy(PAPERS) | {"title": "Harbour"}
    documents = {
        "window-seat.json": SOUND,
        "one page.json": SINGLE,
        "paper-sets/two.json": in_other_papers,
        "paper-sets/kitchen.json": METRIC_PAPERS,
        "benches/bench-metric.json": METRIC_BENCH,
    }
    for name, document in documents.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(json.dumps(document))
    return folder


@dataclass
class Html(HTMLParser):
    """What a page links to, loads and names."""

    page: Path
    links: list[str] = field(default_factory=list)
    loads: list[str] = field(default_factory=list)
    ids: list[str] = field(default_factory=list)
    headings: list[int] = field(default_factory=list)
    images: list[dict[str, str | None]] = field(default_factory=list)
    tags: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__()
        self.feed(self.page.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        self.tags.append(tag)
        self.ids += [value for key, value in attrs if key == "id" and value]
        if tag == "a" and given.get("href"):
            self.links.append(str(given["href"]))
        if tag in ("link", "img", "script") and (given.get("href") or given.get("src")):
            self.loads.append(str(given.get("href") or given.get("src")))
        if tag == "img":
            self.images.append(given)
        if tag in ("h1", "h2", "h3", "h4", "h5", "h6"):
            self.headings.append(int(tag[1]))


def pages(site: Path) -> list[Html]:
    """Every page of a built site, by path."""
    return [Html(page) for page in sorted(site.rglob("*.html"))]


def dead_ends(site: Path) -> Iterator[str]:
    """Links and loads within the site that lead to no file, or to no place on a page."""
    built = {html.page.resolve(): html for html in pages(site)}
    for html in built.values():
        for address in html.links + html.loads:
            target = _target(site, html.page, address)
            if target is None:
                continue
            place = urlsplit(address).fragment
            place = "" if "=" in place else place  # states what the page shows, and is no place on it
            if not target.is_file() or (place and place not in built[target].ids):
                yield f"{html.page.relative_to(site)}: {address}"


def _target(site: Path, page: Path, address: str) -> Path | None:
    parts = urlsplit(address)
    if parts.scheme:
        return None
    path = unquote(parts.path)
    if path.startswith("/"):
        return (site / path[1:]).resolve()
    return (page.parent / path).resolve() if path else page.resolve()


def fingerprints(site: Path) -> dict[str, str]:
    """A digest of every file, by path."""
    files = sorted(file for file in site.rglob("*") if file.is_file())
    return {str(file.relative_to(site)): hashlib.sha256(file.read_bytes()).hexdigest() for file in files}
