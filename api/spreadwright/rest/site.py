"""The gallery: a folder of plain files, served wherever no route of the API claims the path.

Its content is trusted, since we built it; what is asked of it is not.
"""

from dataclasses import dataclass
from pathlib import Path

from werkzeug.security import safe_join

PAGE = "text/html; charset=utf-8"
MEDIA_TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": PAGE,
    ".ico": "image/x-icon",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".ttf": "font/ttf",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
    ".webp": "image/webp",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
}
"""Our own table, so that the machine's does not decide."""


@dataclass(frozen=True, slots=True)
class Site:
    """The files of the gallery, or of none.

    Args:
        folder: Where the built pages lie; None when there are none.
    """

    folder: Path | None = None

    def file(self, path: str) -> Path | None:
        """The file of a path that starts with `/`; of a folder its index."""
        inside = path[1:] + ("index.html" if path.endswith("/") else "")
        joined = safe_join(str(self.folder), inside) if self.folder else None
        if joined is None or any(step.startswith(".") for step in inside.split("/")):
            return None
        return self._own(Path(joined))

    def _own(self, file: Path) -> Path | None:
        """The file if it is one and lies in the folder, links followed."""
        try:
            is_own = file.is_file() and file.resolve().is_relative_to(Path(str(self.folder)).resolve())
        except (OSError, ValueError):  # a name that no file can have
            return None
        return file if is_own else None


def media_type(file: Path) -> str:
    """The media type of a file of the gallery."""
    return MEDIA_TYPES.get(file.suffix.lower(), "application/octet-stream")
