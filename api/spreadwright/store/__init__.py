"""What is kept: the collection."""

from spreadwright.store.collection import BENCH_OF_UNIT, Collection
from spreadwright.store.files import document_bytes

__all__ = ["BENCH_OF_UNIT", "Collection", "document_bytes"]
