"""Documents and answers to bytes: one canonical form, so that equal values give equal bytes."""

import json
from typing import Any


def canonical(value: Any) -> bytes:
    """JSON with two spaces of indentation, members in the order given, UTF-8, one newline at the end."""
    return (json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False) + "\n").encode()
