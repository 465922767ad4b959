"""Why a picture cannot be had, each reason with what to do about it."""

from spreadwright.errors import UnreadablePicture

_SAVE = "Save it as JPEG or PNG."


def too_heavy(size: int, most: int) -> UnreadablePicture:
    """A file of so many bytes."""
    reason = f"The file has {size / 1e6:.1f} MB; the most is {most / 1e6:.0f} MB."
    return UnreadablePicture("picture-too-large", reason, "Save it with fewer pixels or as JPEG.")


def too_many_pixels(size: tuple[int, int] | None, most: int) -> UnreadablePicture:
    """A picture of this width and height in pixels, if they are known."""
    told = "far more pixels than can be read"
    if size is not None:
        told = f"{size[0]} × {size[1]} pixels"
    reason = f"The picture has {told}; the most is {most / 1e6:.0f} million."
    return UnreadablePicture("picture-too-large", reason, "Save it with fewer pixels.")


def too_many_scans(most: int) -> UnreadablePicture:
    """A JPEG that comes in more passes than any camera or program writes."""
    reason = f"The JPEG comes in more than {most} passes."
    return UnreadablePicture("picture-damaged", reason, "Open the picture in a viewer and save it anew.")


def not_a_picture() -> UnreadablePicture:
    """Bytes of another kind."""
    reason = "The file is no picture of a kind that is read: JPEG, PNG, WebP, TIFF, GIF or HEIF."
    return UnreadablePicture("not-a-picture", reason, _SAVE)


def empty() -> UnreadablePicture:
    """No bytes at all."""
    return UnreadablePicture("not-a-picture", "The file is empty.", "Copy it anew from where it came.")


def heif_not_installed() -> UnreadablePicture:
    """HEIF, and nothing to read it with."""
    remedy = "Save it as JPEG, or install spreadwright[heif]."
    return UnreadablePicture("not-a-picture", "The picture is HEIF, which is not read here.", remedy)


def moves() -> UnreadablePicture:
    """A picture of several frames or pages."""
    reason = "The file holds several pictures: it moves, or has several pages."
    return UnreadablePicture("picture-moves", reason, "Save the one that is meant as JPEG or PNG.")


def damaged() -> UnreadablePicture:
    """A picture that ends too early or makes no sense."""
    reason = "The picture is damaged or ends too early."
    return UnreadablePicture("picture-damaged", reason, "Copy it anew from where it came.")
