"""Pictures as pages show them: where the file lies, how large it is, what is seen in it."""

from collections.abc import Mapping
from dataclasses import dataclass
from xml.etree import ElementTree

Files = Mapping[str, bytes]
"""Contents by path within the site, always with forward slashes."""

PX_PER_MM = 96 / 25.4


@dataclass(frozen=True, slots=True)
class Picture:
    """One picture file; width and height in CSS pixels at real size."""

    path: str
    width: int
    height: int
    alt: str


def picture(path: str, svg: bytes, alt: str) -> Picture:
    """The picture of an SVG of ours."""
    width_mm, height_mm = size_mm(svg)
    return Picture(path, round(width_mm * PX_PER_MM), round(height_mm * PX_PER_MM), alt)


def size_mm(svg: bytes) -> tuple[float, float]:
    """Width and height of an SVG whose view box counts millimetres."""
    _, _, width, height = (float(number) for number in ElementTree.fromstring(svg).attrib["viewBox"].split())
    return width, height
