"""A paper set's document to its model."""

from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.document.recipe import unit_of
from spreadwright.errors import Finding, error
from spreadwright.model import BLANK, Core, Face, Paper, PaperSet, Pattern

DEFAULT_REPEAT = "1 in"


def paper_set_model(document: Any, set_id: str) -> tuple[PaperSet, tuple[Finding, ...]]:
    """The model of a paper set's document, and what the schema cannot see is wrong with it."""
    findings: list[Finding] = []
    unit = unit_of(document)
    root = Cursor(document, unit, findings)
    papers = tuple(paper for item in root.child("papers").items() if (paper := _paper(item)) is not None)
    findings.extend(_doubles(papers))
    model = PaperSet(
        id=set_id,
        title=root.text("title", set_id),
        unit=unit,
        papers=papers,
        summary=root.text("summary"),
        authors=root.texts("authors"),
        licence=root.text("licence"),
        language=root.text("language", "en"),
        tags=root.texts("tags"),
    )
    return model, tuple(findings)


def _paper(item: Cursor) -> Paper | None:
    size = item.size("size")
    front = _face(item.child("front"))
    if size is None or front is None or not item.text("id"):
        return None
    return Paper(
        id=item.text("id"),
        title=item.text("title", item.text("id")),
        size=size,
        front=front,
        back=_face(item.child("back")) or BLANK,
        grammage_g_per_m2=item.count("grammage", 200, 40, 600),
        core=Core.DYED if item.text("core") == "dyed" else Core.WHITE,
        where=item.where,
    )


def _face(face: Cursor) -> Face | None:
    pattern, colours = face.text("pattern"), face.texts("colours")
    if pattern not in list(Pattern) or not colours:
        return None
    repeat = face.length("repeat", DEFAULT_REPEAT, least=1)
    return Face(Pattern(pattern), tuple(colour.lower() for colour in colours), repeat or 1, face.flag("directional"))


def _doubles(papers: tuple[Paper, ...]) -> list[Finding]:
    seen: set[str] = set()
    findings = []
    for paper in papers:
        if paper.id in seen:
            message = f"The id “{paper.id}” stands for two papers."
            findings.append(error("paper-id-twice", f"{paper.where}/id", message, "Give one of them another id."))
        seen.add(paper.id)
    return findings
