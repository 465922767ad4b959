"""What every view of one application shares: the store, the gallery, the bodies made lately, settings and counts."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from flask import Flask, current_app

from spreadwright.rest.memory import Memory
from spreadwright.rest.metrics import Metrics
from spreadwright.rest.settings import Settings
from spreadwright.rest.site import Site
from spreadwright.store.opening import Store

if TYPE_CHECKING:
    from spreadwright.rest.shelf import Shelf

_NAME = "spreadwright"


@dataclass(frozen=True, slots=True)
class Service:
    """The things that an application is made with."""

    store: Store
    site: Site
    settings: Settings
    metrics: Metrics
    shelf: "Shelf"
    memory: Memory = field(default_factory=Memory)

    def attach(self, app: Flask) -> None:
        """Makes it the service of an application."""
        app.extensions[_NAME] = self


def service() -> Service:
    """The service of the application that answers the request at hand."""
    found: Service = current_app.extensions[_NAME]
    return found


def collection() -> "Shelf":
    """The documents that whoever asks may read."""
    return service().shelf
