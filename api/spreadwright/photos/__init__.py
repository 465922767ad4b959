"""Photographs: mats and how large a photo is trimmed."""

from spreadwright.photos.check import photo_findings
from spreadwright.photos.mats import MattedPhoto, matted_photos, photo_size

__all__ = ["MattedPhoto", "matted_photos", "photo_findings", "photo_size"]
