"""For whoever runs the service: whether it lives, whether it is ready, and its counts."""

from typing import Any

from spreadwright.rest.forms import Arguments, Form, json_form
from spreadwright.rest.metrics import MEDIA_TYPE
from spreadwright.rest.operation_envelopes import Alive
from spreadwright.rest.readiness import NotReady
from spreadwright.rest.replies import UNKEPT
from spreadwright.rest.resources import Documents, Resources
from spreadwright.rest.service import service

blueprint = Resources("operations", __name__, description=__doc__)


def _ok(_: Arguments) -> dict[str, Any]:
    return {"status": "ok"}


def _text(_: Arguments, text: bytes) -> bytes:
    return text


@blueprint.resource("/health/live", json_form(_ok, Alive, is_work=False), cache=UNKEPT)
def live(_: Arguments) -> Documents:
    """That the process answers; it asks nobody else."""
    return ()


@blueprint.resource("/health/ready", json_form(_ok, Alive, is_work=False), cache=UNKEPT)
def ready(_: Arguments) -> Documents:
    """That the database answers too; 503 while it does not."""
    if not service().store.database.is_ready():
        raise NotReady
    return ()


@blueprint.resource("/metrics", Form("txt", MEDIA_TYPE, _text, {"type": "string"}, is_work=False), cache=UNKEPT)
def metrics(_: Arguments) -> Documents:
    """Counts and times of requests over all processes, in the text format of Prometheus."""
    return (service().metrics.text(),)
