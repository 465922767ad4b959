from collections.abc import Callable
from functools import partial
from pathlib import Path

import pytest

from gallery.built import write_collection
from spreadwright.gallery import Kept, build
from spreadwright.store import Collection


@pytest.fixture(scope="session")
def collection(tmp_path_factory: pytest.TempPathFactory) -> Collection:
    return Collection(write_collection(tmp_path_factory.mktemp("collection")))


@pytest.fixture(scope="session")
def make(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., None]:
    """Builds a gallery in this process, without making anew what was made before."""
    return partial(build, processes=1, kept=Kept(tmp_path_factory.mktemp("kept")))


@pytest.fixture(scope="session")
def site(collection: Collection, make: Callable[..., None], tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The gallery of a small collection; not to be written to."""
    output = tmp_path_factory.mktemp("built") / "gallery"
    make(collection, output)
    return output
