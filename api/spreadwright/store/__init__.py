"""What is kept: the collection."""

from spreadwright.store.collection import DEFAULT_BENCH, Collection

__all__ = ["DEFAULT_BENCH", "Collection"]
