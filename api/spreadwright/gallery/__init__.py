"""The gallery: a page for every recipe and paper set of a collection, as a folder of plain files."""

from spreadwright.gallery.build import build
from spreadwright.gallery.commands import Command, Option
from spreadwright.gallery.folder import CannotWrite, NotAGallery
from spreadwright.gallery.kept import CannotKeep, Kept
from spreadwright.gallery.shell import GalleryNotBuilt
from spreadwright.gallery.site import Site

__all__ = ["CannotKeep", "CannotWrite", "Command", "GalleryNotBuilt", "Kept", "NotAGallery", "Option", "Site", "build"]
