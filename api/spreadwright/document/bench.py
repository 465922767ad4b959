"""A bench's document to its model."""

from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.document.recipe import unit_of
from spreadwright.errors import Finding
from spreadwright.model import INCH_BENCH, Bench, Measures, Trimmer


def bench_model(document: Any, bench_id: str) -> tuple[Bench, tuple[Finding, ...]]:
    """The model of a bench's document, and what its lengths have wrong; the inch bench fills what cannot be read."""
    findings: list[Finding] = []
    root = Cursor(document, unit_of(document), findings)
    trimmer, fallback = root.child("trimmer"), INCH_BENCH.trimmer
    model = Bench(
        id=bench_id,
        title=root.text("title", bench_id),
        unit=unit_of(document),
        trimmer=Trimmer(
            length=trimmer.length("length", least=1) or fallback.length,
            graduation=trimmer.length("graduation", least=1) or fallback.graduation,
            measures=Measures.FALLING if trimmer.text("measures") == "falling" else Measures.KEPT,
            shortest=trimmer.length("shortest", "1/2 in") or 0,
        ),
        ruler_graduation=root.child("ruler").length("graduation", least=1) or INCH_BENCH.ruler_graduation,
    )
    return model, tuple(findings)
