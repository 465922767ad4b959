"""Merge patches: RFC 7396."""

from typing import Any

from spreadwright.document import canonical
from spreadwright.document.text import value


def merged(document: dict[str, Any], patch: bytes) -> bytes:
    """The document with a patch applied, as JSON.

    Args:
        document: What is there.
        patch: JSON; what is no object takes the document's place, and is refused as a document later.

    Raises:
        UnreadableDocument: The patch is no JSON.
    """
    return canonical(_merged(document, value(patch)))


def _merged(target: Any, patch: Any) -> Any:
    """As the RFC has it, section 2.

    >>> _merged({"a": "b", "c": {"d": "e", "f": "g"}}, {"a": "z", "c": {"f": None}})
    {'a': 'z', 'c': {'d': 'e'}}
    """
    if not isinstance(patch, dict):
        return patch
    found = dict(target) if isinstance(target, dict) else {}
    for name, part in patch.items():
        if part is None:
            found.pop(name, None)
        else:
            found[name] = _merged(found.get(name), part)
    return found
