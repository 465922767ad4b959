"""What a gallery follows from besides its documents: this code, the libraries that it stands on, and the theme."""

import re
import sys
from collections.abc import Iterator
from functools import cache
from hashlib import sha256
from importlib import metadata
from pathlib import Path

import spreadwright
from spreadwright import shipped

_ASIDE = ("cli", "client", "rest", "store")
"""Rooms of which no page follows."""
_NAME = re.compile(r"[A-Za-z0-9._-]+")


@cache
def code() -> str:
    """A fingerprint of the code and its libraries, taken once, since a process keeps what it began with."""
    root = Path(str(spreadwright.__file__)).parent
    schemas = [(each.name, each) for each in sorted(shipped.folder("schema").iterdir())]
    told = sha256(f"{spreadwright.__version__} {sys.version_info} {sorted(_libraries())}".encode())
    for name, file in (*_files(root, root), *schemas):
        told.update(f"{name} {sha256(file.read_bytes()).hexdigest()}".encode())
    return told.hexdigest()


def theme() -> str:
    """A fingerprint of the templates and of what stands in the navigation."""
    site = shipped.folder("site")
    files = [site / "mkdocs.yml", *sorted(site.joinpath("theme").rglob("*.html"))]
    told = sha256()
    for file in files:
        told.update(f"{file.relative_to(site)} {sha256(file.read_bytes()).hexdigest()}".encode())
    return told.hexdigest()


def _files(folder: Path, root: Path) -> Iterator[tuple[str, Path]]:
    """Every file that makes a difference, by its path, in order."""
    for entry in sorted(folder.iterdir()):
        name = entry.relative_to(root).as_posix()
        if entry.is_dir():
            if entry.name not in ("__pycache__", "shipped") and name not in _ASIDE:
                yield from _files(entry, root)
        elif entry.suffix != ".pyc":
            yield name, entry


def _libraries() -> Iterator[str]:
    """What the package asks for, with the versions that are there."""
    try:
        asked = metadata.requires("spreadwright") or []
    except metadata.PackageNotFoundError:  # run from a folder that was never installed
        return
    for line in asked:
        name = _NAME.match(line)
        try:
            yield f"{line} {metadata.version(name[0])}" if name else line
        except metadata.PackageNotFoundError:  # one of an extra
            yield line
