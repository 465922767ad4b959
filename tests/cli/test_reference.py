"""The reference of the command line says what the commands themselves say."""

import re

import click
import pytest
from click.testing import CliRunner

from gallery.built import Html
from spreadwright.cli import main
from spreadwright.cli.reference import commands
from spreadwright.gallery import Command, Option, Site
from spreadwright.gallery.prose.run import run_mkdocs


@click.group()
def tool():
    """Does things.

    In several
    lines.
    """


@tool.group()
def shelf():
    """Keep things."""


@shelf.command()
@click.argument("things", nargs=-1)
@click.option("-n", "--number", type=click.IntRange(1, 9), default=3, show_default=True, help="How many.")
@click.option("--from", "start", type=click.FloatRange(0.5), help="Where to begin.")
@click.option("--kind", type=click.Choice(["a", "b"]), multiple=True, help="Which.")
@click.option("--owner", required=True, envvar="OWNER", metavar="NAME", help="Whose.")
@click.option("--all", "takes_all", is_flag=True, help="Every one.")
@click.option("--secret", hidden=True)
def add(**_):
    """Add things."""


@tool.command(hidden=True)
@click.argument("place", default="here")
def unseen(**_):
    """Nobody needs this."""


@tool.command()
@click.argument("place", default="here")
def go(**_):
    """Go to PLACE."""


def described(command=tool, name="tool"):
    return {each.name: each for each in commands(click.Context(command, info_name=name))}


def test_commands_of_groups_are_there_and_hidden_ones_are_not():
    assert list(described()) == ["tool", "go", "shelf", "shelf add"]
    assert described()["tool"].meaning == ("Does things.", "In several lines.")
    assert described()["shelf add"].usage == "tool shelf add [OPTIONS] [THINGS]..."


def test_options_tell_choices_bounds_defaults_and_variables():
    assert described()["shelf add"].options == (
        Option(("-n", "--number"), "1..9", "How many.", default="3"),
        Option(("--from",), "0.5..", "Where to begin."),
        Option(("--kind",), "a|b", "Which.", is_repeatable=True),
        Option(("--owner",), "NAME", "Whose.", variable="OWNER", is_required=True),
        Option(("--all",), "", "Every one."),
    )


def test_an_argument_that_may_be_left_out_tells_its_default():
    assert described()["go"].options == (Option((), "PLACE", "", default="here"),)


@pytest.mark.parametrize("each", described(main, "spreadwright").values(), ids=lambda each: each.id)
def test_the_reference_knows_what_help_knows(each):
    told = CliRunner().invoke(main, [*each.name.replace("spreadwright", "").split(), "--help"]).output
    words = told.split()
    assert all(word in words for paragraph in each.meaning for word in paragraph.split())
    assert all(word in words for option in each.options for word in option.meaning.split())
    in_help = re.findall(r"^  (?:(-\w), )?(--[a-z-]+|-n)", told, re.MULTILINE)
    everywhere = {"", "-h", "--help", "--version"}
    assert {name for names in in_help for name in names} - everywhere == {
        n for option in each.options for n in option.names
    }


def test_the_page_shows_commands_and_does_without(tmp_path):
    given = (Command("go on", "tool go on", ("On & on.",), (Option(("--far",), "", "As far as it goes."),)),)
    for folder, handed in (("with", given), ("without", ())):
        (tmp_path / folder).mkdir()
        run_mkdocs(Site(), tmp_path / folder, handed)
    shown, bare = (Html(tmp_path / folder / "commands.html") for folder in ("with", "without"))
    assert "go-on" in shown.ids and "#go-on" in shown.links and "On &amp; on." in shown.page.read_text()
    assert "go-on" not in bare.ids and '<nav aria-label="Commands"' not in bare.page.read_text()
