"""Documents as files."""

from pathlib import Path

from spreadwright.document import MOST_BYTES
from spreadwright.errors import UnreadableDocument


def document_bytes(file: Path) -> bytes:
    """The bytes of a file, never more than one over what a document may have.

    Raises:
        UnreadableDocument: The file cannot be opened.
    """
    try:
        with file.open("rb") as opened:
            return opened.read(MOST_BYTES + 1)
    except OSError as reason:
        raise UnreadableDocument(
            f"The file {file} cannot be read: {reason.strerror}.", "Check its name and permissions."
        ) from reason
