"""Points of photographs as people write them: `30,40` or `beach.jpg=30,40`, in percent from the left and the top."""

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction

from spreadwright.photos.cropping import Focus

FORM = "Write 30,40 for one photo, else beach.jpg=30,40 or 2=30,40: percent from the left and from the top, 0 to 100."
_POINT = re.compile(
    r"(?:(?P<photo>.+)=)?\s*(?P<x>\d{1,3}(?:\.\d{1,4})?)\s*,\s*(?P<y>\d{1,3}(?:\.\d{1,4})?)\s*", re.DOTALL
)


def focus_points(texts: Iterable[str], names: Sequence[str]) -> dict[int, Focus]:
    """The point of each photograph that has one, by its number from nought.

    Args:
        texts: One for each point.
        names: Of the photographs, in order; they are meant by their name or by their number from 1.

    Raises:
        ValueError: A text is no point, or means no photograph; says which.

    >>> focus_points(["2=50,10"], ["a.jpg", "b.jpg"])
    {1: Focus(x=Fraction(1, 2), y=Fraction(1, 10))}
    """
    found: dict[int, Focus] = {}
    for text in texts:
        read = _POINT.fullmatch(text)
        if read is None or max(Fraction(read["x"]), Fraction(read["y"])) > 100:
            raise ValueError(f"“{text[:80]}” is not a point of a photo.")
        number = _number((read["photo"] or "").strip(), names)
        if number in found:
            raise ValueError(f"“{names[number]}” has two points.")
        found[number] = Focus(Fraction(read["x"]) / 100, Fraction(read["y"]) / 100)
    return found


def _number(photo: str, names: Sequence[str]) -> int:
    if not photo and len(names) == 1:
        return 0
    if names.count(photo) == 1:
        return names.index(photo)
    if photo.isdecimal() and 1 <= int(photo[:6]) <= len(names):
        return int(photo) - 1
    known = ", ".join(f"{number} {name}" for number, name in enumerate(names[:12], start=1))
    raise ValueError(f"“{photo[:80]}” is none of the photos: {known}.")
