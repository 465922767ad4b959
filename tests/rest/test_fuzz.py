"""Random requests to every operation, as the description of the service allows them and as it does not."""

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.config import SchemathesisConfig

from spreadwright.rest import create_app
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

REFUSED = ["2xx", 400, 401, 403, 404, 406, 409, 410, 412, 413, 415, 422, 428, 429, 503]
CONFIG = {
    "checks": {
        "positive_data_acceptance": {"expected-statuses": REFUSED},
        "missing_required_header": {"expected-statuses": [*REFUSED[1:]]},
        "negative_data_rejection": {"expected-statuses": REFUSED[1:]},
    }
}
STORE = open_store()
TOKEN = STORE.tokens.create("fuzz", ("write", "review", "admin")).secret
APP = create_app(Collection(), store=STORE)
SCHEMA = schemathesis.openapi.from_wsgi("/openapi.json", APP, config=SchemathesisConfig.from_dict(CONFIG))
PATIENT = {"deadline": None, "suppress_health_check": list(HealthCheck)}


@SCHEMA.parametrize()
@settings(max_examples=2, derandomize=True, **PATIENT)
def test_every_operation_holds_what_it_promises(case):
    case.call_and_validate(headers={"Authorization": f"Bearer {TOKEN}"})


@pytest.mark.fuzz
@SCHEMA.parametrize()
@settings(max_examples=100, **PATIENT)
def test_every_operation_holds_what_it_promises_for_long(case):
    case.call_and_validate(headers={"Authorization": f"Bearer {TOKEN}"})
