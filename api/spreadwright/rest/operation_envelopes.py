"""The shapes of what is answered to whoever runs the service."""

from marshmallow.fields import String

from spreadwright.rest.envelopes import Envelope


class Alive(Envelope):
    """That all is well."""

    status = String(metadata={"description": "Always `ok`; anything else is a problem."})
