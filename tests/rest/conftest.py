import json

import pytest

from builder import PAPERS, sound, spoilt
from spreadwright import shipped
from spreadwright.rest import create_app
from spreadwright.store import Collection

PAGE = "<html><head><script>var here = 1</script></head><body>Window seat</body></html>"


@pytest.fixture(scope="session")
def folder(tmp_path_factory):
    """Three recipes, of which one has an error, one paper set, and the benches that ship."""
    root = tmp_path_factory.mktemp("collection")
    (root / "benches").mkdir()
    (root / "paper-sets").mkdir()
    for bench in (shipped.folder("recipes") / "benches").glob("*.json"):
        (root / "benches" / bench.name).write_bytes(bench.read_bytes())
    (root / "window-seat.json").write_bytes(sound())
    (root / "window-two.json").write_bytes(sound())
    (root / "broken.json").write_bytes(spoilt(lambda recipe: recipe["placements"].pop()))
    (root / "paper-sets" / "two.json").write_text(json.dumps(PAPERS))
    return root


@pytest.fixture(scope="session")
def gallery(tmp_path_factory):
    """A gallery of a few pages, in a folder beside something that is nobody's business."""
    root = tmp_path_factory.mktemp("built")
    (root / "secret.txt").write_text("nobody's business")
    pages = root / "gallery"
    (pages / "recipes" / "window-seat").mkdir(parents=True)
    (pages / "about").mkdir()
    for page in ("index.html", "about/index.html", "recipes/window-seat/index.html", "404.html"):
        (pages / page).write_text(PAGE)
    (pages / "style.css").write_text("body { color: black }")
    (pages / "mark.svg").write_text("<svg xmlns='http://www.w3.org/2000/svg'/>")
    for script in ("sw.js", "app.js"):
        (pages / script).write_text("self.here = 1;")
    (pages / ".hidden").write_text("hidden")
    (pages / "way-out.txt").symlink_to(root / "secret.txt")
    return pages


@pytest.fixture(scope="session")
def app(folder):
    """The service without a gallery."""
    return create_app(Collection(folder))


@pytest.fixture
def client(app):
    return app.test_client()


@pytest.fixture(scope="session")
def site_app(folder, gallery):
    return create_app(Collection(folder), gallery)


@pytest.fixture
def site(site_app):
    """A client of the service with a gallery."""
    return site_app.test_client()
