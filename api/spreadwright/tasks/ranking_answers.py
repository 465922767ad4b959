"""The JSON form of ranked colourways, on the command line and over HTTP."""

from spreadwright.colour.worth import Ranked
from spreadwright.tasks.answers import Json, colourway_answer, finding_answer
from spreadwright.tasks.ranking import Proposal
from spreadwright.words import spoken


def ranking_answer(proposal: Proposal) -> Json:
    """The best colourways with their scores, parts and reasons."""
    return {
        "recipe": proposal.recipe.id,
        "language": spoken(),
        "sets": [papers.id for papers in proposal.sets],
        "count": proposal.count,
        "pool": proposal.ranking.pool,
        "proved": proposal.ranking.is_proved,
        "lacks_sheets": proposal.lacks_sheets,
        "weights": _percents(proposal),
        "findings": [finding_answer(finding) for finding in proposal.findings],
        "colourways": [_ranked(proposal, each, rank) for rank, each in enumerate(proposal.colourways, 1)],
    }


def _percents(proposal: Proposal) -> dict[str, float]:
    shares = proposal.colourways[0].shares if proposal.colourways else {}
    return {name: round(100 * share, 1) for name, share in shares.items()}


def _ranked(proposal: Proposal, ranked: Ranked, rank: int) -> Json:
    return {
        "rank": rank,
        "score": round(ranked.score, 2),
        "parts": {name: round(points, 1) for name, points in ranked.parts.items()},
        "reason": proposal.reason(ranked),
        **colourway_answer(ranked.colourway),
    }
