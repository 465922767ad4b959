"""Answers as text for people."""

import json
import re
from collections.abc import Iterator, Sequence
from textwrap import wrap
from typing import Any

import click

from spreadwright.cutting import told_part
from spreadwright.errors import Finding, Severity
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import nearest, told_size
from spreadwright.model import Bench
from spreadwright.tasks import Cutting, Placing
from spreadwright.tasks.answers import summary
from spreadwright.tasks.draw import sheet_plans
from spreadwright.words import gettext as _
from spreadwright.words import ngettext, title

_COLOURS = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "blue"}
_WIDTH = 100
_UNBROKEN = "\N{FIGURE SPACE}"
_WITHIN_LENGTH = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|mm|cm)\b)")


def print_json(answer: Any) -> None:
    """An answer as the API gives it."""
    click.echo(json.dumps(answer, ensure_ascii=False, indent=2))


def print_columns(rows: Sequence[Sequence[str]]) -> None:
    """A table: every column but the last as wide as its widest cell."""
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]) - 1)]
    for row in rows:
        cells = [cell.ljust(width) for cell, width in zip(row, widths, strict=False)]
        click.echo(f"  {'  '.join(cells)}  {row[-1]}".rstrip())


def print_findings(name: str, findings: Sequence[Finding], *, to_stderr: bool = False) -> None:
    """Findings, one below the other, each with what would be right."""
    click.echo(_("{name}: {summary}").format(name=name, summary=summary(findings)), err=to_stderr)
    labels = {Severity.ERROR: _("error"), Severity.WARNING: _("warning"), Severity.NOTE: _("note")}
    wide = max((len(labels[finding.severity]) + 1 for finding in findings), default=0)
    for finding in findings:
        severity = click.style(labels[finding.severity].ljust(max(wide, 8)), fg=_COLOURS[finding.severity])
        click.echo(f"  {severity}{finding.where or '(whole document)'}  [{finding.code}]", err=to_stderr)
        for line in _lines(f"{finding.message} {finding.remedy}", _WIDTH - 10):
            click.echo(f"          {line}", err=to_stderr)


def _lines(text: str, width: int) -> Iterator[str]:
    """The text in lines, none of which ends within a length like ``2 5/8 in``."""
    for line in wrap(_WITHIN_LENGTH.sub(_UNBROKEN, text), width):
        yield line.replace(_UNBROKEN, " ")


def print_cuts(cutting: Cutting) -> None:
    """The cuts sheet by sheet, then the piles."""
    sheets, cuts = len(cutting.sheets), len(cutting.steps)
    counted = (
        ngettext("{count} sheet", "{count} sheets", sheets).format(count=sheets),
        ngettext("{count} cut", "{count} cuts", cuts).format(count=cuts),
    )
    click.echo(f"{cutting.recipe.title}: {', '.join(counted)}")
    click.echo(_("for: {bench}").format(bench=title(cutting.bench.title)) + "\n")
    for caution in cutting.cautions:
        click.echo(f"  ! {caution}")
    if cutting.rounding:
        click.echo(f"\n  {cutting.rounding}")
    for line in _sheet_lines(cutting):
        click.echo(line)
    piles = {"page": _("Pile: {pieces}"), "left": _("Pile of the left page: {pieces}")}
    piles["right"] = _("Pile of the right page: {pieces}")
    for pile in cutting.piles:
        names = ", ".join(f"{piece.mark} {piece.id}" for piece in pile.pieces)
        click.echo("\n" + piles[pile.page].format(pieces=names))


def _sheet_lines(cutting: Cutting) -> Iterator[str]:
    for plan in sheet_plans(cutting):
        size = plan.sheet.size
        told = told_part(Rect.at(0, 0, size), cutting.bench) if size else ""
        yield f"\n{plan.heading} ({plan.role}, {told})"
        if not plan.steps:
            yield "  " + _("Not cut: {parts}.").format(parts=", ".join(part.id for part in plan.sheet.parts))
        for step, words in zip(plan.steps, plan.words, strict=True):
            if words.caution:
                yield f"      ! {words.caution}"
            yield f"  {step.number:2}. {words.board}"
            yield from (f"      {line}" for line in (words.setting, words.falls, words.stays, words.mark) if line)


def print_placement(placing: Placing) -> None:
    """The pieces in gluing order, then the photographs."""
    click.echo(f"{placing.recipe.title}\n")
    for caution in placing.cautions:
        click.echo(f"  ! {caution}")
    for words in ("", *filter(None, [placing.rounding]), *placing.adhesive.words):
        click.echo(f"  {words}".rstrip())
    click.echo("")
    if placing.findings:
        print_findings(_("what could come out wrong"), placing.findings)
        click.echo("")
    for step in placing.steps:
        click.echo(f"  {step.number:2}. {step.sentences[0]}")
        for sentence in step.sentences[1:]:
            click.echo(f"      {sentence}")
    if placing.photos:
        click.echo("\n" + _("Photographs"))
    places = {each.piece.id: each.rect for each in placing.placed}
    for photo in placing.photos:
        size = _on_ruler(photo.rect_on(places[photo.on]).size, placing.bench)
        click.echo("  " + _("Photo on “{piece}”: {size}.").format(piece=photo.on, size=size))


def _on_ruler(size: Size, bench: Bench) -> str:
    mark = bench.ruler.graduation
    return told_size(nearest(size.width, mark), nearest(size.height, mark), bench.unit)
