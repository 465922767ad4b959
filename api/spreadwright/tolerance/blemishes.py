"""What only shows in a layout, judged by what is typical: edges that should run through, gaps."""

from dataclasses import dataclass

from spreadwright.errors import Finding, note
from spreadwright.lengths import TICKS, Unit, told, told_up
from spreadwright.model import Axis
from spreadwright.placing import End
from spreadwright.tolerance.doubts import Doubt
from spreadwright.tolerance.laid import Laid, Layout
from spreadwright.tolerance.trace import Traced
from spreadwright.words import gettext as _

STEP = TICKS[Unit.INCH] // 32
"""A step of more than 1/32 in (0.8 mm) in an edge that should run through is seen: half of the usual smallest mark."""

STEP_AT_GUTTER = TICKS[Unit.INCH] // 16
"""Two pages never lie side by side so exactly that less than 1/16 in (1.6 mm) is seen."""


@dataclass(frozen=True)
class NotLevel(Doubt):
    """Two pieces in one row whose edges should run through, with a step between them."""

    first: Laid
    second: Laid
    axis: Axis
    limit: int = STEP

    @property
    def names(self) -> tuple[str, ...]:
        """Both names."""
        return (self.first.name, self.second.name)

    def reach(self, found: Traced) -> int:
        """How much they typically differ across the row; where they are laid can hide none of it."""
        other = self.axis.other
        return (self.first.side(other, found) - self.second.side(other, found)).typical

    @property
    def remedy(self) -> str:
        """Cutting both alike."""
        return _("Cut them with one setting, each measured by itself, or trim the larger one to the other.")

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at the second one."""
        said = {
            Axis.COLUMNS: _(
                "“{first}” and “{second}” should run on in one line, but typically differ in height by up to {off}."
            ),
            Axis.ROWS: _(
                "“{first}” and “{second}” should run on in one line, but typically differ in width by up to {off}."
            ),
        }
        off = told_up(reach, unit)
        message = said[self.axis].format(first=self.first.id, second=self.second.id, off=off)
        return note("edges-not-level", self.second.placed.where, message, remedy)


@dataclass(frozen=True)
class UnevenGap(Doubt):
    """A gap that can come out half as wide again, or half as wide."""

    first: Laid
    second: Laid
    axis: Axis
    gap: int
    layout: Layout

    @property
    def names(self) -> tuple[str, ...]:
        """Both names."""
        return (self.first.name, self.second.name)

    @property
    def limit(self) -> int:
        """Half the gap."""
        return self.gap // 2

    def reach(self, found: Traced) -> int:
        """How far the gap is typically off."""
        before = self.layout.edge(self.first.id, self.axis, End.END, found)
        return (self.layout.edge(self.second.id, self.axis, End.START, found) - before).typical

    @property
    def remedy(self) -> str:
        """Measuring the gap itself."""
        return _("Lay one of them by the gap to the other, with a strip of that width between them.")

    def finding(self, reach: int, remedy: str, unit: Unit) -> Finding:
        """Told at the second one."""
        said = _(
            "The gap of {gap} between “{first}” and “{second}” is typically off by up to {off}, more than half of it."
        )
        gap, off = told(self.gap, unit), told_up(reach, unit)
        message = said.format(gap=gap, first=self.first.id, second=self.second.id, off=off)
        return note("gap-uneven", self.second.placed.where, message, remedy)
