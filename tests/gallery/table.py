"""A table of many layouts without making any of them: varied facts, the pages about them, pictures of one spread."""

import json
import shutil
from collections.abc import Sequence
from pathlib import Path
from random import Random

from builder import PAPERS
from spreadwright import shipped
from spreadwright.document import read_paper_set
from spreadwright.gallery.offline import offline_files
from spreadwright.gallery.overview.facts import Facts
from spreadwright.gallery.overview.page_size import PageSize
from spreadwright.gallery.overview.pages import overviews
from spreadwright.gallery.overview.paper_set import paper_set_files
from spreadwright.gallery.recipe.thumbnails import Thumbnail
from spreadwright.gallery.shell import Shell
from spreadwright.gallery.site import Site
from spreadwright.model import PaperSet
from spreadwright.tasks.difficulty import Difficulty

SETS = {"fog": "Fog bank", "hill": "Hillside", "rust": "Rusty gate"}
_WORDS = ("Été", "märz", "Straße", "attic", "button", "jar", "kite", "lake", "moss", "tide", "tram", "window", "Zoë")
_TAGS = ("band", "grid", "row", "woven", "year")
_AUTHORS = ("Anna Böhm", "The Thursday table", "水彩")
_SIZES = (PageSize(97536, 97536, "in"), PageSize(97536, 97536, "mm"), PageSize(67200, 67200, "mm"))


def papers() -> tuple[PaperSet, ...]:
    """Three paper sets of the same papers."""
    named = [(set_id, PAPERS | {"title": title}) for set_id, title in SETS.items()]
    return tuple(read_paper_set(json.dumps(document).encode(), set_id).model for set_id, document in named)


def varied(count: int) -> tuple[Facts, ...]:
    """So many layouts, no two alike, the same each time."""
    chance = Random(20261130)
    return tuple(_one(f"layout-{number}", chance) for number in range(count))


def _one(recipe_id: str, chance: Random) -> Facts:
    pages = chance.choice((1, 2, 2))
    title = " ".join(chance.sample(_WORDS, 2)).capitalize()
    sets = chance.sample(sorted(SETS), chance.choice((1, 2, 3, 3)))
    return Facts(
        id=recipe_id,
        title=f"{title} {recipe_id.split('-')[1]}",
        language="en",
        summary=f"A row of {chance.choice(_WORDS)} above a strip.",
        authors=tuple(chance.sample(_AUTHORS, chance.choice((0, 1, 2)))),
        licence=chance.choice(("CC-BY-4.0", "CC0-1.0", "")),
        tags=tuple(chance.sample(_TAGS, chance.choice((0, 1, 2, 3)))),
        pages=pages,
        sheets=chance.randrange(1, 6),
        photos=chance.randrange(0, 9),
        cuts=chance.randrange(0, 40),
        plain=chance.randrange(1, 4),
        patterned=chance.randrange(0, 3),
        roles=("Background", "Ribbon"),
        page=chance.choice(_SIZES),
        difficulty=Difficulty(chance.randrange(40, 220)),
        thumbnails=tuple(_thumbnail(recipe_id, set_id, pages) for set_id in sets),
        in_greys=None,
    )


def _thumbnail(recipe_id: str, set_id: str, pages: int) -> Thumbnail:
    shape = (480, 720, 1280) if pages == 2 else (254, 381, 677)
    return Thumbnail(
        set_id=set_id,
        set_title=SETS[set_id],
        papers=("Paper one", "Paper two"),
        stem=f"pictures/{recipe_id}/in-{set_id}",
        widths_px=shape,
        height_px=678 if pages == 2 else 677,
        colours=("#e5d8c0", "#3b4f5c"),
        bleed_percent=3.125 if pages == 2 else 6.25,
        pages_wide=pages,
        shape=float(pages),
    )


def write_table(folder: Path, recipes: Sequence[Facts], pictures: dict[int, bytes]) -> Path:
    """The pages about these layouts; `pictures` by their width, the same for every layout and set."""
    site = Site(("en",))
    around = Shell(site)
    shutil.copytree(shipped.folder("site") / "theme" / "assets", folder / "assets")
    files = dict(offline_files(around, site))
    for each in papers():
        files |= paper_set_files(each)
    for recipe in recipes:
        paths = [
            (path, width) for each in recipe.thumbnails for path, width in zip(each.paths, each.widths_px, strict=True)
        ]
        files |= {path: pictures[width] for path, width in paths}
        files[recipe.path] = b"<!doctype html><title>Layout</title>"
    for template, path, shown in overviews(recipes, papers()):
        files[path] = around.page(template, path, "en", shown)
    for path, data in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)
    return folder
