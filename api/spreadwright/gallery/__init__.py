"""The gallery: a page for every recipe and paper set of a collection, as a folder of plain files."""

from spreadwright.gallery.build import build
from spreadwright.gallery.folder import CannotWrite, NotAGallery
from spreadwright.gallery.run import GalleryNotBuilt

__all__ = ["CannotWrite", "GalleryNotBuilt", "NotAGallery", "build"]
