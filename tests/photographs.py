"""Photographs made by script: skies, shapes and faces as ovals, with a little noise; the same every time."""

from io import BytesIO

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

Colour = tuple[int, int, int]
Point = tuple[float, float]

SKIN: tuple[Colour, ...] = ((236, 188, 160), (196, 140, 104), (120, 78, 54), (224, 172, 138))


def slope(size: tuple[int, int], upper: Colour, lower: Colour) -> Image.Image:
    """From one colour at the top to another at the bottom."""
    share = np.linspace(0, 1, size[1])[:, None, None]
    rows = np.array(upper) * (1 - share) + np.array(lower) * share
    return Image.fromarray(np.broadcast_to(rows, (size[1], size[0], 3)).astype(np.uint8))


def face(image: Image.Image, at: Point, height: float, skin: Colour, hair: Colour, shirt: Colour) -> None:
    """A head and shoulders; the middle of the face and its height as shares of the picture's width and height."""
    draw = ImageDraw.Draw(image)
    x, y, half = at[0] * image.width, at[1] * image.height, height * image.height / 2
    draw.ellipse([x - 1.7 * half, y + 1.05 * half, x + 1.7 * half, y + 5 * half], fill=shirt)
    draw.ellipse([x - 0.86 * half, y - 1.2 * half, x + 0.86 * half, y + 0.7 * half], fill=hair)
    draw.ellipse([x - 0.72 * half, y - 0.95 * half, x + 0.72 * half, y + half], fill=skin)
    for side in (-1, 1):
        eye = x + side * 0.28 * half
        draw.ellipse([eye - 0.09 * half, y - 0.2 * half, eye + 0.09 * half, y - 0.05 * half], fill=(40, 30, 30))
    draw.arc(
        [x - 0.3 * half, y + 0.2 * half, x + 0.3 * half, y + 0.6 * half], 20, 160, (150, 60, 60), max(1, int(half / 14))
    )


def finished(image: Image.Image, blur: float = 0.8, noise: float = 5) -> Image.Image:
    """As a lens and a sensor would have it."""
    soft = np.asarray(image.filter(ImageFilter.GaussianBlur(blur))).astype(float)
    grain = np.random.default_rng(3).normal(0, noise, soft.shape)
    return Image.fromarray(np.clip(soft + grain, 0, 255).astype(np.uint8))


def portrait(size: tuple[int, int] = (600, 800), at: Point = (0.5, 0.33)) -> Image.Image:
    """One person before a blurred hedge."""
    image = slope(size, (116, 142, 96), (84, 110, 70)).filter(ImageFilter.GaussianBlur(9))
    face(image, at, 0.3, SKIN[0], (84, 52, 34), (58, 84, 140))
    return finished(image)


def group(size: tuple[int, int] = (900, 600)) -> Image.Image:
    """Four people to the left of an empty wall."""
    image = slope(size, (206, 200, 190), (190, 182, 170))
    for number, skin in enumerate(SKIN):
        shirt = ((150, 40, 44), (40, 90, 80), (214, 170, 60), (60, 70, 120))[number]
        face(image, (0.12 + 0.15 * number, 0.36 + 0.05 * (number % 2)), 0.24, skin, (50, 36, 30), shirt)
    return finished(image)


def beach(size: tuple[int, int] = (900, 600)) -> Image.Image:
    """Sky, sea and sand, and a red kite at the upper right."""
    image = slope(size, (92, 150, 214), (196, 222, 238))
    draw, (wide, high) = ImageDraw.Draw(image), size
    draw.rectangle([0, high * 0.55, wide, high * 0.72], fill=(46, 112, 150))
    draw.rectangle([0, high * 0.72, wide, high], fill=(226, 202, 158))
    middle = (wide * 0.78, high * 0.25)
    draw.polygon(
        [
            (middle[0], middle[1] - 60),
            (middle[0] + 42, middle[1]),
            (middle[0], middle[1] + 80),
            (middle[0] - 42, middle[1]),
        ],
        fill=(206, 44, 40),
    )
    return finished(image)


def lighthouse(size: tuple[int, int] = (600, 900)) -> Image.Image:
    """A tower with red bands that stands in the lower half, under much evening sky."""
    image = slope(size, (58, 66, 110), (238, 170, 120))
    draw, (wide, high) = ImageDraw.Draw(image), size
    draw.rectangle([0, high * 0.88, wide, high], fill=(52, 58, 54))
    left, right = wide * 0.54, wide * 0.66
    for band in range(6):
        top = high * (0.46 + 0.07 * band)
        draw.rectangle([left, top, right, top + high * 0.07], fill=(240, 236, 228) if band % 2 else (176, 40, 38))
    draw.rectangle([left + 8, high * 0.41, right - 8, high * 0.46], fill=(250, 222, 120))
    return finished(image)


def flower(size: tuple[int, int] = (800, 600), at: Point = (0.27, 0.55)) -> Image.Image:
    """A yellow flower before dark leaves."""
    image = slope(size, (24, 66, 44), (14, 44, 36)).filter(ImageFilter.GaussianBlur(6))
    draw, x, y = ImageDraw.Draw(image), at[0] * size[0], at[1] * size[1]
    for turn in np.linspace(0, 2 * np.pi, 14, endpoint=False):
        px, py = x + 70 * np.cos(turn), y + 70 * np.sin(turn)
        draw.ellipse([px - 42, py - 42, px + 42, py + 42], fill=(240, 196 - int(20 * np.sin(turn)), 60))
    draw.ellipse([x - 38, y - 38, x + 38, y + 38], fill=(112, 66, 26))
    return finished(image)


ALL = {each.__name__: each for each in (portrait, group, beach, lighthouse, flower)}


def as_jpeg(image: Image.Image, **options: object) -> bytes:
    """As a camera would save it."""
    file = BytesIO()
    image.save(file, "JPEG", **{"quality": 90, **options})
    return file.getvalue()
