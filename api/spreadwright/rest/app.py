"""The Flask application: the API, and the gallery wherever the API claims nothing."""

from pathlib import Path

from flask import Flask
from gunicorn.http.errors import ParseException
from werkzeug.exceptions import NotFound
from werkzeug.middleware.proxy_fix import ProxyFix

from spreadwright.rest import jobs
from spreadwright.rest.bodies import READ_AT_MOST
from spreadwright.rest.examples import examples_from
from spreadwright.rest.headers import with_common_headers
from spreadwright.rest.metrics import Metrics
from spreadwright.rest.openapi import OpenApi, openapi_document
from spreadwright.rest.pages import nothing_here, page
from spreadwright.rest.problems import KINDS, badly_sent, problem
from spreadwright.rest.rates import with_allowance
from spreadwright.rest.service import Service
from spreadwright.rest.settings import Settings
from spreadwright.rest.shelf import Shelf
from spreadwright.rest.shortcut import Shortcut
from spreadwright.rest.site import Site
from spreadwright.rest.telemetry import end
from spreadwright.rest.views import BLUEPRINTS
from spreadwright.store import Collection
from spreadwright.store.importing import import_collection
from spreadwright.store.opening import Store, open_store


def create_app(
    collection: Collection,
    gallery: Path | None = None,
    *,
    settings: Settings | None = None,
    store: Store | None = None,
) -> Flask:
    """The service over a store, into which a collection is imported here and now.

    Args:
        collection: What is imported; what is there already stays as it is.
        gallery: The folder of the built gallery, if there is one.
        settings: The defaults when left out.
        store: Opened where the settings say when left out.
    """
    settings = settings or Settings()
    store = store or _opened(settings)
    import_collection(store.database, collection)
    app = Flask("spreadwright", static_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = READ_AT_MOST
    jobs.attach(app, store.jobs)
    api = OpenApi(app)
    for blueprint in BLUEPRINTS:
        api.register_blueprint(blueprint)
    headers = {place: taken for each in BLUEPRINTS for place, taken in each.headers.items()}
    app.extensions["openapi"] = openapi_document(api.spec.to_dict(), headers, examples_from(collection, store))
    metrics = Metrics(rule.endpoint for rule in app.url_map.iter_rules())
    service = Service(store, Site(gallery), settings, metrics, Shelf(store))
    service.attach(app)
    for kind in KINDS:
        app.register_error_handler(kind, nothing_here if kind is NotFound else problem)
    app.register_error_handler(ParseException, badly_sent)
    app.before_request(page)
    shortcut = Shortcut(app, service)
    # Flask goes through them from the last to the first
    for after in (shortcut.remember, end, with_allowance, with_common_headers):
        app.after_request(after)
    app.wsgi_app = shortcut  # type: ignore[method-assign]
    if settings.proxies:
        told = dict.fromkeys(("x_for", "x_proto", "x_host", "x_prefix"), settings.proxies)
        app.wsgi_app = ProxyFix(app.wsgi_app, **told)  # type: ignore[method-assign]
    return app


def _opened(settings: Settings) -> Store:
    renders, counters = settings.renders or None, settings.counters or None
    return open_store(settings.database_url or None, renders=renders, counters=counters)
