"""Answers as text for people."""

import json
from collections.abc import Iterator, Sequence
from textwrap import wrap
from typing import Any

import click

from spreadwright.errors import Finding, Severity
from spreadwright.lengths import size_text
from spreadwright.model import Colourway
from spreadwright.tasks import Cutting, Placing
from spreadwright.tasks.answers import summary

_COLOURS = {Severity.ERROR: "red", Severity.WARNING: "yellow", Severity.NOTE: "blue"}
_WIDTH = 100


def print_json(answer: Any) -> None:
    """An answer as the API gives it."""
    click.echo(json.dumps(answer, ensure_ascii=False, indent=2))


def print_findings(name: str, findings: Sequence[Finding], *, to_stderr: bool = False) -> None:
    """Findings, one below the other, each with what would be right."""
    click.echo(f"{name}: {summary(findings)}", err=to_stderr)
    for finding in findings:
        severity = click.style(f"{finding.severity.value:8}", fg=_COLOURS[finding.severity])
        click.echo(f"  {severity}{finding.where or '(whole document)'}  [{finding.code}]", err=to_stderr)
        for line in wrap(f"{finding.message} {finding.remedy}", _WIDTH - 10):
            click.echo(f"          {line}", err=to_stderr)


def print_cuts(cutting: Cutting) -> None:
    """The cuts sheet by sheet, then the piles."""
    click.echo(f"{cutting.recipe.title}: {_count(cutting.sheets, 'sheet')}, {_count(cutting.steps, 'cut')}")
    click.echo(f"for: {cutting.bench.title}\n")
    for caution in cutting.cautions:
        click.echo(f"  ! {caution}")
    for line in _sheet_lines(cutting):
        click.echo(line)
    for pile in cutting.piles:
        names = ", ".join(f"{piece.mark} {piece.id}" for piece in pile.pieces)
        pile_name = "Pile" if pile.page == "page" else f"Pile of the {pile.page} page"
        click.echo(f"\n{pile_name}: {names}")


def _sheet_lines(cutting: Cutting) -> Iterator[str]:
    unit = cutting.bench.unit
    for sheet in cutting.sheets:
        size = size_text(sheet.size.width, sheet.size.height, unit) if sheet.size else ""
        role = cutting.recipe.role(sheet.role)
        yield f"\nSheet {sheet.number} ({role.title if role else sheet.role}, {size})"
        steps = cutting.steps_of(sheet)
        if not steps:
            yield "  Not cut: " + ", ".join(part.id for part in sheet.parts) + "."
        for step in steps:
            words = cutting.words[step.number - 1]
            if words.caution:
                yield f"      ! {words.caution}"
            yield f"  {step.number:2}. {words.board}"
            yield from (f"      {line}" for line in (words.setting, words.falls, words.stays))


def print_placement(placing: Placing) -> None:
    """The pieces in gluing order, then the photographs."""
    click.echo(f"{placing.recipe.title}: {_count(placing.steps, 'piece')}, {_count(placing.photos, 'photo')}\n")
    for caution in placing.cautions:
        click.echo(f"  ! {caution}")
    click.echo("")
    for step in placing.steps:
        click.echo(f"  {step.number:2}. {step.sentence}")
    unit = placing.bench.unit
    for photo in placing.photos:
        click.echo(f"      Photo on “{photo.on}”: {size_text(photo.size.width, photo.size.height, unit)}")


def print_colourways(total: int, found: Sequence[Colourway]) -> None:
    """Colourways by id, with the title of each role's paper."""
    click.echo(f"{total:,} colourways")
    for colourway in found:
        papers = ", ".join(f"{role}: {choice.paper.title} ({choice.side})" for role, choice in colourway.choices)
        click.echo(f"  {colourway.id}\n      {papers}")


def _count(things: Sequence[object], noun: str) -> str:
    return f"{len(things)} {noun}{'' if len(things) == 1 else 's'}"
