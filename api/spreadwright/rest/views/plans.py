"""Planning how posted pieces are cut; nothing is kept."""

from time import monotonic
from typing import Any

from spreadwright.document import read_any
from spreadwright.rest.envelopes import Plans
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.queries import PlanQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import Planning, effort, plan, plan_answer

blueprint = Resources("plan", __name__, description=__doc__)


def _answer(_: Arguments, planning: Planning) -> dict[str, Any]:
    return plan_answer(planning)


@blueprint.task("/plan", json_form(_answer, Plans), query=PlanQuery)
def plan_pieces(arguments: Arguments, data: bytes) -> Documents:
    """How the pieces of a piece list are cut from the fewest sheets, or those of a recipe from its own sheets.

    What is proved impossible is answered with 422 and `no-plan`, its causes in `errors`; a search that found nothing
    within its `seconds` with 422 and `plan-too-long`, which proves nothing.
    """
    reading = read_any(data)
    bench = collection().bench(arguments["bench"]) if "bench" in arguments else None
    end = monotonic() + arguments["seconds"]
    planning = plan(
        reading,
        bench,
        seed=arguments["seed"],
        wanted=arguments["n"],
        effort=effort(arguments["seconds"]),
        is_over=lambda: monotonic() >= end,
    )
    return (planning,)
