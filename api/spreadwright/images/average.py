"""The colour that a picture has from afar."""

import numpy as np

from spreadwright.images.picture import Raster


def average_colour(pixels: Raster) -> str:
    """The colour as ``#rrggbb`` that mixes light as the pixels together do: averaged in linear sRGB (IEC 61966-2-1)."""
    values = np.arange(256) / 255
    light = np.where(values <= 0.04045, values / 12.92, ((values + 0.055) / 1.055) ** 2.4)
    mean = np.array([light[pixels[..., channel]].mean() for channel in range(3)])
    encoded = np.where(mean <= 0.0031308, mean * 12.92, 1.055 * mean ** (1 / 2.4) - 0.055)
    return "#" + "".join(f"{round(float(share) * 255):02x}" for share in encoded)
