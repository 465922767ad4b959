"""What differs between two JSON values, member by member."""

from collections.abc import Iterator
from typing import Any

from spreadwright.store.values import Change

_Path = tuple[str | int, ...]


def changes(was: Any, now: Any, path: _Path = ()) -> Iterator[Change]:
    """Every difference, in the order of the members; lists are compared place by place.

    >>> [(change.op, change.path) for change in changes({"a": 1, "b": [2]}, {"b": [3, 4]})]
    [('removed', '/a'), ('changed', '/b/0'), ('added', '/b/1')]
    """
    if isinstance(was, dict) and isinstance(now, dict):
        yield from _members(was, now, path)
    elif isinstance(was, list) and isinstance(now, list):
        yield from _items(was, now, path)
    elif type(was) is not type(now) or was != now:
        yield Change("changed", _pointer(path), was, now)


def _members(was: dict[str, Any], now: dict[str, Any], path: _Path) -> Iterator[Change]:
    for name in dict.fromkeys((*was, *now)):
        here = (*path, name)
        if name not in now:
            yield Change("removed", _pointer(here), was=was[name])
        elif name not in was:
            yield Change("added", _pointer(here), now=now[name])
        else:
            yield from changes(was[name], now[name], here)


def _items(was: list[Any], now: list[Any], path: _Path) -> Iterator[Change]:
    shared = min(len(was), len(now))
    for place in range(shared):
        yield from changes(was[place], now[place], (*path, place))
    for place in range(shared, len(was)):
        yield Change("removed", _pointer((*path, place)), was=was[place])
    for place in range(shared, len(now)):
        yield Change("added", _pointer((*path, place)), now=now[place])


def _pointer(path: _Path) -> str:
    return "".join(f"/{str(step).replace('~', '~0').replace('/', '~1')}" for step in path)
