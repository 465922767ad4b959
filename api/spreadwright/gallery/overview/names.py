"""Names that people chose, as parts of addresses: tags and authors each have a page of their own."""

import re
import unicodedata
from hashlib import sha256

_PLAIN = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_OTHERS = re.compile(r"[^a-z0-9]+")
_SIGNED = re.compile(r"-[0-9a-f]{8}\Z")
_LONGEST = 40
_DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(10))}
"""No folder may be called so on some systems."""


def slug(name: str) -> str:
    """A name as a folder that every system can make and every address can hold.

    A name of small letters, digits and hyphens stays as it is. Any other gets a sign of its own at its end, so that two
    names never share a folder, nor does the slug of one depend on which others there are.

    >>> slug("seaside"), slug("Åsa Lindqvist"), slug("水彩")
    ('seaside', 'asa-lindqvist-dad2cd6f', 'x-22c08846')
    """
    is_plain = bool(_PLAIN.fullmatch(name)) and len(name) <= _LONGEST
    if is_plain and name not in _DEVICES and not _SIGNED.search(name):
        return name
    apart = unicodedata.normalize("NFKD", name.casefold())
    letters = "".join(each for each in apart if not unicodedata.combining(each))
    sign = sha256(name.encode("utf-8", "surrogatepass")).hexdigest()[:8]
    return f"{_OTHERS.sub('-', letters).strip('-')[:_LONGEST].rstrip('-') or 'x'}-{sign}"


def tag_path(tag: str) -> str:
    """Where the page of a tag lies below the home of a language."""
    return f"tags/{slug(tag)}/index.html"


def author_path(author: str) -> str:
    """Where the page of an author lies below the home of a language."""
    return f"authors/{slug(author)}/index.html"
