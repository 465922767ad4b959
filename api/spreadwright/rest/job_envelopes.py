"""The shape of what is told about a job; `job_answers` fills it."""

from marshmallow.fields import DateTime, Dict, Float, String
from marshmallow.validate import OneOf

from spreadwright.rest.envelopes import Envelope, said
from spreadwright.store.jobs import JobState as State


class JobState(Envelope):
    """Work that takes longer than a client should wait."""

    id = String()
    verb = String(metadata=said("The `operationId` of what was asked."))
    state = String(validate=OneOf([each.value for each in State]))
    progress = Float(metadata=said("The share that is done, 0 to 1, as far as it is known."))
    words = String(metadata=said("What is done at the moment; empty when nothing is told."))
    made_at = DateTime(format="iso")
    changed_at = DateTime(format="iso")
    links = Dict(keys=String(), values=String(), metadata=said("`self`; `result`, once it is done or failed."))
