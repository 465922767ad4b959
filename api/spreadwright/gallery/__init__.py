"""The gallery: a page for every recipe and paper set of a collection, as a folder of plain files."""

from spreadwright.gallery.build import build
from spreadwright.gallery.folder import NotAGallery
from spreadwright.gallery.run import GalleryNotBuilt

__all__ = ["GalleryNotBuilt", "NotAGallery", "build"]
