"""What nothing needs any more, removed from a store by hand; a service does it by itself."""

import click

from spreadwright.cli.stores import named_store


@click.command()
def clean() -> None:
    """Remove from the store what nothing needs any more.

    Keys of old requests, jobs that are over, counts of past minutes, and contents that no revision refers to. A service
    does this by itself once an hour.
    """
    from spreadwright.rest.cleaner import clean as cleaned
    from spreadwright.rest.settings import Settings

    done = cleaned(named_store(), Settings.from_environment())
    click.echo(
        f"Removed: {done.keys} keys of requests, {done.jobs} jobs, {done.counters} counts, {done.contents} contents."
    )
