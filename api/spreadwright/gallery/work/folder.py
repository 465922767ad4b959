"""A folder that is replaced as a whole: built beside the old one, then put in its place."""

import json
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NoReturn

from spreadwright.errors import SpreadwrightError

MARKER = ".spreadwright-gallery"
"""Lies in every gallery and lists its files, so that whatever else lies there is known to be somebody's own."""


class NotAGallery(SpreadwrightError):
    """The folder to write to holds something that was not built."""

    def __init__(self, folder: Path, stranger: str = "") -> None:
        super().__init__(folder, stranger)
        self.folder = folder
        self.stranger = stranger

    def __str__(self) -> str:
        if not self.stranger:
            return f"“{self.folder}” is not a folder. Name another one."
        return f"“{self.stranger}” in {self.folder} is not part of a gallery. Name another folder, or move it away."


class CannotWrite(SpreadwrightError):
    """The folder cannot be written; the system's error is the cause."""

    def __init__(self, folder: Path, reason: str) -> None:
        super().__init__(folder, reason)
        self.folder = folder
        self.reason = reason

    def __str__(self) -> str:
        return f"The gallery cannot be written to {self.folder}: {self.reason}."


@contextmanager
def replaced(output: Path) -> Iterator[Path]:
    """An empty folder to build in; it takes the place of `output` when the block ends without an exception.

    Raises:
        NotAGallery: `output` holds something that was not built by us.
        CannotWrite: It cannot be written.
    """
    try:
        target = Path(os.path.realpath(output))
        _refuse_strangers(target, output)
        target.parent.mkdir(parents=True, exist_ok=True)
        with TemporaryDirectory(prefix=f".{target.name}-", dir=target.parent) as beside:
            stage = Path(beside) / "new"
            stage.mkdir()
            yield stage
            _mark(stage)
            _refuse_strangers(target, output)  # a build takes long enough to put something there
            _swap(stage, target, Path(beside) / "old")
    except OSError as reason:
        _refuse(output, reason)


def _refuse(output: Path, reason: OSError) -> NoReturn:
    if isinstance(reason, BrokenPipeError):  # whoever was told of the progress has gone: no fault of the folder
        raise reason
    raise CannotWrite(output, reason.strerror or str(reason)) from reason


def _refuse_strangers(target: Path, output: Path) -> None:
    if not os.path.lexists(target):
        return
    if not target.is_dir():
        raise NotAGallery(output)
    listed = _listed(target / MARKER)
    strangers = (path for path, is_link in _files(target) if is_link or path not in listed)
    stranger = next(strangers, "")
    if not (stranger or listed):  # empty folders, which are somebody's too
        stranger = min((entry.name for entry in target.iterdir()), default="")
    if stranger:
        raise NotAGallery(output, stranger)


def _mark(stage: Path) -> None:
    paths = [path for path, _ in _files(stage)]
    (stage / MARKER).write_text(json.dumps(paths, indent=0) + "\n", encoding="ascii")


def _listed(marker: Path) -> set[str]:
    """What a marker lists, and itself; nothing where there is none."""
    try:
        paths = json.loads(marker.read_bytes())
    except (FileNotFoundError, IsADirectoryError, ValueError, RecursionError):
        return set()
    return {MARKER, *(path for path in paths if isinstance(path, str))} if isinstance(paths, list) else set()


def _files(folder: Path) -> Iterator[tuple[str, bool]]:
    """Every file below a folder by its path, in order, and whether it is a link; links are not followed."""
    for entry in sorted(os.scandir(folder), key=lambda each: each.name):
        if entry.is_dir(follow_symlinks=False):
            yield from ((f"{entry.name}/{path}", is_link) for path, is_link in _files(Path(entry.path)))
        else:
            yield entry.name, entry.is_symlink()


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
