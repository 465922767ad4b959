"""The shapes of what is answered to whoever runs the service."""

from marshmallow.fields import String

from spreadwright.rest.envelopes import Envelope, said


class Alive(Envelope):
    """That all is well."""

    status = String(metadata=said("Always `ok`; anything else is a problem."))
