"""Mixing of colours for pictures: `#rrggbb` in, `#rrggbb` out."""


def channels(colour: str) -> tuple[int, int, int]:
    """Red, green and blue, 0 to 255."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def mixed(first: str, second: str, share: float) -> str:
    """`share` of the second colour in the first, 0 to 1.

    >>> mixed("#000000", "#ffffff", 0.5)
    '#808080'
    """
    pairs = zip(channels(first), channels(second), strict=True)
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in pairs)


def darker(colour: str, share: float) -> str:
    """Towards a warm black."""
    return mixed(colour, "#1a1410", share)


def lighter(colour: str, share: float) -> str:
    """Towards white."""
    return mixed(colour, "#ffffff", share)


def lightness(colour: str) -> float:
    """How light a colour looks, 0 to 1, by the luma of its channels (ITU-R BT.601)."""
    red, green, blue = channels(colour)
    return (299 * red + 587 * green + 114 * blue) / 255000
