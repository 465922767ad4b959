"""The pictures of a paper set: files in the folder beside its document that has the document's name.

recipes/paper-sets/harbour.json   recipes/paper-sets/harbour/rope.png
"""

import os
from pathlib import Path

from spreadwright.document import Pictures, is_plain_name
from spreadwright.errors import UnreadablePicture, nearest_hint

MOST_BYTES = 16 * 1024 * 1024
"""Of one file; a scan of a whole sheet as JPEG has 4 MB."""


def pictures_beside(document: Path) -> Pictures:
    """What finds the pictures that the paper set in a file names.

    It raises `UnreadablePicture` for what is missing, too large, no file, or a link that leads out of the folder.
    """
    folder = document.with_suffix("")

    def found(name: str) -> bytes:
        if not is_plain_name(name):
            raise _outside(name, folder)
        path = folder / name
        if not os.path.lexists(path):
            raise _missing(name, folder)
        if path.resolve() != folder.parent.resolve() / folder.name / name:
            raise _outside(name, folder)
        return _bytes(path)

    return found


def _bytes(path: Path) -> bytes:
    if not path.is_file():  # a device or a pipe would never end
        raise UnreadablePicture("not-a-picture", "It is no file.", "Put a PNG or JPEG there.", name=path.name)
    try:
        with path.open("rb") as opened:
            data = opened.read(MOST_BYTES + 1)
    except OSError as reason:
        told = f"The file cannot be read: {reason.strerror}."
        raise UnreadablePicture("picture-missing", told, "Check its permissions.", name=path.name) from reason
    if len(data) > MOST_BYTES:
        told = f"The file has more than {MOST_BYTES // 1024**2} MB."
        raise UnreadablePicture("picture-too-large", told, "Save it as JPEG, or with fewer pixels.", name=path.name)
    return data


def _missing(name: str, folder: Path) -> UnreadablePicture:
    there = sorted(each.name for each in folder.iterdir()) if folder.is_dir() else []
    hint = nearest_hint(name, there) if there else ""
    remedy = hint if hint.startswith("Did") else f"Put it into the folder “{folder.name}” beside the document."
    return UnreadablePicture("picture-missing", "There is no such file.", remedy, name=name)


def _outside(name: str, folder: Path) -> UnreadablePicture:
    told = f"It lies outside the folder “{folder.name}”."
    return UnreadablePicture("picture-outside-folder", told, "Copy the file itself into the folder.", name=name)
