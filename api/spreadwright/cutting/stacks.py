"""Which sheets are cut together: equal ones, as many as the trimmer takes."""

from collections.abc import Sequence

from spreadwright.cutting.measured import Gauge, Measured
from spreadwright.cutting.parts import CutSheet
from spreadwright.model import Trimmer, Use

Stack = tuple[tuple[CutSheet, Measured], ...]
"""Sheets that lie on one another, each with its readings, which are equal; most often one."""


def stacks(sheets: Sequence[CutSheet], trimmer: Trimmer) -> tuple[Stack, ...]:
    """The sheets that take cuts, equal ones together, in the order of the first of each.

    Sheets are equal when they play one role and every part of them has the same size, name and use.
    """
    gauge = Gauge(trimmer)
    alike: dict[object, list[tuple[CutSheet, Measured]]] = {}
    for sheet in sheets:
        measured = gauge.sheet(sheet)
        if measured.children:
            named = tuple((leaf.region.name, leaf.region.use or Use.SCRAP) for leaf in measured.leaves())
            alike.setdefault((sheet.role, measured.shape, named), []).append((sheet, measured))
    most = max(1, trimmer.stack)
    found = [tuple(equal[i : i + most]) for equal in alike.values() for i in range(0, len(equal), most)]
    return tuple(sorted(found, key=lambda stack: stack[0][0].number))
