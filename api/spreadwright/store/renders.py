"""Rendered files by the hash of what they show: in a folder, or in any place that fsspec reaches."""

import os
from hashlib import sha256
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any, Protocol

from spreadwright import __version__
from spreadwright.errors import CannotWrite
from spreadwright.store.errors import BadAddress


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
    """An object store; its library is loaded when it is needed."""

    def __init__(self, address: str) -> None:
        import fsspec

        try:
            self._files, self._root = fsspec.core.url_to_fs(address)
        except (ImportError, ValueError) as reason:
            raise BadAddress(address.rpartition("@")[2], f"{reason}.") from reason

    def get(self, key: str) -> bytes | None:
        """The file of a key."""
        try:
            found: Any = self._files.cat_file(f"{self._root}/{_path(key)}")
        except OSError:
            return None
        return bytes(found)

    def put(self, key: str, data: bytes) -> None:
        """One request, which object stores carry out wholly or not at all."""
        try:
            self._files.pipe_file(f"{self._root}/{_path(key)}", data)
        except OSError as reason:
            raise CannotWrite(f"{self._root}/{_path(key)}", str(reason)) from reason


def _path(key: str) -> str:
    """Folders of a thousandth each, since some places grow slow with many files in one."""
    if len(key) != 64 or not set(key) <= set("0123456789abcdef"):
        raise ValueError(key)
    return f"{key[:3]}/{key}"
