"""Checking a document that is posted; nothing is kept."""

from typing import Any

from spreadwright import colour
from spreadwright.document import read_any
from spreadwright.rest.envelopes import Report
from spreadwright.rest.forms import Arguments, json_form
from spreadwright.rest.queries import CheckQuery
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import collection
from spreadwright.tasks import Report as Findings
from spreadwright.tasks import check
from spreadwright.tasks.answers import report_answer

blueprint = Resources("check", __name__, description=__doc__)


def _report(_: Arguments, report: Findings) -> dict[str, Any]:
    return report_answer(report)


@blueprint.task("/check", json_form(_report, Report), query=CheckQuery)
def check_document(arguments: Arguments, data: bytes) -> Documents:
    """Everything that can be said about a recipe, a paper set or a bench.

    A document with errors is answered with 200 and `fine: false`; only bytes that cannot be read are a problem.
    """
    colourway = arguments.get("colourway")
    set_id = arguments.get("set") or (colour.set_of(colourway) if colourway else None)
    papers = collection().paper_set(set_id) if set_id else None
    reading = read_any(data)
    bench = collection().bench(arguments.get("bench"), unit=reading.model.unit)
    return (check(reading, bench, papers, colourway),)
