"""HEIF, as many phones take it: read where the extra of that name is installed."""

from functools import cache
from importlib import import_module
from importlib.util import find_spec

_BRANDS = (b"heic", b"heix", b"hevc", b"hevx", b"heim", b"heis", b"mif1", b"msf1")
MODULE = "pillow_heif"


def is_heif(data: bytes) -> bool:
    """Whether the bytes begin as a HEIF file does."""
    return data[4:8] == b"ftyp" and data[8:12] in _BRANDS


def can_read_heif() -> bool:
    """Whether the extra is installed."""
    return find_spec(MODULE) is not None


@cache
def register_heif() -> None:
    """Teaches Pillow to open HEIF, without the small pictures and depth maps that come along."""
    import_module(MODULE).register_heif_opener(thumbnails=False, depth_images=False, aux_images=False)
