"""A bench's document to its model."""

from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.document.recipe import unit_of
from spreadwright.errors import Finding
from spreadwright.model import (
    COMMON_ADHESIVES,
    INCH_BENCH,
    Adhesive,
    Bench,
    Hand,
    Measures,
    Ruler,
    Trimmer,
    Wetness,
    Zero,
)

_ZEROS = {
    "end": frozenset({Zero.END}),
    "middle": frozenset({Zero.MIDDLE}),
    "both": frozenset({Zero.END, Zero.MIDDLE}),
}
_MOST_SHEETS_AT_ONCE = 10


def bench_model(document: Any, bench_id: str) -> tuple[Bench, tuple[Finding, ...]]:
    """The model of a bench's document, and what its lengths have wrong; the inch bench fills what cannot be read."""
    findings: list[Finding] = []
    root = Cursor(document, unit_of(document), findings)
    model = Bench(
        id=bench_id,
        title=root.text("title", bench_id),
        unit=unit_of(document),
        trimmer=_trimmer(root.child("trimmer")),
        ruler=_ruler(root.child("ruler")),
        adhesives=_adhesives(root.child("adhesives")) if root.has("adhesives") else COMMON_ADHESIVES,
    )
    return model, tuple(findings)


def _trimmer(trimmer: Cursor) -> Trimmer:
    fallback = INCH_BENCH.trimmer
    return Trimmer(
        length=trimmer.length("length", least=1) or fallback.length,
        graduation=trimmer.length("graduation", least=1) or fallback.graduation,
        measures=Measures.FALLING if trimmer.text("measures") == "falling" else Measures.KEPT,
        shortest=trimmer.length("shortest", "1/2 in") or 0,
        hand=Hand.LEFT if trimmer.text("hand") == "left" else Hand.RIGHT,
        stack=trimmer.count("stack", 1, 1, _MOST_SHEETS_AT_ONCE),
        accuracy=trimmer.length("accuracy", "1/64 in") or 0,
    )


def _ruler(ruler: Cursor) -> Ruler:
    return Ruler(
        graduation=ruler.length("graduation", least=1) or INCH_BENCH.ruler.graduation,
        width=ruler.length("width") or 0,
        zeros=_ZEROS.get(ruler.text("zero"), _ZEROS["end"]),
    )


def _adhesives(adhesives: Cursor) -> tuple[Adhesive, ...]:
    return tuple(
        Adhesive(Wetness.LIQUID if each.text("kind") == "liquid" else Wetness.DRY, width)
        for each in adhesives.items()
        if (width := each.length("width", least=1))
    )
