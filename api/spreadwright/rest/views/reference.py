"""Everything that can be asked, for people to browse."""

from flask import current_app, request

from spreadwright.rest.forms import Arguments, html_form
from spreadwright.rest.openapi import DESCRIPTION
from spreadwright.rest.reference import outline, page
from spreadwright.rest.resources import Documents, Resources

blueprint = Resources("reference", __name__, description=__doc__)


def _reference(_: Arguments, root: str) -> bytes:
    found = outline(current_app.extensions["openapi"])
    return page("reference", root, outline=found, described=DESCRIPTION)


@blueprint.resource("/reference", html_form(_reference))
def reference(_: Arguments) -> Documents:
    """This service, described for people; `/openapi.json` describes it for programs."""
    return (request.script_root,)
