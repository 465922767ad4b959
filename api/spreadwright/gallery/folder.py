"""A folder that is replaced as a whole: built beside the old one, then put in its place."""

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from spreadwright.errors import SpreadwrightError

SIGN = Path("assets") / "gallery.css"
"""What every gallery has: a folder without it is somebody's own and stays as it is."""


class NotAGallery(SpreadwrightError):
    """The folder to write to holds something that is not a gallery."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self.folder = folder

    def __str__(self) -> str:
        return f"{self.folder} is not empty and holds no gallery. Name another folder, or empty this one."


@contextmanager
def replaced(output: Path) -> Iterator[Path]:
    """An empty folder to build in; it takes the place of `output` when the block ends without an exception.

    Raises:
        NotAGallery: `output` exists, is not empty, and was not built by us.
    """
    target = output.resolve()
    if not _is_replaceable(target):
        raise NotAGallery(output)
    target.parent.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory(prefix=f".{target.name}-", dir=target.parent) as beside:
        stage = Path(beside) / "new"
        stage.mkdir()
        yield stage
        _swap(stage, target, Path(beside) / "old")


def _is_replaceable(target: Path) -> bool:
    if not target.exists():
        return True
    return target.is_dir() and ((target / SIGN).is_file() or not any(target.iterdir()))


def _swap(stage: Path, target: Path, old: Path) -> None:
    """Two renames; when the second fails, the first is undone."""
    if not target.exists():
        stage.rename(target)
        return
    target.rename(old)
    try:
        stage.rename(target)
    except BaseException:
        old.rename(target)
        raise
    shutil.rmtree(old, ignore_errors=True)
