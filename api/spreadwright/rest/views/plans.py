"""Planning how posted pieces are cut; nothing is kept."""

from typing import Any

from spreadwright.document import AnyReading, canonical, read_any, read_pieces, stock_in_short
from spreadwright.lengths import Unit
from spreadwright.model import Bench, PieceList
from spreadwright.rest.bodies import document_or_pieces
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.plan_envelopes import Plans
from spreadwright.rest.queries import PlanQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.rest.turns import Deadline, turn
from spreadwright.rest.working import told
from spreadwright.tasks import effort, plan, plan_answer

blueprint = Resources("plan", __name__, description=__doc__)


def _answer(arguments: Arguments, reading: AnyReading, bench: Bench | None, stock: PieceList | None) -> dict[str, Any]:
    deadline = Deadline(arguments["seconds"])
    with turn(arguments["seconds"]):
        told(0, "compiling the search, if it is the first on this machine")
        planning = plan(
            reading,
            bench,
            stock=stock,
            seed=arguments["seed"],
            wanted=arguments["n"],
            effort=effort(arguments["seconds"]),
            on_ready=deadline.start,
            is_over=deadline.is_over,
        )
    return plan_answer(planning)


def _seconds(arguments: Arguments, *_: object) -> float:
    return float(arguments["seconds"])


@blueprint.task("/plan", json_form(_answer, Plans), query=PlanQuery, reads=document_or_pieces, expected_s=_seconds)
def plan_pieces(arguments: Arguments, data: bytes) -> Documents:
    """How the pieces of a piece list are cut from the fewest sheets, or those of a recipe from its own sheets.

    As `text/plain` the pieces may be sent in short, like on the command line: `7x7 left, 3 1/2x5 *2 right`.
    What is proved impossible is answered with 422 and `no-plan`, its causes in `errors`; a search that found nothing
    within its `seconds` with 422 and `plan-too-long`, which proves nothing. While as many searches run as may, further
    ones are answered with 503, `busy` and `Retry-After`. More than 5 `seconds` make it a job.
    """
    reading = read_any(data)
    bench = collection().bench(arguments["bench"]) if "bench" in arguments else None
    return reading, bench, _stock(arguments["stock"], reading.model.unit) if "stock" in arguments else None


def _stock(words: str, unit: Unit) -> PieceList:
    reading = read_pieces(canonical({"unit": unit.value, "stock": stock_in_short(words.split(";"), unit)}))
    return reading.model
