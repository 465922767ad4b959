"""Documents and answers to bytes: one canonical form, so that equal values give equal bytes."""

import json
from collections.abc import Iterator
from typing import Any

from spreadwright.document.recipe import MOST_TIMES
from spreadwright.geometry import Size
from spreadwright.lengths import Unit, written
from spreadwright.model import Axis, Branch, Content, Leaf, Sheet, Use


def canonical(value: Any) -> bytes:
    """JSON with two spaces of indentation, members in the order given, UTF-8, one newline at the end."""
    return (json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False) + "\n").encode()


def sheet_document(sheet: Sheet, unit: Unit) -> dict[str, Any]:
    """A sheet of known size as a recipe of that unit holds it."""
    size = sheet.size or Size(0, 0)
    return {
        "role": sheet.role,
        "size": [written(size.width, unit), written(size.height, unit)],
        **_times(sheet.times),
        **content_document(sheet.content, unit),
    }


def content_document(content: Content, unit: Unit) -> dict[str, Any]:
    """The members that a cut tree adds to its part in a recipe of that unit; read again they give the same tree.

    More equal branches than one member may count are written as several.
    """
    if isinstance(content, Leaf):
        return _leaf(content)
    side = "width" if content.axis is Axis.COLUMNS else "height"
    return {
        content.axis.value: [
            {side: _extent(branch, unit), **_times(times), **content_document(branch.content, unit)}
            for branch in content.branches
            for times in _shares(branch.times)
        ]
    }


def _leaf(leaf: Leaf) -> dict[str, Any]:
    if leaf.use is Use.PIECE:
        return {"piece": leaf.name}
    return {"spare": True} if leaf.use is Use.SPARE else {}


def _extent(branch: Branch, unit: Unit) -> str:
    return "rest" if branch.is_rest or branch.extent is None else written(branch.extent, unit)


def _times(times: int) -> dict[str, int]:
    return {"times": times} if times > 1 else {}


def _shares(times: int) -> Iterator[int]:
    while times > 0:
        yield min(times, MOST_TIMES)
        times -= MOST_TIMES
