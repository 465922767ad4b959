"""Whether there are as many sheets of each paper as a colourway takes."""

from collections import Counter
from collections.abc import Iterable, Iterator

from spreadwright.errors import Finding, warning
from spreadwright.model import Choice, Colourway, Paper, Recipe


def sheets_of_roles(recipe: Recipe) -> dict[str, int]:
    """How many sheets each role takes, in the order of the roles."""
    taken = Counter[str]()
    for sheet in recipe.sheets:
        taken[sheet.role] += sheet.times
    return {role.id: taken[role.id] for role in recipe.roles}


def is_enough(paper: Paper, sheets: int) -> bool:
    """Whether there are that many sheets of a paper; nobody counts those that say nothing."""
    return paper.sheets is None or sheets <= paper.sheets


def taken_sheets(choices: Iterable[tuple[str, Choice]], sheets: dict[str, int]) -> dict[Paper, int]:
    """How many sheets of each paper go into a colourway: both sides of one paper are the same sheets.

    Args:
        choices: What plays each role, by the role's id.
        sheets: What `sheets_of_roles` says.
    """
    taken: dict[Paper, int] = {}
    for role, choice in choices:
        taken[choice.paper] = taken.get(choice.paper, 0) + sheets.get(role, 0)
    return taken


def supply_findings(recipe: Recipe, colourway: Colourway) -> Iterator[Finding]:
    """Papers of which a colourway takes more sheets than there are, at the first role that each plays."""
    first: dict[Paper, str] = {}
    for role, choice in colourway.choices:
        first.setdefault(choice.paper, role)
    for paper, taken in taken_sheets(colourway.choices, sheets_of_roles(recipe)).items():
        playing = recipe.role(first[paper])
        if playing and not is_enough(paper, taken):
            takes = f"{taken} sheet{'s' if taken != 1 else ''} of “{paper.title}”"
            message = f"The colourway takes {takes}; at hand: {paper.sheets}."
            remedy = "Get more of it, or choose another paper for this role."
            yield warning("too-few-sheets", playing.where, message, remedy)
