"""The gallery of many recipes beside bare MkDocs: `python -m tests.bench.gallery [--recipes 1000] [--sets 8]`.

Recipes and paper sets are those that ship, each with a title, and each set with colours, of its own. All figures are
seconds of the processor, of all processes together, so that other people's work weighs little; what else the machine
did stands beside them as its load. The parts are told apart on a few recipes (`--sample`), made one after the
other in this process, and taken for all: the rasteriser is cairosvg and the encoders of Pillow, the press weasyprint.
Bare MkDocs builds as many pages, each of a heading and a paragraph, with its smallest theme.
"""

import argparse
import importlib
import json
import os
import random
import re
import resource
import shutil
import time
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from html.parser import HTMLParser
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from unittest.mock import patch

from spreadwright import shipped
from spreadwright.gallery import Kept, Site, build, collected
from spreadwright.gallery.make import made_recipe, recipe_orders
from spreadwright.store import Collection

PARTS = {
    "rasteriser": ("cairosvg.surface:Surface.__init__", "cairosvg.parser:Tree.__init__", "PIL.Image:Image.save"),
    "press": ("spreadwright.drawing.booklet.book:printed", "spreadwright.drawing.templates.book:printed"),
    "pages": ("spreadwright.gallery.shell:Shell.page",),
}
MAKERS = "makers"


def generated(folder: Path, recipes: int, sets: int, seed: int = 2026) -> Path:
    """A collection of so many recipes and paper sets."""
    chance, ours = random.Random(seed), shipped.folder("recipes")
    shutil.copytree(ours / "benches", folder / "benches")
    (folder / "paper-sets").mkdir()
    for number, source in zip(range(sets), _around(ours / "paper-sets"), strict=False):
        name, text = f"set-{number:02}", source.read_text()
        turned = dict.fromkeys(re.findall(r"#[0-9a-f]{6}", text))
        for colour in turned if number >= len(list(ours.glob("paper-sets/*.json"))) else ():
            text = text.replace(colour, "#" + "".join(chance.sample([colour[1:3], colour[3:5], colour[5:7]], 3)))
        (folder / "paper-sets" / f"{name}.json").write_text(text)
        if source.with_suffix("").is_dir():
            shutil.copytree(source.with_suffix(""), folder / "paper-sets" / name)
    for number, source in zip(range(recipes), _around(ours), strict=False):
        document = json.loads(source.read_text())
        document["title"] += f" {number}"
        (folder / f"recipe-{number:04}.json").write_text(json.dumps(document))
    return folder


def _around(folder: Path) -> Iterator[Path]:
    while True:
        yield from sorted(folder.glob("*.json"))


class Clock:
    """Seconds of the processor by part; a part that calls another does not count it as its own."""

    def __init__(self) -> None:
        self.seconds: dict[str, float] = defaultdict(float)
        self._parts, self._since = [MAKERS], time.process_time()

    @contextmanager
    def running(self, part: str) -> Iterator[None]:
        """Counts for a part."""
        self._turn(lambda: self._parts.append(part))
        try:
            yield
        finally:
            self._turn(self._parts.pop)

    def _turn(self, move: Callable[[], Any]) -> None:
        now = time.process_time()
        self.seconds[self._parts[-1]] += now - self._since
        self._since = now
        move()

    @contextmanager
    def attached(self) -> Iterator[None]:
        """Counts every part wherever it is called."""
        patches = [self._patch(name, part) for part, names in PARTS.items() for name in names]
        for each in patches:
            each.start()
        self._since = time.process_time()
        try:
            yield
        finally:
            self._turn(lambda: None)
            for each in patches:
                each.stop()

    def _patch(self, name: str, part: str) -> Any:
        module, _, path = name.partition(":")
        holder: Any = importlib.import_module(module)
        *within, last = path.split(".")
        for each in within:
            holder = getattr(holder, each)
        called = getattr(holder, last)

        def counted(*args: Any, **kwargs: Any) -> Any:
            with self.running(part):
                return called(*args, **kwargs)

        return patch.object(holder, last, counted)


