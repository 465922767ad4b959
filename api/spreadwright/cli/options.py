"""Options that several commands share."""

from collections.abc import Callable
from pathlib import Path

import click

from spreadwright.cli.group import AS_JSON
from spreadwright.cli.pictures import suffix_of
from spreadwright.tasks.booklet import Format
from spreadwright.tasks.draw import NARROWEST_PX, WIDEST_PX
from spreadwright.words import LANGUAGES

Command = Callable[..., None]
FILE = click.Path(path_type=Path, dir_okay=False)


def bench_option(command: Command) -> Command:
    """`--bench`."""
    words = "The bench: a file, or an id of the collection; otherwise one in the unit of the document."
    return click.option("--bench", metavar="BENCH", help=words)(command)


def set_option(command: Command) -> Command:
    """`--set`."""
    words = "The paper set: a file, or an id of the collection."
    return click.option("--set", "set_id", metavar="SET", help=words)(command)


def colourway_option(words: str = "One colourway of the set.") -> Callable[[Command], Command]:
    """`--colourway`, explained in these words."""
    return click.option("--colourway", "colourway_id", metavar="ID", help=words)


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

    return click.option("-o", "--output", required=True, type=FILE, callback=checked, help="NAME.pdf")(command)


def picture_option(*names: str, words: str = "", required: bool = False) -> Callable[[Command], Command]:
    """`--output`, or an option of another name, which must name a picture of ours."""
    names = names or ("-o", "--output")

    def checked(_ctx: click.Context, _param: click.Parameter, output: Path | None) -> Path | None:
        if output:
            suffix_of(output, names[-1])
        return output

    told = f"{words} NAME.svg, .png or .pdf".strip()
    return click.option(*names, required=required, type=FILE, callback=checked, help=told)


def width_option(default: int = 1600) -> Callable[[Command], Command]:
    """`--width`."""
    pixels = click.IntRange(NARROWEST_PX, WIDEST_PX)
    return click.option("--width", default=default, show_default=True, type=pixels, help="Of a PNG, pixels.")


def json_option(command: Command) -> Command:
    """`--json`, noted before anything can go wrong."""

    def remember(ctx: click.Context, _: click.Parameter, value: bool) -> bool:
        ctx.meta[AS_JSON] = value
        return value

    words = "Print what the API answers."
    return click.option("--json", "as_json", is_flag=True, is_eager=True, callback=remember, help=words)(command)
