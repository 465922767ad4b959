"""Text as the words that it is found by: small letters and digits, without accents.

Both databases are given these and nothing else, so that both find the same.
"""

import re
import unicodedata
from collections.abc import Iterable
from hashlib import sha256

_WORD = re.compile(r"[^\W_]+")
MOST_WORDS = 12
"""Of one search."""
_LONGEST = 60


def clean(text: str) -> str:
    """Text that every database keeps: without NUL, and without halves of characters."""
    return text.replace("\0", "").encode("utf-8", "replace").decode()


def fitting(text: str, most: int) -> str:
    """Text that fits a column of so many characters, or the hash of what does not."""
    fits = len(text) <= most and clean(text) == text
    return text if fits else sha256(text.encode("utf-8", "replace")).hexdigest()


def words_of(*texts: str) -> tuple[str, ...]:
    """Every word once, in the order of appearance.

    >>> words_of("Crème & Oak-apple", "oak 12")
    ('creme', 'oak', 'apple', '12')
    """
    found = (word[:_LONGEST] for text in texts for word in _WORD.findall(_plain(text)))
    return tuple(dict.fromkeys(found))


def sought(text: str) -> tuple[str, ...]:
    """The words of a search, of which every one has to begin a word of what is found."""
    return words_of(text)[:MOST_WORDS]


def searchable(words: Iterable[str]) -> str:
    """Words in one line with a space before each, so that the beginning of a word can be found in it."""
    return "".join(f" {word}" for word in words)


def _plain(text: str) -> str:
    """Compatibility forms taken apart, marks dropped, case folded."""
    apart = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold())
    return "".join(each for each in apart if not unicodedata.combining(each))
