"""A small collection whose papers are exchanged in every way: turned pieces, backs up, one-way prints, few sheets."""

import json
from copy import deepcopy
from pathlib import Path

from builder import PAPERS, SOUND, Document

SLATE = "Slate $& $$ {paper}"
"""A title with signs that mean something where text is put into text."""


def turned_and_back() -> Document:
    """The sound recipe with a turned print, a back that is up, and a role whose name means something in addresses."""
    recipe = deepcopy(SOUND) | {"title": "Window seat, turned"}
    recipe["roles"] = {
        ("in" if name == "plain" else name): role | {"title": name.title()} for name, role in recipe["roles"].items()
    }
    recipe["roles"]["background"] |= {"kind": "any", "directional": True}
    recipe["sheets"][1]["role"] = "in"
    placed = {each["piece"]: each for each in recipe["placements"]}
    del recipe["roles"]["print"]["directional"]
    placed["block-1"] |= {"turned": True, "face": "back"}
    placed["block-2"]["turned"] = True
    placed["tile-1"]["face"] = "back"
    placed["strip-2"]["face"] = "back"
    recipe["captions"] = [{"on": "tile-2"}, {"on": "tile-1"}]
    return recipe


def wharf() -> Document:
    """Other papers under other names: dyed through, one with a single sheet, one of another size."""
    papers = deepcopy(PAPERS) | {"title": "Wharf"}
    colours = {"fog": ["#20303a"], "slate": ["#b5543a"], "rope": ["#e9dfc8", "#7a2f2a"], "reed": ["#e8e0cc", "#b5543a"]}
    for paper in papers["papers"]:
        paper["front"]["colours"] = colours[paper["id"]]
        paper["core"] = "dyed"
    papers["papers"][1] |= {"sheets": 1, "title": SLATE}
    small = {"id": "chart", "title": "Chart", "size": ["8", "8"], "front": {"pattern": "dots", "colours": ["#2f4858"]}}
    papers["papers"].append(small)
    return papers


def write_exchanged(folder: Path) -> Path:
    """A recipe and two paper sets in which it can be laid."""
    documents = {
        "turned.json": turned_and_back(),
        "paper-sets/two.json": PAPERS,
        "paper-sets/wharf.json": wharf(),
    }
    for name, document in documents.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(json.dumps(document))
    return folder
