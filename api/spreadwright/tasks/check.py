"""The verb *check*: everything that can be said about a document, in document order."""

from dataclasses import dataclass
from functools import lru_cache

from spreadwright.colour import colourway_findings, named, paper_findings, role_findings
from spreadwright.cutting import bench_findings, cut_sheets, cut_steps, pieces, tree_findings, trimmer_findings
from spreadwright.document import AnyReading, Reading, position
from spreadwright.errors import Finding, InvalidDocument, error, has_errors
from spreadwright.model import Bench, PaperSet, Recipe
from spreadwright.photos import photo_findings
from spreadwright.placing import draft_findings, placed_pieces, placing_findings
from spreadwright.tasks.laying import places
from spreadwright.tolerance import tolerance_findings
from spreadwright.words import SOURCE, speaking


@dataclass(frozen=True, slots=True)
class Report:
    """What a check found out about one document."""

    kind: str
    title: str
    findings: tuple[Finding, ...]

    @property
    def is_fine(self) -> bool:
        """Whether nothing found is an error."""
        return not has_errors(self.findings)


def check(reading: AnyReading, bench: Bench, papers: PaperSet | None = None, colourway_id: str | None = None) -> Report:
    """A document of any kind, checked as far as it can be read.

    Args:
        reading: The document, as read.
        bench: The bench on which a recipe would be cut and placed.
        papers: A paper set that should fill a recipe's roles.
        colourway_id: One colourway of that set, to be checked too.

    Raises:
        UnknownName: The colourway is none of this recipe and set.
    """
    title = str(reading.document.get("title") or reading.model.id)
    if isinstance(reading.model, Bench) and not has_errors(reading.findings):
        return Report(reading.kind, title, _sorted((*reading.findings, *bench_findings(reading.model)), reading))
    if not isinstance(reading.model, Recipe):
        return Report(reading.kind, title, _sorted(reading.findings, reading))
    found = recipe_findings(reading, bench)
    if not has_errors(found):  # what cannot be cut has no tolerance
        found += _tolerance(reading.model, bench)
    if papers:
        found += _papers_findings(reading.model, papers, colourway_id)
    return Report(reading.kind, title, _sorted(found, reading))


def recipe_findings(
    reading: Reading[Recipe], bench: Bench | None = None, *, language: str = SOURCE
) -> tuple[Finding, ...]:
    """All findings of a recipe; without a bench those that hold on every bench.

    They are in English whatever is spoken; those that come to be printed in instructions also in another language.
    """
    with speaking(language):
        return _recipe_findings(reading, bench)


def _recipe_findings(reading: Reading[Recipe], bench: Bench | None) -> tuple[Finding, ...]:
    recipe = reading.model
    if is_draft(reading):
        return _sorted((_no_sheets(), *reading.findings, *draft_findings(recipe)), reading)
    cut = pieces(cut_sheets(recipe))
    findings = (
        *reading.findings,
        *tree_findings(recipe),
        *role_findings(recipe, cut),
        *placing_findings(recipe, cut, bench),
        *photo_findings(recipe, cut, bench.unit if bench else None),
    )
    return _sorted((*findings, *trimmer_findings(recipe, bench)) if bench else findings, reading)


def is_draft(reading: Reading[Recipe]) -> bool:
    """Whether a recipe places pieces, and nobody has said yet how its sheets are cut."""
    return "placements" in reading.document and not reading.document.get("sheets", [])


def _no_sheets() -> Finding:
    message = "The recipe has no sheets yet, so it cannot be cut, placed or drawn."
    return error("no-sheets", "", message, "Have its sheets planned: spreadwright plan RECIPE --json.")


def _tolerance(recipe: Recipe, bench: Bench) -> tuple[Finding, ...]:
    sheets = cut_sheets(recipe)
    placed = placed_pieces(recipe, pieces(sheets))
    steps = cut_steps(sheets, bench)
    return tolerance_findings(recipe, sheets, steps, placed, places(recipe, placed, bench), bench)


def _papers_findings(recipe: Recipe, papers: PaperSet, colourway_id: str | None) -> tuple[Finding, ...]:
    found = paper_findings(recipe, papers)
    if colourway_id is None:
        return found
    colourway = named(recipe, papers, colourway_id)
    return (*found, *colourway_findings(recipe, colourway, pieces(cut_sheets(recipe))))


def _sorted(findings: tuple[Finding, ...], reading: AnyReading) -> tuple[Finding, ...]:
    return tuple(sorted(findings, key=lambda finding: position(finding.where, reading.document)))


@lru_cache(maxsize=32)
def proven(reading: Reading[Recipe], bench: Bench | None = None) -> Recipe:
    """The recipe, if it may be drawn, placed and, given a bench, cut; found once for all its pictures.

    Raises:
        InvalidDocument: Its findings contain an error.
    """
    findings = recipe_findings(reading, bench)
    if has_errors(findings):
        raise InvalidDocument(reading.model.title, findings)
    return reading.model
