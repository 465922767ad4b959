"""What a bench's trimmer has to say for itself, whatever is cut on it."""

from collections.abc import Iterator

from spreadwright.errors import Finding, error, note, warning
from spreadwright.lengths import FINEST, Unit, on_scale, told, told_up
from spreadwright.model import Bench


def bench_findings(bench: Bench) -> tuple[Finding, ...]:
    """Limits of a trimmer that do not go together; its lengths must all be known."""
    return tuple(_findings(bench))


def _findings(bench: Bench) -> Iterator[Finding]:
    trimmer, unit = bench.trimmer, bench.unit
    length, shortest = told(trimmer.length, unit), told(trimmer.shortest, unit)
    mark, accuracy = on_scale(trimmer.graduation, trimmer.graduation, unit), told_up(trimmer.accuracy, unit)
    if trimmer.shortest >= trimmer.length:
        message = f"The narrowest strip that can be held is {shortest}, and the trimmer cuts {length}: it cuts nothing."
        yield error("trimmer-cuts-nothing", "/trimmer/shortest", message, f"Give a width of less than {length}.")
    if trimmer.graduation >= trimmer.length:
        message = f"The marks of the trimmer’s scale are {mark} apart, and it cuts {length}: no cut is shown."
        yield error("trimmer-cuts-nothing", "/trimmer/graduation", message, "Give the distance of two marks.")
    elif trimmer.graduation > trimmer.shortest > 0:
        message = f"Two marks of the trimmer’s scale are {mark} apart, wider than its narrowest strip of {shortest}."
        remedy = "Check both; a strip narrower than the distance of two marks cannot be set."
        yield warning("scale-coarser-than-strip", "/trimmer/graduation", message, remedy)
    if trimmer.accuracy > trimmer.graduation:
        message = f"A cut may lie {accuracy} from its reading, further than the next mark of the scale, {mark} away."
        remedy = "Check the accuracy, or name the graduation that the cuts really keep to."
        yield warning("accuracy-beyond-marks", "/trimmer/accuracy", message, remedy)
    for tool, step in (("trimmer", trimmer.graduation), ("ruler", bench.ruler.graduation)):
        if step % FINEST[unit]:
            yield _in_other_unit(tool, step, unit)


def _in_other_unit(tool: str, step: int, unit: Unit) -> Finding:
    """Marks that the unit of the bench cannot say exactly."""
    mark = on_scale(step, step, unit)
    message = (
        f"The marks of the {tool} are {mark} apart, but the bench speaks {unit.value}: its readings are told as marked."
    )
    remedy = "Give the bench the unit of its scales, so that sizes are told in it too, or check the graduation."
    return note("scale-in-other-unit", f"/{tool}/graduation", message, remedy)
