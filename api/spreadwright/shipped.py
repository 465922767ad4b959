"""Where the schemas, the collection and the site's sources lie: inside the installed package, or in a checkout."""

from importlib.resources import files
from pathlib import Path


def folder(name: str) -> Path:
    """The folder `schema`, `recipes` or `site` that ships with this package."""
    package = Path(str(files("spreadwright")))
    installed = package / "shipped" / name
    return installed if installed.is_dir() else package.parents[1] / name
