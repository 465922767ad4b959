"""The gallery: a page for every recipe and paper set of a collection, as a folder of plain files."""

from spreadwright.gallery.build import build
from spreadwright.gallery.prose.commands import Command, Option
from spreadwright.gallery.refusals import CannotFetch, GalleryNotBuilt
from spreadwright.gallery.site import Site
from spreadwright.gallery.work.documents import Documents, collected
from spreadwright.gallery.work.folder import CannotWrite, NotAGallery
from spreadwright.gallery.work.kept import CannotKeep, Kept

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
