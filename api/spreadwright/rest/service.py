"""What every view of one application shares: the collection, the gallery, and the bodies made lately."""

from dataclasses import dataclass, field

from flask import Flask, current_app

from spreadwright.rest.memory import Memory
from spreadwright.rest.site import Site
from spreadwright.store import Collection

_NAME = "spreadwright"


@dataclass(frozen=True, slots=True)
class Service:
    """The things that an application is made with."""

    collection: Collection
    site: Site
    memory: Memory = field(default_factory=Memory)

    def attach(self, app: Flask) -> None:
        """Makes it the service of an application."""
        app.extensions[_NAME] = self


def service() -> Service:
    """The service of the application that answers the request at hand."""
    found: Service = current_app.extensions[_NAME]
    return found


def collection() -> Collection:
    """Its collection."""
    return service().collection
