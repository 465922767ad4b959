"""Plans as text for people: each sheet as columns and rows, then what is left over and what is proved."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

import click

from spreadwright.cli.sheet_sketch import sketch
from spreadwright.cutting import CutSheet
from spreadwright.geometry import Rect
from spreadwright.lengths import Unit, size_text, with_unit
from spreadwright.model import Axis, Content, Leaf, Sheet, Use
from spreadwright.tasks import Planning, binding_of, planned_cut_sheets, planned_sheets

if TYPE_CHECKING:
    from spreadwright.cutting.plan import Plan


def print_plans(planning: Planning, *, explain: bool) -> None:
    """Every plan, one below the other; explained, each sheet is drawn as well."""
    for number, made in enumerate(planning.plans, start=1):
        which = f"{planning.wish.title}, plan {number}" if len(planning.plans) > 1 else planning.wish.title
        click.echo(("\n" if number > 1 else "") + f"{which}: {_count(len(made.sheets), 'sheet')}, {_spares(made)}")
        for line in _plan_lines(planning, made, drawn=explain):
            click.echo(line)
        if explain:
            _explain(planning, made)


def _plan_lines(planning: Planning, made: "Plan", *, drawn: bool) -> Iterator[str]:
    unit, first = planning.wish.unit, 1
    laid_out = planned_cut_sheets(planning, made) if drawn else ()
    for sheet in planned_sheets(made):
        yield f"\n{_heading(sheet, first, unit)}"
        if drawn:
            yield from (f"  {line}" for line in _drawing(laid_out[first - 1], unit))
        yield from _content_lines(sheet.content, unit, "  ")
        first += sheet.times
    yield ""
    if made.spares:
        yield "Left over: " + ", ".join(size_text(s.width, s.height, unit) for s in made.spares)
    if made.left_out:
        yield "Left out: " + ", ".join(made.left_out)
    for paper, certificate in made.certificates:
        proved = "Proved" if not certificate.gap else f"Open ({certificate.lower_bound} could do)"
        yield f"{proved}{f', {paper}' if paper else ''}: {certificate.reason}"


def _heading(sheet: Sheet, first: int, unit: Unit) -> str:
    numbers = f"Sheet {first}" if sheet.times == 1 else f"Sheets {first} to {first + sheet.times - 1}, all alike"
    size = size_text(sheet.size.width, sheet.size.height, unit) if sheet.size else ""
    return f"{numbers} ({sheet.role}, {size})"


def _drawing(sheet: CutSheet, unit: Unit) -> list[str]:
    """The sheet in characters, each part with its name, and with its size where there is room."""
    return sketch([(part.rect, _labels(part.name, part.rect, unit)) for part in sheet.parts if part.rect])


def _labels(name: str, rect: Rect, unit: Unit) -> list[str]:
    return [f"{name} {size_text(rect.width, rect.height, unit)}", name, name[:1]]


def _content_lines(content: Content, unit: Unit, indent: str) -> Iterator[str]:
    if isinstance(content, Leaf):
        yield f"{indent}{_leaf(content)}"
        return
    side, noun = ("wide", "column") if content.axis is Axis.COLUMNS else ("high", "row")
    for branch in content.branches:
        extent = with_unit(branch.extent or 0, unit)
        part = f"{noun} {extent} {side}" if branch.times == 1 else f"{branch.times} {noun}s, each {extent} {side}"
        if isinstance(branch.content, Leaf):
            yield f"{indent}{part}: {_leaf(branch.content)}"
        else:
            yield f"{indent}{part}"
            yield from _content_lines(branch.content, unit, indent + "  ")


def _leaf(leaf: Leaf) -> str:
    return f"“{leaf.name}”" if leaf.use is Use.PIECE else leaf.use.value


def _explain(planning: Planning, made: "Plan") -> None:
    for paper, sentences in binding_of(planning, made):
        click.echo(f"\nWhat binds{f' for {paper}' if paper else ''}:")
        for sentence in sentences:
            click.echo(f"  {sentence}")


def _spares(made: "Plan") -> str:
    return f"{_count(len(made.spares), 'spare')} left over" if made.spares else "nothing left over"


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}{'' if number == 1 else 's'}"
