"""A gallery that is built again whenever something is changed, until Ctrl+C."""

import time
from collections.abc import Callable
from pathlib import Path

import click

from spreadwright.cli.group import tell
from spreadwright.errors import SpreadwrightError

MOST_NAMED = 3


def watched(folder: Path, build: Callable[[], None], output: Path) -> None:
    """Builds, waits for a change, and builds again; whatever is wrong is told, and the gallery stays as it was.

    Args:
        folder: That of the collection.
        build: Builds once.
        output: Where the gallery is.
    """
    from spreadwright.gallery.work.watch import Watch, sources

    watch = Watch(sources(folder))
    _build(build)
    while True:
        click.echo(f"Watching {folder}; the gallery is in {output}. Ctrl+C ends.", err=True)
        try:
            changed = watch.changed()
        except KeyboardInterrupt:
            return
        names = [Path(name).name for name in changed]
        more = f" and {len(names) - MOST_NAMED} more" if len(names) > MOST_NAMED else ""
        click.echo(f"Changed: {', '.join(names[:MOST_NAMED])}{more}.", err=True)
        _build(build)


def _build(build: Callable[[], None]) -> None:
    begun = time.monotonic()
    try:
        build()
    except SpreadwrightError as reason:
        tell(reason)
        click.echo("Nothing was built; the gallery stays as it was.", err=True)
    else:
        click.echo(f"Built in {time.monotonic() - begun:.1f} s.", err=True)
