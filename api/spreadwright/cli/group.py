"""How every command ends: our errors, a full disk and Ctrl+C as a message on stderr and an exit code."""

import os
import sys
from typing import Any, NoReturn

import click

from spreadwright.cli import printing
from spreadwright.errors import InvalidDocument, InvalidDocuments, NoColourway, NoPlan, SpreadwrightError
from spreadwright.tasks import answers

FINE, FOUND_ERRORS, UNUSABLE, STOPPED = 0, 1, 2, 130

_FINDINGS = (InvalidDocument, InvalidDocuments, NoColourway, NoPlan)
"""What has causes to tell; everything else is unusable input."""


class Commands(click.Group):
    """Turns our errors, a full disk and Ctrl+C into a message on stderr and an exit code."""

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command that is named."""
        try:
            return self._run(ctx)
        except SpreadwrightError as reason:
            _fail(reason, as_json=bool(ctx.meta.get(AS_JSON)))
        except KeyboardInterrupt:
            click.echo("spreadwright: stopped.", err=True)
            sys.exit(STOPPED)
        except BrokenPipeError:
            _close_stdout()
            sys.exit(FINE)
        except OSError as reason:
            _close_stdout()
            click.echo(f"spreadwright: the system refuses: {reason.strerror or reason}.", err=True)
            sys.exit(UNUSABLE)

    def _run(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        finally:
            sys.stdout.flush()


AS_JSON = "spreadwright.as_json"
"""Where a command notes that answers, refusals too, are wanted as JSON."""


def _close_stdout() -> None:
    """So that nothing is written to it once more when the process ends."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _fail(reason: SpreadwrightError, *, as_json: bool) -> NoReturn:
    if as_json:
        printing.print_json(answers.refusal_answer(reason))
    else:
        tell(reason)
    sys.exit(exit_code(reason))


def tell(reason: SpreadwrightError) -> None:
    """Say on stderr what is wrong, with everything that was found."""
    if isinstance(reason, InvalidDocument):
        printing.print_findings(reason.name, reason.findings, to_stderr=True)
    elif isinstance(reason, InvalidDocuments):
        for each in reason.documents:
            printing.print_findings(each.name, each.findings, to_stderr=True)
    elif isinstance(reason, NoColourway):
        printing.print_findings("There is no colourway", reason.findings, to_stderr=True)
    elif isinstance(reason, NoPlan):
        printing.print_findings("There is no plan", reason.causes, to_stderr=True)
    else:
        click.echo(f"spreadwright: {reason}", err=True)


def exit_code(reason: SpreadwrightError) -> int:
    """The exit code that stands for an error."""
    return FOUND_ERRORS if isinstance(reason, _FINDINGS) else UNUSABLE
