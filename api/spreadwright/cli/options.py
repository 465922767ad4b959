"""Options that several commands share."""

from collections.abc import Callable
from pathlib import Path

import click

from spreadwright.cli.group import AS_JSON
from spreadwright.tasks.booklet import Format
from spreadwright.words import LANGUAGES

Command = Callable[..., None]


def bench_option(command: Command) -> Command:
    """`--bench`."""
    words = "The bench: a file, or an id of the collection; otherwise one in the unit of the document."
    return click.option("--bench", metavar="BENCH", help=words)(command)


def set_option(command: Command) -> Command:
    """`--set`."""
    words = "The paper set: a file, or an id of the collection."
    return click.option("--set", "set_id", metavar="SET", help=words)(command)


def language_option(command: Command) -> Command:
    """`--language`."""
    words = "In which instructions speak; otherwise the recipe's, or English."
    return click.option("--language", type=click.Choice(LANGUAGES), help=words)(command)


def page_option(words: str) -> Callable[[Command], Command]:
    """`--page`, explained in these words."""
    papers = click.Choice([each.value for each in Format])
    return click.option("--page", type=papers, default=Format.A4.value, show_default=True, help=words)


def pdf_option(command: Command) -> Command:
    """`--output`, which must name a PDF."""

    def checked(_ctx: click.Context, _param: click.Parameter, output: Path) -> Path:
        if output.suffix.lower() != ".pdf":
            raise click.BadParameter(f"“{output}” should end in .pdf.", param_hint="--output")
        return output

    path = click.Path(path_type=Path, dir_okay=False)
    return click.option("-o", "--output", required=True, type=path, callback=checked, help="NAME.pdf")(command)


def json_option(command: Command) -> Command:
    """`--json`, noted before anything can go wrong."""

    def remember(ctx: click.Context, _: click.Parameter, value: bool) -> bool:
        ctx.meta[AS_JSON] = value
        return value

    words = "Print what the API answers."
    return click.option("--json", "as_json", is_flag=True, is_eager=True, callback=remember, help=words)(command)
