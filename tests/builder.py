"""A small sound recipe as a document, and ways of spoiling it."""

import json
from collections.abc import Callable
from copy import deepcopy
from typing import Any

Document = dict[str, Any]

SOUND: Document = {
    "schema": "recipe/1",
    "title": "Window seat",
    "summary": "Three photos round a quiet square.",
    "authors": ["The Spreadwright maintainers"],
    "licence": "CC-BY-4.0",
    "language": "en",
    "tags": ["home"],
    "unit": "in",
    "spread": {"pages": ["left", "right"], "size": ["12", "12"]},
    "roles": {
        "background": {"kind": "plain"},
        "plain": {"kind": "plain"},
        "print": {"kind": "patterned", "directional": True},
    },
    "sheets": [
        {"role": "background", "size": ["12", "12"], "piece": "base", "times": 2},
        {
            "role": "plain",
            "size": ["12", "12"],
            "columns": [
                {
                    "width": "7",
                    "rows": [
                        {"height": "7", "piece": "panel"},
                        {"height": "5", "columns": [{"width": "3 1/2", "piece": "mat", "times": 2}]},
                    ],
                },
                {"width": "rest", "rows": [{"height": "rest", "piece": "tile", "times": 2}]},
            ],
        },
        {
            "role": "print",
            "size": ["12", "12"],
            "rows": [
                {"height": "3", "piece": "strip", "times": 2},
                {"height": "rest", "columns": [{"width": "6", "piece": "block", "times": 2}]},
            ],
        },
    ],
    "placements": [
        {"piece": "base-1", "page": "left", "left": "0", "top": "0"},
        {"piece": "base-2", "page": "right", "left": "0", "top": "0"},
        {"piece": "strip-1", "page": "left", "left": "0", "top": "7"},
        {"piece": "strip-2", "page": "right", "left": "0", "top": "7"},
        {"piece": "panel", "page": "left", "left": "0", "top": "0"},
        {"piece": "tile-1", "page": "left", "right": "1/4", "top": "1/2"},
        {"piece": "block-1", "page": "right", "left": "1/2", "top": "1/2"},
        {"piece": "block-2", "page": "right", "right": "1/4", "bottom": "1/4"},
        {"piece": "tile-2", "page": "right", "right": "1/4", "top": "1/4"},
        {"piece": "mat-1", "page": "right", "left": "1/2", "bottom": "1/4"},
        {"piece": "mat-2", "page": "left", "left": "5", "bottom": "1/4"},
    ],
    "photos": [{"on": "panel", "border": "1/4"}, {"on": "mat-1"}, {"on": "mat-2"}],
    "captions": [{"on": "tile-2"}],
}

PAPERS: Document = {
    "schema": "paper-set/1",
    "title": "Two and two",
    "unit": "in",
    "papers": [
        {"id": "fog", "title": "Fog", "size": ["12", "12"], "front": {"pattern": "linen", "colours": ["#dfe3e3"]}},
        {"id": "slate", "title": "Slate", "size": ["12", "12"], "front": {"pattern": "plain", "colours": ["#40505c"]}},
        {
            "id": "rope",
            "title": "Rope stripe",
            "size": ["12", "12"],
            "front": {"pattern": "stripe", "colours": ["#f4efe6", "#2f4858"], "repeat": "12 mm"},
        },
        {
            "id": "reed",
            "title": "Reed",
            "size": ["12", "12"],
            "front": {"pattern": "leaf", "colours": ["#eef0e6", "#6b7f5b"], "repeat": "24 mm", "directional": True},
            "back": {"pattern": "dots", "colours": ["#6b7f5b", "#eef0e6"], "repeat": "9 mm"},
        },
    ],
}


def spoilt(spoil: Callable[[Document], Any], document: Document = SOUND) -> bytes:
    """The bytes of a copy after something was done to it."""
    copied = deepcopy(document)
    spoil(copied)
    return json.dumps(copied).encode()


def sound() -> bytes:
    """The bytes of the sound recipe."""
    return json.dumps(SOUND).encode()
