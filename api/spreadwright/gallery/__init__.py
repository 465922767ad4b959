"""The gallery: a page for every recipe and paper set of a collection, as a folder of plain files."""

from spreadwright.gallery.build import build
from spreadwright.gallery.commands import Command, Option
from spreadwright.gallery.documents import Documents, collected
from spreadwright.gallery.folder import CannotWrite, NotAGallery
from spreadwright.gallery.kept import CannotKeep, Kept
from spreadwright.gallery.refusals import CannotFetch, GalleryNotBuilt
from spreadwright.gallery.site import Site

__all__ = [
    "CannotFetch",
    "CannotKeep",
    "CannotWrite",
    "Command",
    "Documents",
    "GalleryNotBuilt",
    "Kept",
    "NotAGallery",
    "Option",
    "Site",
    "build",
    "collected",
]
