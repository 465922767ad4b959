"""Marks of a place in a list: what stood there, so that the next page follows it whatever happens before it."""

import json
from base64 import urlsafe_b64decode, urlsafe_b64encode
from datetime import datetime

from spreadwright.store.errors import BadCursor

Value = int | str | datetime


def cursor(sort: str, value: Value, key: int) -> str:
    """The mark of a row in an order."""
    shown = value.isoformat() if isinstance(value, datetime) else value
    return urlsafe_b64encode(json.dumps([sort, shown, key], ensure_ascii=False).encode()).decode().rstrip("=")


def place(text: str, sort: str, like: type) -> tuple[Value, int]:
    """The value and key that a mark holds.

    Args:
        like: Of the column that the order is by.

    Raises:
        BadCursor: It is no mark, or one of another order.
    """
    try:
        found = json.loads(urlsafe_b64decode(text.encode("ascii") + b"=" * (-len(text) % 4)))
        same, value, key = found
        if same != sort or type(key) is not int or not 0 <= key < 2**62:
            raise BadCursor(text)
        return _value(value, like), key
    except (ValueError, TypeError):
        raise BadCursor(text) from None


def _value(value: object, like: type) -> Value:
    if like is datetime and isinstance(value, str):
        moment = datetime.fromisoformat(value)
        if moment.tzinfo is None:
            raise ValueError
        return moment
    if like is int and type(value) is int and abs(value) < 2**31:
        return value
    if like is str and isinstance(value, str) and "\0" not in value:
        value.encode()  # a lone surrogate has no bytes
        return value
    raise TypeError
