"""What binds a plan: the lower bound and the argument that proves it, what is left over, what stays open."""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from spreadwright.cutting.plan import Certificate, Plan
from spreadwright.cutting.problem import Problem
from spreadwright.cutting.search.bounds import ceiling, fewest_sheets
from spreadwright.cutting.search.kinds import Kind, kind
from spreadwright.geometry import Size
from spreadwright.lengths import TICKS, Unit, size_text

SQUARE = {Unit.INCH: "sq in", Unit.CENTIMETRE: "cm²", Unit.MILLIMETRE: "mm²"}


def binding(problem: Problem, made: Plan) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """For each paper what binds it, in sentences."""
    return tuple(
        (paper, tuple(_paper(problem.of_paper(paper), made, paper, certificate)))
        for paper, certificate in made.certificates
    )


def _paper(problem: Problem, made: Plan, paper: str, certificate: Certificate) -> Iterator[str]:
    unit = problem.unit
    sheets = [sheet for sheet in made.sheets if sheet.paper == paper]
    there = sum(sheet.size.area for sheet in sheets)
    left = sum(spare.area for sheet in sheets for spare in sheet.spares)
    if there:
        share = f"{100 * (there - left) / there:.1f} %"
        yield (
            f"The pieces take {area_text(there - left, unit)} of the {area_text(there, unit)} "
            f"of {_sheets(len(sheets))}: {share}."
        )
    yield from _bound(problem, certificate)
    yield from _value(problem, certificate)
    if certificate.gap:
        yield f"Open: whether {certificate.lower_bound} would do; {certificate.cost} is the best that was found."
    spares = [spare for sheet in sheets for spare in sheet.spares]
    yield _rest(spares, unit)
    if spares:
        yield _largest(certificate)


def _bound(problem: Problem, certificate: Certificate) -> Iterator[str]:
    sizes = {stock.size for stock in problem.stock}
    if len(sizes) != 1 or {stock.cost for stock in problem.stock} != {1}:
        yield (
            f"Every set of sheets that costs less than {certificate.lower_bound} has too little area, "
            "or is proved not to give the pieces."
        )
        return
    (size,) = sizes
    musts = [wanted for wanted in problem.pieces if not wanted.value]
    area = sum(wanted.size.area * wanted.count for wanted in musts)
    by_area = ceiling(Fraction(area, size.area))
    yield f"By their area alone the pieces that must be cut need at least {_sheets(by_area)}."
    by_sides = max(by_area, _by_sides(problem, size)) if certificate.lower_bound > by_area else by_area
    if by_sides > by_area:
        yield (
            f"By their sides they need at least {_sheets(by_sides)}: "
            "too many are too long to lie beside one another (dual feasible functions)."
        )
    if certificate.lower_bound > by_sides:
        least = _sheets(certificate.lower_bound)
        yield f"The search has proved that no through cuts make them from fewer than {least}."


def _value(problem: Problem, certificate: Certificate) -> Iterator[str]:
    total = sum(wanted.value * wanted.count for wanted in problem.pieces)
    if not total:
        return
    told = f"Optional pieces worth {certificate.value:,} of {total:,} are cut"
    if certificate.value == certificate.most_value:
        yield f"{told}; no plan of that cost has more."
    else:
        yield f"{told}; more than {certificate.most_value:,} is proved impossible at that cost."


def _by_sides(problem: Problem, size: Size) -> int:
    counted: Counter[Kind] = Counter()
    for wanted in problem.pieces:
        if not wanted.value:
            counted[kind(wanted.size.width, wanted.size.height, wanted.may_turn)] += wanted.count
    return fewest_sheets(list(counted.items()), size.width, size.height)


def _rest(spares: list[Size], unit: Unit) -> str:
    if not spares:
        return "Nothing is left over."
    largest = max(spares, key=lambda spare: spare.area)
    size = size_text(largest.width, largest.height, unit)
    total = area_text(sum(spare.area for spare in spares), unit)
    if len(spares) == 1:
        return f"{total} are left over in one spare of {size}."
    return f"{total} are left over in {len(spares)} spares; the largest is {size}."


def _largest(certificate: Certificate) -> str:
    if certificate.is_gathered:
        return "No plan of that cost and value leaves a larger spare."
    return "Open: whether a plan of that cost and value leaves a larger spare; this is the largest that was found."


def area_text(area: int, unit: Unit) -> str:
    """An area for people, from square ticks: ``143.5 sq in``."""
    value = f"{area / TICKS[unit] ** 2:,.2f}".rstrip("0").rstrip(".")
    return f"{value} {SQUARE[unit]}"


def _sheets(count: int) -> str:
    return f"{count} sheet{'' if count == 1 else 's'}"
