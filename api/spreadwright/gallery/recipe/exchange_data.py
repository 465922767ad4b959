"""What the scripts of a recipe's page are told, so that they can show any colourway and say what is to be said of it.

Faces are meant by their numbers in the list of their set, roles by theirs in the recipe. Sentences are in the language
that is spoken. What would say nothing is left out.
"""

from collections.abc import Iterator
from typing import Any

from jinja2.utils import htmlsafe_json_dumps
from markupsafe import Markup

from spreadwright.colour.legible import Sight
from spreadwright.colour.scene import PAGE, Surface
from spreadwright.colour.supply import sheets_of_roles
from spreadwright.drawing.pencil import PENCILS, pencil_on
from spreadwright.drawing.relief import Edge, edge_of
from spreadwright.gallery.overview.paper_words import face_words
from spreadwright.gallery.recipe.exchange import Exchange, Offer
from spreadwright.gallery.recipe.left_out import left_out
from spreadwright.model import BLANK, Choice, Core, PaperSet, Recipe, Side
from spreadwright.model.titles import role_title
from spreadwright.tasks.apart import Writing, faces_of, lost_pairs, meetings, writing_on
from spreadwright.tasks.ranking import seen
from spreadwright.words import gettext as _
from spreadwright.words import title

Json = dict[str, Any]

_SIGHTS = tuple(Sight)
_SIDES = tuple(Side)
_WHITE = edge_of(BLANK.colours[0], Core.WHITE)
"""What nearly all papers show where they are cut."""
_TAKEN = frozenset({"in", "sight", "unit"})
"""Names in the address that mean something else on the page of a recipe."""


def exchange_data(found: Exchange) -> Json:
    """Everything about a recipe's papers that is not in its page already."""
    recipe = found.recipe
    numbers = {role.id: number for number, role in enumerate(recipe.roles)}
    return {
        "seen": found.seen,
        "roles": _roles(recipe),
        "meetings": [_surface(one, numbers) + _surface(other, numbers) for one, other in meetings(recipe)],
        "captions": [_surface(surface, numbers) for surface in seen(recipe).captions],
        "sights": [sight.value for sight in _SIGHTS],
        "edge": _edge(_WHITE),
        "pencils": PENCILS,
        "back": _("{paper} (back)"),
        "sets": [_set(recipe, offer) for offer in found.offers],
    }


def exchange_script(found: Exchange) -> Markup:
    """The same as the content of a script element of type ``application/json``."""
    return htmlsafe_json_dumps(exchange_data(found), ensure_ascii=False, separators=(",", ":"))


def _roles(recipe: Recipe) -> list[Json]:
    sheets = sheets_of_roles(recipe)
    return [
        {
            "id": role.id,
            "key": f"paper-of-{role.id}" if role.id in _TAKEN else role.id,
            "title": role_title(role),
            "sheets": sheets[role.id],
        }
        for role in recipe.roles
    ]


def _surface(surface: Surface, numbers: dict[str, int]) -> list[int]:
    """The role, and 1 where its other side is up; the bare page is a role of its own."""
    return [-1, 0] if surface == PAGE else [numbers[surface.role], _SIDES.index(surface.side)]


def _set(recipe: Recipe, offer: Offer) -> Json:
    papers = offer.papers
    numbers = {choice: number for number, choice in enumerate(faces_of(papers))}
    found = {
        "id": papers.id,
        "title": title(papers.title),
        "papers": list(_papers(papers)),
        "fitting": [[numbers[choice] for choice in choices] for choices in offer.options.values()],
        "left_out": [left_out(recipe, role, papers) for role in recipe.roles],
        "best": [
            {
                "faces": [numbers[choice] for _, choice in ranked.colourway.choices],
                "why": offer.proposal.reason(ranked),
            }
            for ranked in offer.proposal.colourways
        ],
        "lost": [[*pair, *map(_SIGHTS.index, sights)] for pair, sights in lost_pairs(papers).items()],
        "at_hand": {paper.id: paper.sheets for paper in papers.papers if paper.sheets is not None},
    }
    return {name: value for name, value in found.items() if value}


def _papers(papers: PaperSet) -> Iterator[Json]:
    """Each with its faces, front and back."""
    faces = iter(zip(faces_of(papers), writing_on(papers), strict=True))
    for paper in papers.papers:
        sides = [_face(*next(faces)) for _ in _SIDES]
        yield {"id": paper.id, "title": title(paper.title), "faces": sides}


def _face(choice: Choice, writing: Writing) -> Json:
    found = {"seen": face_words(choice.face), "colours": choice.face.colours[:3], **_but_usual(choice)}
    return found | ({"writing": writing.value} if writing is not Writing.DARK else {})


def _but_usual(choice: Choice) -> Json:
    """Edge and pencil, where they are not those of most papers."""
    ground = choice.face.colours[0]
    edge, pencil = edge_of(ground, choice.paper.core), PENCILS.index(pencil_on(ground))
    return ({"edge": _edge(edge)} if edge != _WHITE else {}) | ({"pencil": pencil} if pencil else {})


def _edge(edge: Edge) -> list[Any]:
    return [edge.lit, edge.dull, edge.lit_opacity]
