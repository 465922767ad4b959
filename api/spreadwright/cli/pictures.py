"""Pictures to files: one PDF of all, or an SVG or PNG of each."""

import os
from pathlib import Path

import click

from spreadwright.errors import CannotWrite
from spreadwright.tasks import draw

FORMATS = ("svg", "png", "pdf")


def suffix_of(output: Path, option: str = "--output") -> str:
    """Which format the name of a file asks for.

    Raises:
        click.BadParameter: It asks for none of ours; the option is named.
    """
    suffix = output.suffix.lower().lstrip(".")
    if suffix not in FORMATS:
        raise click.BadParameter(f"“{output}” should end in .svg, .png or .pdf.", param_hint=option)
    return suffix


def write_pictures(pictures: tuple[bytes, ...], output: Path, width: int) -> None:
    """One PDF of all; one SVG or PNG, or several numbered ones."""
    suffix = suffix_of(output)
    if suffix == "pdf":
        write_file(output, draw.as_pdf(pictures))
        return
    for number, svg in enumerate(pictures, start=1):
        path = output if len(pictures) == 1 else output.with_stem(f"{output.stem}-{number}")
        write_file(path, draw.as_png(svg, width) if suffix == "png" else svg)


def write_file(path: Path, data: bytes) -> None:
    """The whole file or none of it."""
    part = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        part.write_bytes(data)
        part.replace(path)
    except OSError as reason:
        raise CannotWrite(str(path), reason.strerror or "the system refuses") from reason
    finally:
        part.unlink(missing_ok=True)
    click.echo(f"wrote {path}", err=True)
