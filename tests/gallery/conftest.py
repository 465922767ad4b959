from pathlib import Path

import pytest

from gallery.built import write_collection
from spreadwright.gallery import build
from spreadwright.store import Collection


@pytest.fixture(scope="session")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Collection:
    return Collection(write_collection(tmp_path_factory.mktemp("collection")))


@pytest.fixture(scope="session")
def site(collection: Collection, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The gallery of a small collection; not to be written to."""
    output = tmp_path_factory.mktemp("built") / "gallery"
    build(collection, output)
    return output
