"""How long photographs take: `python -m tests.bench.matching`, each figure beside what bounds it.

The photograph is made by script, as large and as grainy as a camera's: 12 million pixels, JPEG. Its whole decoding by
Pillow stands beside the reading of it, which decodes no finer than is needed; k-means of the same pixels beside the
palette. Medians over several runs on one core.
"""

import os
import sys
import tracemalloc
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from statistics import median
from time import perf_counter

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
sys.path.insert(0, str(Path(__file__).parents[1]))

import numpy as np  # noqa: E402 - after the number of threads is fixed
from PIL import Image  # noqa: E402
from skimage.color import rgb2lab  # noqa: E402
from sklearn.cluster import KMeans  # noqa: E402

import photographs  # noqa: E402
from spreadwright.colour.palette import palette, tally  # noqa: E402
from spreadwright.colour.spaces import oklab  # noqa: E402
from spreadwright.document import Reading  # noqa: E402
from spreadwright.images import read, resized  # noqa: E402
from spreadwright.images.srgb import light_of  # noqa: E402
from spreadwright.model import Recipe  # noqa: E402
from spreadwright.photos.faces import faces  # noqa: E402
from spreadwright.photos.saliency import attention  # noqa: E402
from spreadwright.store import Collection  # noqa: E402
from spreadwright.tasks.match import looked_at, match  # noqa: E402
from spreadwright.tasks.match_pictures import match_preview_svg, match_svg  # noqa: E402

SIZE = (4000, 3000)
RUNS = 7


def measured(what: Callable[[], object], runs: int = RUNS) -> float:
    """The median time, milliseconds; a run before them does not count."""
    what()
    times = []
    for _ in range(runs):
        start = perf_counter()
        what()
        times.append(1000 * (perf_counter() - start))
    return median(times)


def peak_mb(what: Callable[[], object]) -> float:
    """What Python and numpy held at most meanwhile, MB."""
    tracemalloc.start()
    try:
        what()
        return tracemalloc.get_traced_memory()[1] / 1e6
    finally:
        tracemalloc.stop()


def camera_jpeg(**options: object) -> bytes:
    """Twelve million pixels of the sea, with the grain of a sensor."""
    return photographs.as_jpeg(photographs.finished(photographs.beach(SIZE), 1.5, 12), **options)


def decoded(data: bytes) -> None:
    """The whole of it, as Pillow does."""
    with Image.open(BytesIO(data)) as image:
        image.load()


def of_k_means(pixels: np.ndarray, colours: int) -> None:
    """As many colours by k-means in CIELAB."""
    KMeans(colours, n_init=1, random_state=0).fit(rgb2lab(pixels).reshape(-1, 3))


def main() -> None:
    """Prints one line a figure."""
    data = camera_jpeg()
    print(f"photograph: {SIZE[0]} x {SIZE[1]}, {len(data) / 1e6:.1f} MB\n")
    pixels = read(data).pixels
    small = resized(pixels, 256, 192)
    figures: list[tuple[str, Callable[[], object]]] = [
        ("Pillow decodes it", lambda: decoded(data)),
        ("read, small and in sRGB", lambda: read(data)),
        ("palette of what was read", lambda: palette(tally(resized(pixels, 256, 192)))),
        ("k-means in CIELAB of the same pixels", lambda: of_k_means(small, 6)),
        ("read and palette together", lambda: palette(tally(resized(read(data).pixels, 256, 192)))),
        ("faces", lambda: faces(resized(pixels, 400, 300))),
        ("what draws the eye", lambda: attention(oklab(light_of(resized(pixels, 128, 96))))),
        ("all of it: looked at", lambda: looked_at("sea.jpg", data)),
    ]
    for name, what in figures:
        print(f"{name:45}{measured(what):9.1f} ms")
    print(f"{'held meanwhile, Pillow aside':45}{peak_mb(lambda: looked_at('sea.jpg', data)):9.1f} MB")
    _matches(data)


def _matches(data: bytes) -> None:
    collection = Collection()
    seen = [looked_at(f"{number}.jpg", data) for number in range(5)]
    sets = list(collection.sound_paper_sets())
    reading: Reading[Recipe] = collection.recipe("rain-until-four")
    found = match(seen, sets, reading=reading)
    print(f"\nfive photographs, {len(sets)} sets, a recipe")
    for name, what in (
        ("matched", lambda: match(seen, sets, reading=reading)),
        ("drawn: colours beside papers", lambda: match_svg(found)),
        ("drawn: the spread", lambda: match_preview_svg(found)),
    ):
        print(f"{name:45}{measured(what):9.1f} ms")


if __name__ == "__main__":
    main()
