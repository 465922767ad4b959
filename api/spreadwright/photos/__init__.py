"""Photographs: mats, how large a photo is trimmed, from which print, and how many pixels it takes."""

from spreadwright.photos.assignment import assigned
from spreadwright.photos.check import photo_findings
from spreadwright.photos.crop import COARSE, FINE, SHAPES, Pixels, Trim, picture_loss, pixels, share_text, trims
from spreadwright.photos.mats import NARROW, WIDE, Border, MattedPhoto, bordered, matted_photos, photo_size
from spreadwright.photos.prints import PRINTS, Print, print_label

__all__ = [
    "COARSE",
    "FINE",
    "NARROW",
    "PRINTS",
    "SHAPES",
    "WIDE",
    "Border",
    "MattedPhoto",
    "Pixels",
    "Print",
    "Trim",
    "assigned",
    "bordered",
    "matted_photos",
    "photo_findings",
    "photo_size",
    "picture_loss",
    "pixels",
    "print_label",
    "share_text",
    "trims",
]
