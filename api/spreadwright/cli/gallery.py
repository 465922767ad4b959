"""The command *gallery*: the collection as a web site of plain files."""

import os
import sys
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import click

from spreadwright.cli import signals
from spreadwright.cli.moments import moment
from spreadwright.cli.reference import commands
from spreadwright.cli.watching import watched
from spreadwright.store import Collection
from spreadwright.words import LANGUAGES

if TYPE_CHECKING:
    from spreadwright.gallery import Documents, Kept, Site


def _address(ctx: click.Context, option: click.Parameter, given: str) -> str:
    """An address of the web; that of the service may also be one within the site."""
    is_within = option.name == "api" and (given == "." or given.startswith("/"))
    if given and not (is_within or _is_absolute(given)):
        raise click.BadParameter(f"“{given}” is no address. Write it as https://albums.example/.")
    return given


def _is_absolute(address: str) -> bool:
    try:
        parts = urlsplit(address)
    except ValueError:  # half a bracket of IPv6, say
        return False
    return parts.scheme in ("http", "https") and bool(parts.hostname)


@click.command()
@click.argument("output", type=click.Path(path_type=Path, file_okay=False), default="gallery-out")
@click.option(
    "--from",
    "source",
    metavar="FOLDER|URL",
    help="A folder like that of --collection, or a service whose published documents are fetched.",
)
@click.option(
    "--language",
    "languages",
    multiple=True,
    type=click.Choice(LANGUAGES),
    help="A language that its pages speak; several times for several, the first at its root. All when left out.",
)
@click.option(
    "--address",
    default="",
    metavar="URL",
    callback=_address,
    help="Where it will be found, for feeds and square codes.",
)
@click.option(
    "--date",
    "dated",
    envvar="SOURCE_DATE_EPOCH",
    callback=lambda _context, _option, given: moment(given),
    metavar="DATE",
    help="The date of its feeds, as 2026-11-30 or in seconds since 1970; without one, or an address, it has none.",
)
@click.option(
    "--api",
    default="",
    metavar="URL",
    callback=_address,
    help="A service that gives its recipes in other papers and languages.",
)
@click.option("--processes", type=click.IntRange(1, 256), help="How many work at it; one for each core when left out.")
@click.option("--watch", "is_watched", is_flag=True, help="Go on, and build again whenever something is changed.")
@click.pass_obj
def gallery(
    collection: Collection,
    output: Path,
    source: str | None,
    languages: tuple[str, ...],
    address: str,
    dated: datetime | None,
    api: str,
    processes: int | None,
    is_watched: bool,
) -> None:
    """Build the gallery as plain files into the folder OUTPUT.

    What was made before is kept in $XDG_CACHE_HOME/spreadwright, so that only what changed is made again.
    """
    from spreadwright.gallery import Site

    signals.unwind_on_terminate()
    site = Site(languages or LANGUAGES, address, api)
    if source and source.startswith(("http://", "https://")):
        if is_watched:
            raise click.UsageError("--watch looks at a folder; a service cannot be watched.")
        build_gallery(_service(source), output, site, processes, dated)
        _tell_where(output)
        return
    folder = _folder(source) if source else collection.folder

    def build() -> None:
        build_gallery(Collection(folder), output, site, processes, dated)

    if is_watched:
        watched(folder, build, output)
    else:
        build()
        _tell_where(output)


def _folder(source: str) -> Path:
    if not Path(source).is_dir():
        raise click.UsageError(f"“{source}” is neither a folder nor an address that begins with https:// or http://.")
    return Path(source)


def _service(address: str) -> "Documents":
    from spreadwright.gallery import CannotFetch

    try:
        from spreadwright.gallery.work.fetched import fetched
    except ModuleNotFoundError as reason:
        raise CannotFetch(address, f"it needs {reason.name}; pip install 'spreadwright[client]'") from reason
    click.echo(f"Fetching from {address}", err=True)
    return fetched(address, kept_before())


def _tell_where(output: Path) -> None:
    click.echo(f"The gallery is in {output}; open {output / 'index.html'} in a browser.", err=True)


def build_gallery(
    collection: "Collection | Documents",
    output: Path,
    site: "Site",
    processes: int | None = None,
    dated: datetime | None = None,
) -> None:
    """With a progress bar on stderr."""
    from spreadwright.gallery import build

    described = commands(click.get_current_context().find_root())
    with click.progressbar(length=1, label="Building the gallery", file=sys.stderr, item_show_func=_said) as bar:

        def progress(done: int, total: int, what: str) -> None:
            bar.length = total
            bar.update(done - bar.pos, what)

        build(
            collection,
            output,
            site=site,
            dated=dated,
            processes=processes,
            kept=kept_before(),
            commands=described,
            progress=progress,
        )


def _said(what: str | None) -> str:
    return what or ""


def kept_before() -> "Kept | None":
    """What was made before; a folder that cannot be used costs time and nothing else."""
    from spreadwright.gallery import CannotKeep, Kept

    home = os.environ.get("XDG_CACHE_HOME") or "~/.cache"
    try:
        return Kept(Path(home).expanduser() / "spreadwright" / "gallery")
    except (CannotKeep, RuntimeError) as reason:  # the latter where nobody has a home
        click.echo(f"spreadwright: {reason}", err=True)
        return None
