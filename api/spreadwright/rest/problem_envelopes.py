"""The shapes of what is told about kinds of problems; `problem_pages` fills them."""

from marshmallow.fields import Dict, Integer, List, Nested, String

from spreadwright.rest.envelopes import Envelope


class ProblemKind(Envelope):
    """One kind of problem, and what it means."""

    code = String(metadata={"description": "The last part of its `type`."})
    type = String(metadata={"description": "Permanent name of the kind of problem.", "format": "uri"})
    status = Integer()
    title = String()
    means = String()
    remedy = String(metadata={"description": "What helps."})
    links = Dict(keys=String(), values=String())


class ProblemKindList(Envelope):
    """Every kind of problem."""

    problems = List(Nested(ProblemKind))
