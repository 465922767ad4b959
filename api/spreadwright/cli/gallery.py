"""The command *gallery*: the collection as a web site of plain files."""

import os
import sys
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

import click

from spreadwright.cli import signals
from spreadwright.cli.moments import moment
from spreadwright.cli.reference import commands
from spreadwright.store import Collection
from spreadwright.words import LANGUAGES

if TYPE_CHECKING:
    from spreadwright.gallery import Kept, Site


@click.command()
@click.argument("output", type=click.Path(path_type=Path, file_okay=False), default="gallery-out")
@click.option(
    "--language",
    "languages",
    multiple=True,
    type=click.Choice(LANGUAGES),
    help="A language that its pages speak; several times for several, the first at its root. All when left out.",
)
@click.option("--address", default="", metavar="URL", help="Where it will be found, for feeds and square codes.")
@click.option(
    "--date",
    "dated",
    envvar="SOURCE_DATE_EPOCH",
    callback=lambda _context, _option, given: moment(given),
    metavar="DATE",
    help="The date of its feeds, as 2026-11-30 or in seconds since 1970; without one, or an address, it has none.",
)
@click.option(
    "--api", default="", metavar="URL", help="A service that gives its recipes in other papers and languages."
)
@click.option("--processes", type=click.IntRange(1, 256), help="How many work at it; one for each core when left out.")
@click.pass_obj
def gallery(
    collection: Collection,
    output: Path,
    languages: tuple[str, ...],
    address: str,
    dated: datetime | None,
    api: str,
    processes: int | None,
) -> None:
    """Build the gallery as plain files into the folder OUTPUT.

    What was made before is kept in $XDG_CACHE_HOME/spreadwright, so that only what changed is made again.
    """
    from spreadwright.gallery import Site

    signals.unwind_on_terminate()
    build_gallery(collection, output, Site(languages or LANGUAGES, address, api), processes, dated)
    click.echo(f"The gallery is in {output}; open {output / 'index.html'} in a browser.", err=True)


def build_gallery(
    collection: Collection, output: Path, site: "Site", processes: int | None = None, dated: datetime | None = None
) -> None:
    """With a progress bar on stderr."""
    from spreadwright.gallery import build

    described = commands(click.get_current_context().find_root())
    with click.progressbar(length=1, label="Building the gallery", file=sys.stderr) as bar:

        def progress(done: int, total: int, what: str) -> None:
            bar.length = total
            bar.update(done - bar.pos)

        build(
            collection,
            output,
            site=site,
            dated=dated,
            processes=processes,
            kept=_kept(),
            commands=described,
            progress=progress,
        )


def _kept() -> "Kept | None":
    """What was made before; a folder that cannot be used costs time and nothing else."""
    from spreadwright.gallery import CannotKeep, Kept

    home = os.environ.get("XDG_CACHE_HOME") or "~/.cache"
    try:
        return Kept(Path(home).expanduser() / "spreadwright" / "gallery")
    except (CannotKeep, RuntimeError) as reason:  # the latter where nobody has a home
        click.echo(f"spreadwright: {reason}", err=True)
        return None
