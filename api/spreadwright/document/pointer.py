"""JSON Pointers (RFC 6901)."""

import re
from typing import Any


def pointer(*steps: str | int) -> str:
    """The pointer to a value inside a document.

    >>> pointer("sheets", 2, "a/b")
    '/sheets/2/a~1b'
    """
    return "".join("/" + _escaped(str(step)) for step in steps)


def _escaped(step: str) -> str:
    return re.sub("[\ud800-\udfff]", "\ufffd", step).replace("~", "~0").replace("/", "~1")


def position(where: str, document: Any) -> tuple[int, ...]:
    """The place that a pointer names, as the position of every step among its siblings, so that findings sort.

    >>> position("/b/1", {"a": 0, "b": [1, 2]})
    (1, 1)
    """
    places: list[int] = []
    for step in where.split("/")[1:]:
        name = step.replace("~1", "/").replace("~0", "~")
        if isinstance(document, dict) and name in document:
            places.append(list(document).index(name))
            document = document[name]
        elif isinstance(document, list) and name.isdecimal() and int(name) < len(document):
            places.append(int(name))
            document = document[int(name)]
        else:
            break
    return tuple(places)
