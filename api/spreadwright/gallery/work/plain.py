"""Dataclasses as what JSON can hold, and back."""

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from functools import cache
from types import NoneType, UnionType
from typing import Any, TypeVar, Union, get_args, get_origin, get_type_hints

Kind = TypeVar("Kind")


def as_plain(value: Any) -> Any:
    """A value of dataclasses, tuples, enums, text and numbers as objects, lists and the like."""
    if is_dataclass(value) and not isinstance(value, type):
        return {each.name: as_plain(getattr(value, each.name)) for each in fields(value)}
    if isinstance(value, (tuple, list)):
        return [as_plain(each) for each in value]
    if isinstance(value, Mapping):
        return {str(name): as_plain(each) for name, each in value.items()}
    return value.value if isinstance(value, Enum) else value


def from_plain(kind: type[Kind], plain: Any) -> Kind:
    """The value of a kind that `as_plain` made plain.

    Raises:
        TypeError: It is none of that kind.
    """
    try:
        found: Kind = _restored(kind, plain)
    except (AttributeError, KeyError, ValueError, TypeError) as reason:
        raise TypeError(f"this is no {kind.__name__}") from reason
    return found


def _restored(kind: Any, plain: Any) -> Any:
    origin, inner = get_origin(kind), get_args(kind)
    if origin is tuple:
        kinds = (inner[0],) * len(plain) if inner[-1] is Ellipsis else inner
        return tuple(_restored(each, value) for each, value in zip(kinds, plain, strict=True))
    if origin in (Union, UnionType):
        if plain is None and NoneType in inner:
            return None
        return _restored(next(each for each in inner if each is not NoneType), plain)
    if isinstance(kind, type) and is_dataclass(kind):
        return kind(**{name: _restored(each, plain[name]) for name, each in _members(kind).items()})
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind(plain)
    if kind is float and isinstance(plain, int):
        return float(plain)
    if kind in (str, int, float, bool) and type(plain) is not kind:
        raise TypeError(kind.__name__)
    return plain


@cache
def _members(kind: type) -> dict[str, Any]:
    hints = get_type_hints(kind)
    return {each.name: hints[each.name] for each in fields(kind)}
