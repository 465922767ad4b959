"""The shapes of what is told about kinds of problems; `problem_pages` fills them."""

from marshmallow.fields import Dict, Integer, List, Nested, String

from spreadwright.rest.envelopes import Envelope, said


class ProblemKind(Envelope):
    """One kind of problem, and what it means."""

    code = String(metadata=said("The last part of its `type`."))
    type = String(metadata=said("Permanent name of the kind of problem.", format="uri"))
    status = Integer()
    title = String()
    means = String()
    remedy = String(metadata=said("What helps."))
    links = Dict(keys=String(), values=String())


class ProblemKindList(Envelope):
    """Every kind of problem."""

    problems = List(Nested(ProblemKind))
