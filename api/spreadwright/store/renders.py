"""Rendered files by the hash of what they show: in a folder, or in any place that fsspec reaches."""

import math
import os
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile
from time import monotonic
from typing import Any, Protocol

from spreadwright import __version__
from spreadwright.errors import CannotWrite
from spreadwright.store.errors import BadAddress

AWAY_S = 30.0
"""How long an object store that failed is left alone, so that its absence slows nobody down."""


class Renders(Protocol):
    """Where rendered files are kept. What is there under a key never changes."""

    def get(self, key: str) -> bytes | None:
        """The file of a key; None when it is not there."""

    def put(self, key: str, data: bytes) -> None:
        """Keeps a file, wholly or not at all."""


def render_key(*parts: object) -> str:
    """A key for what is shown, by which version of the program, in which form."""
    whole = sha256(__version__.encode())
    for part in parts:
        text = str(part).encode()
        whole.update(f"{len(text)}:".encode() + text)
    return whole.hexdigest()


def renders_at(address: str | None) -> Renders:
    """The place of an address: a folder, or anything with `://`; None keeps nothing.

    Raises:
        BadAddress: Nothing that is known here answers there.
    """
    if not address:
        return _Nowhere()
    is_remote = "://" in address and not address.startswith("file://")
    return _Remote(address) if is_remote else _Folder(Path(address.removeprefix("file://")))


class _Nowhere:
    """Keeps nothing."""

    def get(self, key: str) -> bytes | None:
        """None."""
        return None

    def put(self, key: str, data: bytes) -> None:
        """Nothing."""


class _Folder:
    """A folder of this machine, or one that is shared."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def get(self, key: str) -> bytes | None:
        """The file of a key."""
        try:
            return (self._folder / _path(key)).read_bytes()
        except OSError:
            return None

    def put(self, key: str, data: bytes) -> None:
        """Written beside its place and moved there, so that nobody reads half of it."""
        file = self._folder / _path(key)
        try:
            file.parent.mkdir(parents=True, exist_ok=True)
            with NamedTemporaryFile(dir=file.parent, delete=False) as beside:
                beside.write(data)
            os.replace(beside.name, file)  # noqa: PTH105
        except OSError as reason:
            raise CannotWrite(str(file), reason.strerror or str(reason)) from reason


class _Remote:
    """An object store. Its library is opened by each process for itself, since its threads do not outlive a fork."""

    def __init__(self, address: str) -> None:
        from fsspec import get_filesystem_class

        try:
            get_filesystem_class(address.partition("://")[0])
        except (ImportError, ValueError) as reason:
            raise BadAddress(address.rpartition("@")[2], f"{reason}.") from reason
        self._address = address
        self._of_process: tuple[int, Any, str] = (0, None, "")
        self._failed_at = -math.inf

    def get(self, key: str) -> bytes | None:
        """The file of a key; None, too, where the store does not answer."""
        path = _path(key)
        if self._is_away():
            return None
        try:
            files, root = self._opened()
            found: Any = files.cat_file(f"{root}/{path}")
        except FileNotFoundError:
            return None
        except Exception:  # each library has errors of its own
            self._failed_at = monotonic()
            return None
        return bytes(found)

    def put(self, key: str, data: bytes) -> None:
        """One request, which object stores carry out wholly or not at all."""
        path = _path(key)
        try:
            if self._is_away():
                raise TimeoutError("it has not answered just now")
            files, root = self._opened()
            files.pipe_file(f"{root}/{path}", data)
        except Exception as reason:
            self._failed_at = self._failed_at if self._is_away() else monotonic()
            raise CannotWrite(f"{self._address.rpartition('@')[2]}/{path}", f"{reason}") from reason

    def _is_away(self) -> bool:
        return monotonic() < self._failed_at + AWAY_S

    def _opened(self) -> tuple[Any, str]:
        from fsspec.core import url_to_fs

        process, files, root = self._of_process
        if process != os.getpid():
            files, root = url_to_fs(self._address)
            self._of_process = (os.getpid(), files, root)
        return files, root


def _path(key: str) -> str:
    """Folders of a thousandth each, since some places grow slow with many files in one."""
    if len(key) != 64 or not set(key) <= set("0123456789abcdef"):
        raise ValueError(key)
    return f"{key[:3]}/{key}"
