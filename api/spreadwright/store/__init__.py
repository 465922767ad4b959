"""What is kept: the collection."""

from spreadwright.store.collection import DEFAULT_BENCH, Collection
from spreadwright.store.files import document_bytes

__all__ = ["DEFAULT_BENCH", "Collection", "document_bytes"]
