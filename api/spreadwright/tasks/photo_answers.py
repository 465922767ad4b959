"""The JSON and CSV forms of the photographs: the same on the command line and over HTTP."""

from collections.abc import Iterator

from spreadwright.lengths import Unit
from spreadwright.photos import Pixels, Trim, print_label
from spreadwright.tasks.answers import SCALE, Json, bench_answer, length_answer, share_answer, size_answer
from spreadwright.tasks.photos import Photographs, PhotoPlan
from spreadwright.tasks.tables import csv_bytes, in_inches, in_mm

_HEADS = (
    *("mat", "mark", "page", "border_mm", "border_in", "width_mm", "height_mm", "width_in", "height_in"),
    *("pixels_wide_300", "pixels_high_300", "pixels_wide_150", "pixels_high_150"),
    *("print", "print_short_in", "print_long_in", "share_lost"),
)


def photos_answer(found: Photographs) -> Json:
    """Every photograph: its size, the prints that it can be trimmed from, its pixels; the same with a wide border."""
    bench = found.bench
    return {
        "recipe": found.recipe.id,
        "bench": bench_answer(bench),
        **SCALE,
        "photos": [_photo(plan, found) for plan in found.plans],
    }


def photos_csv(found: Photographs) -> bytes:
    """A row for each photograph and each print that it can be trimmed from; one without a print if there is none."""
    return csv_bytes(_HEADS, (row for plan in found.plans for row in _rows(plan, found.bench.unit)))


def _photo(plan: PhotoPlan, found: Photographs) -> Json:
    unit, wide = found.bench.unit, found.widened(plan)
    return {
        "on": plan.photo.on,
        "mark": plan.mark,
        "page": plan.page,
        "mat": size_answer(plan.mat, unit),
        **_bordered(plan, unit),
        "camera_shapes": [{"shape": name, "lost": share_answer(lost)} for name, lost in plan.shapes],
        "words": plan.words,
        "wide": None if wide is None else _bordered(wide, unit),
    }


def _bordered(plan: PhotoPlan, unit: Unit) -> Json:
    """What depends on the border."""
    return {
        "border": length_answer(plan.border, unit),
        "size": size_answer(plan.size, unit),
        "on_ruler": size_answer(plan.on_ruler, unit),
        "prints": [_print(trim, unit) for trim in plan.trims],
        "pixels": {"at_300_per_inch": _pixels(plan.fine), "at_150_per_inch": _pixels(plan.coarse)},
    }


def _print(trim: Trim, unit: Unit) -> Json:
    return {
        "size": size_answer(trim.print.size, unit),
        "title": print_label(trim.print, unit),
        "lost": share_answer(trim.lost),
    }


def _pixels(pixels: Pixels) -> Json:
    return {"width": pixels.width, "height": pixels.height}


def _rows(plan: PhotoPlan, unit: Unit) -> Iterator[list[object]]:
    shown = (plan.border, plan.size.width, plan.size.height)
    border, width, height = ((in_mm(each), in_inches(each)) for each in shown)
    sizes = [*border, width[0], height[0], width[1], height[1]]
    dots = [plan.fine.width, plan.fine.height, plan.coarse.width, plan.coarse.height]
    start = [plan.photo.on, plan.mark, plan.page, *sizes, *dots]
    for trim in plan.trims:
        sides = (in_inches(trim.print.size.width), in_inches(trim.print.size.height))
        yield [*start, print_label(trim.print, unit), *sides, share_answer(trim.lost)]
    if not plan.trims:
        yield [*start, "", "", "", ""]
