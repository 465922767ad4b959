"""What was made before, in a folder, each by the fingerprint of what it follows from.

One file holds one result: a line with the SHA-256 of the rest, a line of JSON, and the bytes of all files in a row.
Nothing is unpickled, and what does not have its hash was never there.
"""

import json
import os
import stat
import time
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any

from spreadwright.errors import SpreadwrightError
from spreadwright.gallery.make import Made, Told
from spreadwright.gallery.work.plain import as_plain, from_plain

LEAST_BYTES = 2**30
"""What is kept at least is not thrown away, however little of it the last gallery took."""
_UNFINISHED, _DAY_S = "unfinished-", 86_400


class CannotKeep(SpreadwrightError):
    """The folder is not for keeping things in."""

    def __init__(self, folder: Path, reason: str) -> None:
        super().__init__(folder, reason)
        self.folder = folder
        self.reason = reason

    def __str__(self) -> str:
        return f"Nothing is kept in {self.folder} for the next build: {self.reason}."


class Kept:
    """Results in a folder that is nobody else's.

    Args:
        folder: Made when missing.
        least_bytes: So much is kept at least.

    Raises:
        CannotKeep: It cannot be written, or others could write to it.
    """

    def __init__(self, folder: Path, least_bytes: int = LEAST_BYTES) -> None:
        self._folder = folder
        self._least_bytes = least_bytes
        self._used: set[str] = set()
        try:
            folder.mkdir(mode=0o700, parents=True, exist_ok=True)
            _refuse_shared(folder)
        except OSError as reason:
            raise CannotKeep(folder, reason.strerror or str(reason)) from reason

    def get(self, key: str, kind: type[Told]) -> Made[Told] | None:
        """What was kept under a fingerprint, if it is there and whole; `kind` is what is told of the files."""
        file = self._folder / key
        try:
            data = file.read_bytes()
            os.utime(file)
        except OSError:
            return None
        made = _read(data, kind)
        if made:
            self._used.add(key)
        return made

    def put(self, key: str, made: Made[Any]) -> None:
        """Keep a result, whole or not at all; a full disk is no reason to stop."""
        self._used.add(key)
        unfinished = None
        try:
            with NamedTemporaryFile(prefix=_UNFINISHED, dir=self._folder, delete=False) as file:
                unfinished = Path(file.name)
                file.writelines(_written(made))
            unfinished.replace(self._folder / key)
        except OSError:
            if unfinished:
                unfinished.unlink(missing_ok=True)

    def trim(self) -> None:
        """Throw away what was not used for longest, until twice what was used now is left, and what is broken off."""
        found = sorted(self._entries(), key=lambda each: (each[0] not in self._used, -each[1].st_mtime_ns, each[0]))
        room = max(self._least_bytes, 2 * sum(about.st_size for name, about in found if name in self._used))
        for name, about in found:
            room -= about.st_size
            is_broken_off = name.startswith(_UNFINISHED) and about.st_mtime < time.time() - _DAY_S
            if is_broken_off or (room < 0 and name not in self._used):
                (self._folder / name).unlink(missing_ok=True)
        self._used.clear()

    def _entries(self) -> Iterator[tuple[str, os.stat_result]]:
        with os.scandir(self._folder) as entries:
            for entry in entries:
                try:
                    yield entry.name, entry.stat(follow_symlinks=False)
                except FileNotFoundError:  # thrown away by another build
                    continue


def _refuse_shared(folder: Path) -> None:
    about = folder.stat()
    if about.st_uid != os.geteuid():
        raise CannotKeep(folder, "it belongs to somebody else")
    if about.st_mode & (stat.S_IWGRP | stat.S_IWOTH):
        raise CannotKeep(folder, "others could write to it")


def _written(made: Made[Any]) -> tuple[bytes, ...]:
    listed = [[path, len(data)] for path, data in made.files.items()]
    head = json.dumps({"told": as_plain(made.told), "files": listed}).encode() + b"\n"
    told = sha256(head)
    for data in made.files.values():
        told.update(data)
    return told.hexdigest().encode() + b"\n", head, *made.files.values()


def _read(data: bytes, kind: type[Told]) -> Made[Told] | None:
    told, _, rest = data.partition(b"\n")
    if sha256(rest).hexdigest().encode() != told:
        return None
    head, _, content = rest.partition(b"\n")
    try:
        found = json.loads(head)
        return Made(dict(_parted(found["files"], content)), from_plain(kind, found["told"]))
    except (TypeError, ValueError, KeyError):  # of another version, whose fingerprint happens to be the same
        return None


def _parted(listed: list[Any], content: bytes) -> Iterator[tuple[str, bytes]]:
    start = 0
    for path, length in listed:
        yield path, content[start : start + length]
        start += length
