"""Why some papers of a set are not offered for a role, in a sentence or two."""

from spreadwright.colour.colourways import choices, takes
from spreadwright.colour.supply import is_enough, sheets_of_roles
from spreadwright.model import Choice, Kind, PaperSet, Recipe, Role
from spreadwright.model.titles import face_title
from spreadwright.tasks.apart import faces_of
from spreadwright.words import gettext as _
from spreadwright.words import listed


def left_out(recipe: Recipe, role: Role, papers: PaperSet) -> str:
    """What is said of the faces of its kind that do not fit a role; empty where all of them do."""
    fitting = choices(recipe, role, papers)
    reasons: dict[str, list[str]] = {}
    for each in faces_of(papers):
        if each not in fitting and role.kind in (Kind.ANY, each.face.kind):
            reasons.setdefault(_reason(recipe, role, each), []).append(face_title(each))
    return " ".join(sentence.format(papers=listed(faces)) for sentence, faces in reasons.items())


def _reason(recipe: Recipe, role: Role, choice: Choice) -> str:
    if not takes(role, choice.face):
        return _("Not offered, since one-way prints do not suit this part: {papers}.")
    if {choice.paper.size} != {sheet.size for sheet in recipe.sheets if sheet.role == role.id}:
        return _("Not offered, since the sheets have another size: {papers}.")
    if not is_enough(choice.paper, sheets_of_roles(recipe)[role.id]):
        return _("Not offered, since there are too few sheets: {papers}.")
    return _("Not offered, since some pieces are turned, and a one-way print would lie on its side: {papers}.")
