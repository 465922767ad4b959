"""Pictures of real paper that a paper set brings along."""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Swatch:
    """The picture of one repeat of a print, ready to be embedded: upright, opaque, in sRGB, never large.

    Attributes:
        name: Of its file in the folder of the paper set.
        data: The bytes of a PNG or JPEG.
        media_type: Which of the two.
        width: Of one repeat, pixels.
        height: Likewise.
        overlap: What follows it to the right and below, pixels: its own beginning once more, so that the pictures of
            two repeats overlap and no joint shines through between them.
    """

    name: str
    data: bytes = field(repr=False)
    media_type: str
    width: int
    height: int
    overlap: int = 0
