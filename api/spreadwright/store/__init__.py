"""What is kept: the collection."""

from spreadwright.store.collection import BENCH_OF_UNIT, Collection
from spreadwright.store.files import document_bytes
from spreadwright.store.pictures import pictures_beside

__all__ = ["BENCH_OF_UNIT", "Collection", "document_bytes", "pictures_beside"]
