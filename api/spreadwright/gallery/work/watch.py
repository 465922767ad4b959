"""Files that are looked at again and again: what changed, as soon as it is quiet."""

import os
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path

from spreadwright import shipped

_Seen = dict[str, tuple[int, int]]
"""When each file was changed, and how many bytes it has."""


def sources(collection: Path) -> tuple[Path, ...]:
    """What a gallery of a collection follows from: documents and pictures, and the site's own sources."""
    return collection, collection / "paper-sets", collection / "benches", shipped.folder("site")


class Watch:
    """Remembers how files were when it began.

    Args:
        folders: Their files, and those of all folders within, but for the first folder, of which only the documents.
        poll_s: How long to wait between two looks.
        quiet_s: How long nothing may change before it counts as done: editors save in several steps.
        sleep: Waits for so many seconds.
    """

    def __init__(
        self,
        folders: Sequence[Path],
        *,
        poll_s: float = 0.5,
        quiet_s: float = 0.3,
        sleep: Callable[[float], None] = time.sleep,
    ) -> None:
        self._folders = tuple(folders)
        self._poll_s, self._quiet_s, self._sleep = poll_s, quiet_s, sleep
        self._seen = self._look()

    def changed(self) -> tuple[str, ...]:
        """Waits until something has changed since the last time, and then is quiet; what it was, by path."""
        while (now := self._look()) == self._seen:
            self._sleep(self._poll_s)
        while True:
            self._sleep(self._quiet_s)
            before, now = now, self._look()
            if now == before:
                break
        before, self._seen = self._seen, now
        return tuple(sorted(name for name in {*before, *now} if before.get(name) != now.get(name)))

    def _look(self) -> _Seen:
        top, *others = self._folders
        return dict(_seen((*top.glob("*.json"), *(file for folder in others for file in _files(folder)))))


def _files(folder: Path) -> Iterator[Path]:
    """Every file of a folder and of those within; what begins with a dot belongs to editors and the like."""
    for at, inner, names in os.walk(folder):
        inner[:] = [name for name in inner if not name.startswith(".")]
        yield from (Path(at, name) for name in names if not name.startswith("."))


def _seen(files: Iterable[Path]) -> Iterator[tuple[str, tuple[int, int]]]:
    for file in files:
        try:
            about = file.stat()
        except OSError:  # gone between two looks
            continue
        yield str(file), (about.st_mtime_ns, about.st_size)
