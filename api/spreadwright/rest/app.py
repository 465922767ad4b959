"""The Flask application: the API, and the gallery wherever the API claims nothing."""

from pathlib import Path

from flask import Flask
from werkzeug.exceptions import NotFound

from spreadwright.rest.bodies import READ_AT_MOST
from spreadwright.rest.examples import examples_from
from spreadwright.rest.headers import with_common_headers
from spreadwright.rest.openapi import OpenApi, openapi_document
from spreadwright.rest.pages import nothing_here, page
from spreadwright.rest.problems import KINDS, problem
from spreadwright.rest.service import Service
from spreadwright.rest.site import Site
from spreadwright.rest.views import BLUEPRINTS
from spreadwright.store import Collection


def create_app(collection: Collection, gallery: Path | None = None) -> Flask:
    """The service over a collection.

    Args:
        collection: Read once, here and now, and by no request.
        gallery: The folder of the built gallery, if there is one.
    """
    collection.recipes, collection.paper_sets, collection.benches  # noqa: B018
    app = Flask("spreadwright", static_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = READ_AT_MOST
    Service(collection, Site(gallery)).attach(app)
    api = OpenApi(app)
    for blueprint in BLUEPRINTS:
        api.register_blueprint(blueprint)
    app.extensions["openapi"] = openapi_document(api.spec.to_dict(), examples_from(collection))
    for kind in KINDS:
        app.register_error_handler(kind, nothing_here if kind is NotFound else problem)
    app.before_request(page)
    app.after_request(with_common_headers)
    return app
