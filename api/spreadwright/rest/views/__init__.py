"""The resources, one small module each: a view finds documents, its forms show them.

Every module here that has a `blueprint` is served and described: a new verb is one more file.
"""

from importlib import import_module
from pkgutil import iter_modules

from spreadwright.rest.resources import Resources

_FIRST = ("home", "recipes", "paper_sets", "benches")
"""What the description of the service begins with."""


def _names() -> list[str]:
    found = sorted(module.name for module in iter_modules(__path__))
    return [*_FIRST, *(name for name in found if name not in _FIRST)]


BLUEPRINTS: tuple[Resources, ...] = tuple(import_module(f"{__name__}.{name}").blueprint for name in _names())
