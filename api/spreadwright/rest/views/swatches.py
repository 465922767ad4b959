"""The papers of a set, one by one."""

from spreadwright.errors import UnknownName
from spreadwright.model import Paper, Side
from spreadwright.rest.forms import Arguments, picture_forms
from spreadwright.rest.queries import PictureQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks.draw import swatch_svg

blueprint = Resources("swatches", __name__, description=__doc__)


_BACK = "~back"


def _swatch(_: Arguments, paper: Paper, side: Side) -> bytes:
    return swatch_svg(paper, side)


@blueprint.resource("/paper-sets/<set_id>/swatches/<paper_id>", *picture_forms(_swatch), query=PictureQuery)
def swatch(_: Arguments, set_id: str, paper_id: str) -> Documents:
    """One paper as it looks; `~back` after its id shows the other side."""
    papers = collection().paper_set(set_id)
    paper = papers.paper(paper_id.removesuffix(_BACK))
    if paper is None:
        raise UnknownName("paper", paper_id, [each.id for each in papers.papers])
    return paper, Side.BACK if paper_id.endswith(_BACK) else Side.FRONT
