"""The reference that people browse: pages made from the description of the service, with nothing from elsewhere."""

from spreadwright.rest.reference.outline import outline
from spreadwright.rest.reference.typeset import page

__all__ = ["outline", "page"]
