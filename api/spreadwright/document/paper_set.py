"""A paper set's document to its model."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from spreadwright.document.cursor import Cursor
from spreadwright.document.pictures import Pictures, printed
from spreadwright.document.recipe import unit_of
from spreadwright.errors import Finding, error
from spreadwright.geometry import Size
from spreadwright.model import BLANK, Basis, Core, Face, Paper, PaperSet, Pattern, Texture, Weight, basis_weight

DEFAULT_REPEAT = "1 in"
UNSEEN = "#d9d4ca"
"""What stands for a picture that did not come along, where the document says no colours."""

NOTHING = Size(0, 0)
"""The sheet of a paper whose size cannot be read."""

_LIGHTEST, _HEAVIEST = 40, 600
"""Of paper that anybody cuts by hand, g/m²."""
_MOST_SHEETS = 10_000
_BASIS_WEIGHT = re.compile(r"(?P<pounds>\d{1,3}(?:\.\d)?) lb (?P<basis>[a-z]+)", re.ASCII)


def paper_set_model(
    document: Any, set_id: str, pictures: Pictures | None = None
) -> tuple[PaperSet, tuple[Finding, ...]]:
    """The model of a paper set's document, and what the schema cannot see is wrong with it.

    Args:
        document: As parsed.
        set_id: What it is to be called.
        pictures: Finds the pictures that it names; None where it came without them.
    """
    findings: list[Finding] = []
    unit = unit_of(document)
    root = Cursor(document, unit, findings)
    reader = _Reader(pictures, findings)
    papers = tuple(paper for item in root.child("papers").items() if (paper := reader.paper(item)) is not None)
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


@dataclass(frozen=True, slots=True)
class _Reader:
    """Where pictures are found, and where findings are put."""

    pictures: Pictures | None
    findings: list[Finding]

    def paper(self, item: Cursor) -> Paper | None:
        """One paper; None where it lacks what a paper must have."""
        size = item.size("size")
        front = self._face(item.child("front"), size or NOTHING)
        back = self._face(item.child("back"), size or NOTHING)
        if size is None or front is None or not item.text("id"):
            return None
        return Paper(
            id=item.text("id"),
            title=item.text("title", item.text("id")),
            size=size,
            front=front,
            back=back or BLANK,
            weight=self._weight(item),
            core=Core.DYED if item.text("core") == "dyed" else Core.WHITE,
            sheets=item.count("sheets", 0, 0, _MOST_SHEETS) if item.has("sheets") else None,
            where=item.where,
        )

    def _face(self, face: Cursor, sheet: Size) -> Face | None:
        name, colours = face.text("pattern"), tuple(colour.lower() for colour in face.texts("colours"))
        if name not in list(Pattern) or not (colours or name == Pattern.PICTURE):
            return None
        pattern, repeat = Pattern(name), face.length("repeat", DEFAULT_REPEAT, least=1)
        shown = printed(face, repeat, sheet, self.pictures, self.findings) if pattern is Pattern.PICTURE else None
        return Face(
            pattern,
            colours or (shown.average if shown else UNSEEN,),
            repeat or 1,
            face.flag("directional"),
            _texture(face, pattern),
            shown.swatch if shown else None,
        )

    def _weight(self, item: Cursor) -> Weight:
        plain = Weight(Fraction(item.count("grammage", 200, _LIGHTEST, _HEAVIEST)))
        written = _BASIS_WEIGHT.fullmatch(item.text("weight"))
        if written is None or written["basis"] not in list(Basis):
            return plain
        weight = basis_weight(Fraction(written["pounds"]), Basis(written["basis"]))
        if not _LIGHTEST <= weight.grammage <= _HEAVIEST:
            message = f"“{weight.written}” is {float(weight.grammage):.0f} g/m²: no paper that is cut by hand."
            remedy = f"Between {_LIGHTEST} and {_HEAVIEST} g/m²; look whether it is the right kind of pound."
            self.findings.append(error("weight-out-of-range", item.child("weight").where, message, remedy))
        return weight


def _texture(face: Cursor, pattern: Pattern) -> Texture:
    """What the face says; the pattern ``linen`` is plain paper with the texture of that name."""
    named = face.text("texture")
    usual = Texture.LINEN if pattern is Pattern.LINEN else Texture.SMOOTH
    return Texture(named) if named in list(Texture) else usual


def _doubles(papers: tuple[Paper, ...]) -> list[Finding]:
    seen: set[str] = set()
    findings = []
    for paper in papers:
        if paper.id in seen:
            message = f"The id “{paper.id}” stands for two papers."
            findings.append(error("paper-id-twice", f"{paper.where}/id", message, "Give one of them another id."))
        seen.add(paper.id)
    return findings
