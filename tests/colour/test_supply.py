import json
from dataclasses import replace

import pytest

from builder import PAPERS, sound
from spreadwright.colour import choices, colourway_findings, first, named, paper_findings
from spreadwright.colour.supply import sheets_of_roles, taken_sheets
from spreadwright.cutting import cut_sheets, pieces
from spreadwright.document import read_paper_set, read_recipe
from spreadwright.errors import Severity
from spreadwright.model import PaperSet

RECIPE = read_recipe(sound()).model
SET = read_paper_set(json.dumps(PAPERS).encode(), "two").model


def with_sheets(**counts: int) -> PaperSet:
    return replace(SET, papers=tuple(replace(paper, sheets=counts.get(paper.id)) for paper in SET.papers))


def findings(papers: PaperSet, colourway_id: str) -> list[tuple[str, str]]:
    colourway = named(RECIPE, papers, colourway_id)
    return [(f.code, f.where) for f in colourway_findings(RECIPE, colourway, pieces(cut_sheets(RECIPE)))]


def test_sheets_of_each_role_are_counted():
    assert sheets_of_roles(RECIPE) == {"background": 2, "plain": 1, "print": 1}


def test_both_sides_of_a_paper_are_the_same_sheets():
    colourway = named(RECIPE, SET, "two.fog.fog~back.rope")
    taken = taken_sheets(colourway.choices, sheets_of_roles(RECIPE))
    assert {paper.id: count for paper, count in taken.items()} == {"fog": 3, "rope": 1}


@pytest.mark.parametrize(("at_hand", "is_short"), [(0, True), (1, True), (2, False), (9, False)])
def test_a_colourway_that_takes_more_than_is_at_hand_is_a_warning(at_hand: int, is_short: bool):
    found = findings(with_sheets(fog=at_hand), "two.fog.slate.rope")
    assert found == ([("too-few-sheets", "/roles/background")] if is_short else [])


def test_roles_that_share_a_paper_share_its_sheets():
    colourway = named(RECIPE, with_sheets(fog=2), "two.fog.fog~back.rope")
    (finding,) = colourway_findings(RECIPE, colourway, pieces(cut_sheets(RECIPE)))
    assert finding.message == "The colourway takes 3 sheets of “Fog”; at hand: 2."
    assert finding.severity is Severity.WARNING


def test_papers_with_too_few_sheets_are_not_offered():
    background = RECIPE.roles[0]
    offered = {choice.paper.id for choice in choices(RECIPE, background, with_sheets(fog=1))}
    assert "fog" not in offered and "slate" in offered
    assert first(RECIPE, with_sheets(fog=1)).choice("background").paper.id == "slate"


def test_a_role_without_sheets_enough_says_so():
    short = {paper.id: 1 for paper in SET.papers}
    (finding,) = paper_findings(RECIPE, with_sheets(**short))
    assert (finding.code, finding.where) == ("no-paper-for-role", "/roles/background")
    assert finding.message.endswith("it takes 2 sheets, and fewer are at hand of every paper that fits.")