def parts(collection: Collection, sample: int) -> dict[str, float]:
    """Seconds by part for one recipe, the mean of a few; what is loaded once is not counted."""
    orders = recipe_orders(collected(collection), Site())
    made_recipe(orders[-1])
    chosen, clock = orders[:: -(-len(orders) // sample)], Clock()
    with clock.attached():
        for order in chosen:
            made_recipe(order)
    return {part: seconds / len(chosen) for part, seconds in clock.seconds.items()}


def bare_mkdocs(pages: int, folder: Path) -> float:
    """Seconds that MkDocs takes for so many small pages of which one stands in the navigation."""
    from mkdocs.commands.build import build as build_site
    from mkdocs.config import load_config

    (folder / "docs").mkdir(parents=True)
    (folder / "docs" / "index.md").write_text("# Index\n")
    for number in range(pages - 1):
        (folder / "docs" / f"page-{number}.md").write_text(f"# Page {number}\n\nA paragraph of *some* words.\n")
    (folder / "mkdocs.yml").write_text(
        "site_name: Bare\nplugins: []\ntheme: mkdocs\nnav: [index.md]\nnot_in_nav: '/page-*.md'\n"
    )
    return _seconds(lambda: build_site(load_config(str(folder / "mkdocs.yml"), site_dir=str(folder / "site"))))[0]


def _seconds(do: Callable[[], Any]) -> tuple[float, float]:
    """Of the processor, all processes together, and on the wall."""
    before, begun = _used(), time.monotonic()
    do()
    return _used() - before, time.monotonic() - begun


def _used() -> float:
    both = (resource.getrusage(who) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
    return sum(each.ru_utime + each.ru_stime for each in both)


class Loads(HTMLParser):
    """What a page loads at once, by address."""

    def __init__(self, page: Path) -> None:
        super().__init__()
        self.addresses: list[str] = []
        self.feed(page.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        is_sheet = tag == "link" and given.get("rel") in ("stylesheet", "icon", "preload")
        if is_sheet or tag == "script" or (tag == "img" and given.get("loading") != "lazy"):
            self.addresses.append(str(given.get("href") or given.get("src") or ""))


def weight_kb(page: Path) -> tuple[float, float]:
    """Kilobytes of a page itself, and of it with all that it loads at once, but for typefaces; nothing compressed."""
    own = page.stat().st_size
    loads = {(page.parent / address).resolve() for address in Loads(page).addresses if address}
    return own / 1000, (own + sum(each.stat().st_size for each in loads if each.is_file())) / 1000


def measured(folder: Path, recipes: int, sets: int, sample: int, processes: int | None) -> None:
    """Prints the whole table."""
    source, output = generated(folder / "collection", recipes, sets), folder / "gallery"
    kept = Kept(folder / "kept")

    def made() -> tuple[float, float]:
        return _seconds(lambda: build(Collection(source), output, processes=processes, kept=kept))

    def told(what: str, seconds: tuple[float, float]) -> None:
        share = f"{seconds[0] / full[0]:7.1%}" if what != "full build" else ""
        print(f"{what:34}{seconds[0]:9.1f} s {seconds[1]:9.1f} s on the wall {share}", flush=True)

    print(f"{recipes} recipes, {sets} sets, {processes or os.cpu_count()} processes; load {os.getloadavg()[0]:.1f}")
    full = made()
    told("full build", full)
    told("again, nothing changed", made())
    changed = source / "recipe-0000.json"
    changed.write_text(changed.read_text().replace('"title": "', '"title": "Another '))
    told("again, one recipe changed", made())
    pages = sum(1 for _ in output.rglob("*.html"))
    bare = bare_mkdocs(pages, folder / "bare")
    each = parts(Collection(source), sample)
    for part, seconds in sorted(each.items()):
        print(f"  {part:32}{seconds * recipes:9.1f} s {seconds:9.2f} s a recipe")
    rasteriser, press = (each[part] * recipes for part in ("rasteriser", "press"))
    print(f"bare MkDocs, {pages} pages {bare:20.1f} s")
    print(f"full build / (bare MkDocs + rasteriser)          {full[0] / (bare + rasteriser):.2f}")
    print(f"full build / (bare MkDocs + rasteriser + press)  {full[0] / (bare + rasteriser + press):.2f}")
    for name in ("index.html", "recipes/recipe-0000/index.html"):
        own, whole = weight_kb(output / name)
        print(f"{name}: {own:.0f} kB, with what it loads at once {whole:.0f} kB")
    print(f"load {os.getloadavg()[0]:.1f}")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--recipes", type=int, default=1000)
    parser.add_argument("--sets", type=int, default=8)
    parser.add_argument("--sample", type=int, default=10)
    parser.add_argument("--processes", type=int)
    given = parser.parse_args()
    with TemporaryDirectory(prefix="spreadwright-bench-") as made_in:
        measured(Path(made_in), given.recipes, given.sets, given.sample, given.processes)
