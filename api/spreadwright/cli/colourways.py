"""The command `colourways`."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

import click

from spreadwright import tasks
from spreadwright.cli import printing, sources
from spreadwright.cli.options import json_option, language_option, set_option
from spreadwright.model import Colourway, PaperSet, Recipe, face_title, role_title
from spreadwright.store import Collection
from spreadwright.tasks import answers
from spreadwright.tasks.colourways import listed
from spreadwright.words import decimal, grouped, ngettext, speaking
from spreadwright.words import gettext as _

if TYPE_CHECKING:
    from spreadwright.colour.worth import Ranked
    from spreadwright.tasks.ranking import Proposal

MOST_RANKED, MOST_LISTED = 100, 10_000


@click.command()
@click.argument("recipe")
@set_option
@click.option(
    "-n",
    "--limit",
    default=12,
    show_default=True,
    type=click.IntRange(1, MOST_LISTED),
    help=f"How many; at most {MOST_RANKED} of the best.",
)
@click.option("--all", "lists_all", is_flag=True, help="List every colourway of one set in a fixed order, unranked.")
@click.option(
    "--start", default=0, show_default=True, type=click.IntRange(0), help="With --all: how many to pass over."
)
@language_option
@json_option
@click.pass_obj
def colourways(
    collection: Collection,
    recipe: str,
    set_id: str | None,
    limit: int,
    lists_all: bool,
    start: int,
    language: str | None,
    as_json: bool,
) -> None:
    """Rank the ways in which one paper set, or all, can fill the roles of a recipe."""
    reading = sources.recipe(recipe, collection)
    found = tasks.proven(reading)
    with speaking(language or reading.model.language):
        if lists_all:
            papers = sources.papers_for(found, set_id, None, collection)
            _list(found, papers, start, limit, as_json=as_json)
        else:
            _refuse_unranked(limit, start)
            _rank(found, sources.paper_sets(set_id, collection), limit, as_json=as_json)


def _refuse_unranked(limit: int, start: int) -> None:
    if limit > MOST_RANKED:
        reason = f"{limit} is not in the range 1<=x<={MOST_RANKED}; --all lists them all."
        raise click.BadParameter(reason, param_hint="'-n' / '--limit'")
    if start:
        raise click.BadParameter("goes with --all only.", param_hint="--start")


def _list(recipe: Recipe, papers: PaperSet, start: int, limit: int, *, as_json: bool) -> None:
    if as_json:
        printing.print_json(answers.colourways_answer(recipe, papers, start=start, limit=limit))
        return
    total, found = listed(recipe, papers, start, limit)
    click.echo(ngettext("{count} colourway", "{count} colourways", total).format(count=grouped(total)))
    for each in found:
        click.echo(f"  {each.id}\n      {_papers(recipe, each)}")


def _rank(recipe: Recipe, sets: Sequence[PaperSet], wanted: int, *, as_json: bool) -> None:
    from spreadwright.tasks.ranking import propose  # numpy takes longer to load than most commands to run
    from spreadwright.tasks.ranking_answers import ranking_answer

    proposal = propose(recipe, sets, wanted)
    if as_json:
        printing.print_json(ranking_answer(proposal))
    else:
        _print(proposal)


def _print(proposal: "Proposal") -> None:
    ranked, ranking = proposal.colourways, proposal.ranking
    of = _("{n} of {count} colourways, different ones, the best first").format(
        n=len(ranked), count=grouped(proposal.count)
    )
    click.echo(f"{proposal.recipe.title}: {of}")
    if not ranking.is_proved:
        click.echo(_("The search was stopped: there may be better ones."))
    if proposal.lacks_sheets:
        click.echo(_("No colourway gets along with the sheets at hand, so they were not heeded."))
    for number, each in enumerate(ranked, 1):
        click.echo(f"\n{number:3}. {decimal(f'{each.score:.1f}')}  {each.colourway.id}")
        click.echo(f"     {_papers(proposal.recipe, each.colourway)}")
        click.echo(f"     {_points(each)}")
        click.echo(f"     {proposal.reason(each)}")
    if proposal.findings:
        click.echo("")
        printing.print_findings(_("What the sets lack"), proposal.findings)


def _papers(recipe: Recipe, colourway: Colourway) -> str:
    chosen = zip(recipe.roles, colourway.choices, strict=True)
    return ", ".join(f"{role_title(role)}: {face_title(choice)}" for role, (_id, choice) in chosen)


def _points(ranked: "Ranked") -> str:
    names = {
        "separation": _("separation"),
        "grey": _("grey"),
        "calm": _("calm"),
        "balance": _("balance"),
        "captions": _("captions"),
    }
    return ", ".join(f"{names.get(name, name)} {points:.0f}" for name, points in ranked.parts.items())
