"""The verb *contact-sheet*: one recipe in many colourways, or many recipes in one paper set, on one sheet."""

from collections.abc import Collection, Sequence

from spreadwright.colour.colourways import unfilled
from spreadwright.colour.worth import Ranked
from spreadwright.document import Reading
from spreadwright.drawing import svg_bytes
from spreadwright.drawing.booklet import Format
from spreadwright.drawing.contact import ContactSheet, Frame, Layout, LeftOut, contact_pdf, contact_picture
from spreadwright.drawing.raster import png
from spreadwright.errors import Finding, InvalidDocument, NoColourway
from spreadwright.model import Colourway, PaperSet, Recipe, face_title, role_titles
from spreadwright.tasks.check import proven
from spreadwright.tasks.layout import layout
from spreadwright.tasks.ranking import Proposal, propose
from spreadwright.words import decimal, grouped, ngettext, title, unbroken
from spreadwright.words import gettext as _

MOST_FRAMES = 24
"""Colourways on one sheet."""
MOST_LAYOUTS = 96
"""Recipes on one sheet."""

__all__ = [
    "MOST_FRAMES",
    "MOST_LAYOUTS",
    "ContactSheet",
    "Format",
    "colourways_sheet",
    "recipes_sheet",
    "sheet_pdf",
    "sheet_png",
    "sheet_svg",
]


def colourways_sheet(reading: Reading[Recipe], sets: Sequence[PaperSet], wanted: int = 12) -> ContactSheet:
    """One recipe in the colourways that please most, different ones, the best first.

    Args:
        reading: The recipe.
        sets: In whose papers; those that fill no role are named with why.
        wanted: How many, 1 to `MOST_FRAMES`; fewer come where no others look different, which the sheet says.

    Raises:
        InvalidDocument: The recipe carries an error.
        UnknownName: There is no set at all.
        NoColourway: No set fills every role.
        ValueError: So many do not fit on a sheet.
    """
    if not 1 <= wanted <= MOST_FRAMES:
        raise ValueError(f"a contact sheet has 1 to {MOST_FRAMES} colourways")
    recipe = proven(reading)
    proposal = propose(recipe, sets, wanted)
    titles = {papers.id: title(papers.title) for papers in sets}
    laid = Layout(recipe, *layout(recipe))
    frames = tuple(
        _frame(laid, proposal, each, str(number), titles[each.colourway.set_id])
        for number, each in enumerate(proposal.colourways, 1)
    )
    told = _("{n} of {count} colourways, different ones, the best first")
    about = told.format(n=len(frames), count=grouped(proposal.count))
    left_out = _unfit(recipe, sets, proposal.sets)
    return ContactSheet(
        recipe.title, about, frames, _notes(proposal, wanted), _("Paper sets that do not fit"), left_out
    )


def recipes_sheet(readings: Sequence[Reading[Recipe]], papers: PaperSet) -> ContactSheet:
    """Many recipes, each in its best colourway of one set; those that cannot be laid in it are named with why.

    Raises:
        NoColourway: None of them can be laid in this set.
        InvalidDocument: None of them is without an error.
        ValueError: So many do not fit on a sheet.
    """
    if not 1 <= len(readings) <= MOST_LAYOUTS:
        raise ValueError(f"a contact sheet has 1 to {MOST_LAYOUTS} layouts")
    frames: list[Frame] = []
    refused: list[tuple[Reading[Recipe], InvalidDocument | NoColourway]] = []
    for reading in readings:
        try:
            recipe = proven(reading)
            proposal = propose(recipe, [papers], 1)
        except (InvalidDocument, NoColourway) as reason:
            refused.append((reading, reason))
        else:
            number, best = str(len(frames) + 1), proposal.colourways[0]
            frames.append(_frame(Layout(recipe, *layout(recipe)), proposal, best, number, title(recipe.title)))
    if not frames:
        raise _none([reason for _reading, reason in refused])
    left_out = tuple(LeftOut(reading.model.title, str(reason)) for reading, reason in refused)
    count = len(frames)
    about = ngettext(
        "{count} layout in the papers of this set, in its best colourway",
        "{count} layouts in the papers of this set, each in its best colourway",
        count,
    ).format(count=count)
    heading = _("Layouts that this set cannot fill")
    return ContactSheet(title(papers.title), about, tuple(frames), (), heading, left_out)


def _none(reasons: Sequence[InvalidDocument | NoColourway]) -> InvalidDocument | NoColourway:
    """The one error that stands for those of all recipes."""
    findings: list[Finding] = [
        finding for reason in reasons if isinstance(reason, NoColourway) for finding in reason.findings
    ]
    return NoColourway(findings) if findings else reasons[0]


def sheet_svg(sheet: ContactSheet) -> bytes:
    """The sheet as one picture; what its spreads share is in it once."""
    return svg_bytes(contact_picture(sheet))


def sheet_png(sheet: ContactSheet, width_px: int) -> bytes:
    """The same as PNG.

    Raises:
        CannotDraw: The renderer refused.
    """
    return png(svg_bytes(contact_picture(sheet, repeats=False)), width_px)


def sheet_pdf(sheet: ContactSheet, paper: Format = Format.A4) -> bytes:
    """The sheet on pages to print, with words that can be searched and a bookmark for every spread.

    Raises:
        CannotDraw: A library refused.
    """
    return contact_pdf(sheet, paper)


def _frame(laid: Layout, proposal: Proposal, ranked: Ranked, number: str, name: str) -> Frame:
    score = _("{score} of 100").format(score=decimal(f"{ranked.score:.1f}"))
    colourway = ranked.colourway
    papers = named_papers(laid.recipe, colourway)
    reason = unbroken(proposal.reason(ranked))
    return Frame(laid, colourway, number, name, ranked.score, score, papers, reason, colourway.id)


def named_papers(recipe: Recipe, colourway: Colourway) -> tuple[tuple[str, str], ...]:
    """What each role and its paper are called, in the language that is spoken."""
    names = role_titles(recipe)
    return tuple((names[role], face_title(choice)) for role, choice in colourway.choices)


def _notes(proposal: Proposal, wanted: int) -> tuple[str, ...]:
    found = len(proposal.colourways)
    notes = []
    if found < wanted:
        fewer = ngettext(
            "{wanted} were asked for; beside this {found} no other looks different.",
            "{wanted} were asked for; beside these {found} no others look different.",
            found,
        )
        notes.append(fewer.format(wanted=wanted, found=found))
    if not proposal.ranking.is_proved:
        notes.append(_("The search was stopped: there may be better ones."))
    if proposal.lacks_sheets:
        notes.append(_("No colourway gets along with the sheets at hand, so they were not heeded."))
    return tuple(notes)


def _unfit(recipe: Recipe, sets: Sequence[PaperSet], fitting: Collection[PaperSet]) -> tuple[LeftOut, ...]:
    """The sets that cannot fill every role, with what they lack."""
    return tuple(
        LeftOut(title(papers.title), " ".join(finding.message for finding in unfilled(recipe, papers)))
        for papers in sets
        if papers not in fitting
    )
