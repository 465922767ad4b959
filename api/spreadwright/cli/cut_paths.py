"""The command `cut-paths`."""

from pathlib import Path

import click

from spreadwright.cli import printing, sources
from spreadwright.cli.options import bench_option, json_option
from spreadwright.cli.pictures import write_file
from spreadwright.errors import CannotWrite
from spreadwright.store import Collection
from spreadwright.tasks.cut_paths import FORMATS, SheetPaths, cut_paths_answer, cut_paths_zip
from spreadwright.tasks.cut_paths import cut_paths as paths_of


@click.command(name="cut-paths")
@click.argument("recipe")
@bench_option
@click.option("--sheet", type=click.IntRange(1), help="The number of one sheet; into a folder otherwise all.")
@click.option("--format", "form", type=click.Choice(list(FORMATS)), help="Into a folder; otherwise both.")
@click.option(
    "-o",
    "--output",
    type=click.Path(path_type=Path),
    help="A folder, NAME.zip for all sheets, or NAME.svg or .dxf for one.",
)
@json_option
@click.pass_obj
def cut_paths(
    collection: Collection,
    recipe: str,
    bench: str | None,
    sheet: int | None,
    form: str | None,
    output: Path | None,
    as_json: bool,
) -> None:
    """Write each sheet at full size as SVG and DXF, for cutting machines and other programs."""
    reading = sources.recipe(recipe, collection)
    found = paths_of(reading, sources.bench(bench, collection, reading))
    if as_json:
        printing.print_json(cut_paths_answer(found))
    elif output is None:
        raise click.UsageError("Say with -o where the files go, or ask for --json.")
    else:
        _write(found, output, sheet, form)


def _write(found: SheetPaths, output: Path, sheet: int | None, form: str | None) -> None:
    suffix = output.suffix.lower().lstrip(".")
    if suffix in FORMATS:
        write_file(output, found.sheet(sheet).file(suffix))
    elif suffix == "zip":
        write_file(output, cut_paths_zip(found))
    elif suffix and not output.is_dir():
        raise click.BadParameter(f"“{output}” should be a folder, or end in .svg, .dxf or .zip.", param_hint="--output")
    else:
        _write_folder(found, output, sheet, form)


def _write_folder(found: SheetPaths, folder: Path, sheet: int | None, form: str | None) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as reason:
        raise CannotWrite(str(folder), reason.strerror or "the system refuses") from reason
    for each in (found.sheet(sheet),) if sheet else found.sheets:
        for name in (form,) if form else FORMATS:
            write_file(folder / each.name(name), each.file(name))
    write_file(folder / "pieces.csv", found.table)
