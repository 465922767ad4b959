"""Random requests to every operation, as the description of the service allows them and as it does not.

On the database that SPREADWRIGHT_DATABASE_URL names; on a SQLite file of its own without it.
"""

import os

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig
from schemathesis.specs.openapi.checks import ignored_auth

from spreadwright.rest import create_app
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

REFUSALS = [400, 401, 403, 404, 406, 409, 410, 412, 413, 415, 422, 428, 429, 503]
CONFIG = {
    "checks": {
        "positive_data_acceptance": {"expected-statuses": ["2xx", 303, 304, *REFUSALS]},
        "missing_required_header": {"expected-statuses": REFUSALS},
        "negative_data_rejection": {"expected-statuses": REFUSALS},
    }
}
STORE = open_store()
TOKEN = STORE.tokens.create("fuzz", ("write", "review", "admin")).secret
HEADERS = {"Authorization": f"Bearer {TOKEN}"}
APP = create_app(Collection(), store=STORE)
SCHEMA = schemathesis.openapi.from_wsgi("/openapi.json", APP, config=SchemathesisConfig.from_dict(CONFIG))
LONG = int(os.environ.get("FUZZ", "50"))
PATIENT = {"deadline": None, "suppress_health_check": list(HealthCheck)}


class Walk(SCHEMA.as_state_machine()):
    """Goes from answer to answer along the links that the description names."""

    def get_call_kwargs(self, case):
        return {"headers": HEADERS}

    def validate_response(self, response, case, additional_checks=(), **_):
        """Our token takes the place of the one that was made up, so nothing can be said about that one here."""
        case.validate_response(response, additional_checks=additional_checks, excluded_checks=[ignored_auth])


def test_links_lead_where_they_promise():
    Walk.run(settings=settings(max_examples=5, stateful_step_count=5, derandomize=True, **PATIENT))


@pytest.mark.fuzz
def test_links_lead_where_they_promise_for_long():
    Walk.run(settings=settings(max_examples=LONG, stateful_step_count=8, **PATIENT))


def holding(operation: str, **limits):
    """A test of one operation, by its id."""

    @SCHEMA.include(operation_id=operation).parametrize()
    @settings(**limits, **PATIENT)
    def holds(case):
        case.call_and_validate(headers=HEADERS)

    return holds


# Each has a name of its own: runners on several cores take tests of one name for one test.
for found in SCHEMA.get_all_operations():
    name = found.ok().definition.raw["operationId"]
    globals()[f"test_{name}_holds_what_it_promises"] = holding(name, max_examples=1, derandomize=True)
    globals()[f"test_{name}_holds_it_for_long"] = pytest.mark.fuzz(holding(name, max_examples=LONG))
