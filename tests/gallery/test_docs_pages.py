import re

from spreadwright import shipped
from spreadwright.drawing.raster import NARROWEST_PX, WIDEST_PX
from spreadwright.rest import create_app
from spreadwright.rest.queries import FURTHEST
from spreadwright.store import Collection

DOCS = shipped.folder("site") / "docs"


def test_every_address_of_the_service_is_listed():
    listed = set(re.findall(r"^\| `([^`]+)`", (DOCS / "http.md").read_text(), re.MULTILINE))
    answered = create_app(Collection()).test_client().get("/openapi.json").get_json()["paths"]
    assert listed == {path for path in answered if "{suffix}" not in path and path != "/"}


def test_bounds_of_the_service_are_as_told():
    told = (DOCS / "http.md").read_text()
    assert f"{NARROWEST_PX} to {WIDEST_PX} pixels" in told and f"`start`\n{FURTHEST}" in told
