"""How long ranking colourways takes, beside its own bounds: `python -m tests.bench.colour`.

Layouts of random pieces in random papers, a million colourways or more each, in several shapes: many roles with few
papers, few roles with many. Times are seconds of the processor on one core: for measuring every face (which is done
once for a face), and for all else, from pieces and measured faces to the twelve that are returned. Beside it: every
score by numpy, which is the brute force that the first is compared with; CIEDE2000 of a million pairs by numpy; and a
preview as SVG beside what cairosvg takes to draw the same.
"""

import sys
import time
from collections.abc import Callable
from typing import Any

import numpy as np

from spreadwright.colour import count
from spreadwright.colour.difference import ciede2000
from spreadwright.colour.measure import Look, look
from spreadwright.colour.ranking import ranking
from spreadwright.colour.scene import PHOTO, Patch, Scene, Surface, scene
from spreadwright.colour.tables import cast_of
from spreadwright.colour.worth import Worth, worth
from spreadwright.drawing import PIXELS_PER_MM, face_pixels
from spreadwright.drawing.raster import png
from spreadwright.geometry import Rect, Size
from spreadwright.lengths import TICKS, Unit
from spreadwright.model import Choice, Face, Paper, PaperSet, Pattern, Side
from spreadwright.store import Collection
from spreadwright.tasks import chosen_colourway
from spreadwright.tasks.draw import preview_svg

SHAPES = ((3, 100), (4, 32), (5, 16), (6, 10), (7, 8), (10, 4), (20, 2), (8, 18), (12, 18))
"""Roles, and faces that may play each: a million colourways, and at last very many more."""

INCH, MM = TICKS[Unit.INCH], TICKS[Unit.MILLIMETRE]
PAGE = Size(12 * INCH, 12 * INCH)


def main() -> None:
    """Prints one table."""
    seeds = range(int(sys.argv[1]) if len(sys.argv) > 1 else 3)
    rows = [row(roles, faces, seed) for roles, faces in SHAPES for seed in seeds]
    print("| roles | faces | colourways | looks | best 12 | proved | all by numpy | the same |")
    print("| --- | --- | --- | --- | --- | --- | --- | --- |")
    for each in rows:
        print(f"| {' | '.join(each)} |")
    print(f"\nCIEDE2000 of a million pairs: {timed(million_pairs)[0]:.2f} s")
    preview()


def row(roles: int, faces: int, seed: int) -> list[str]:
    """One layout in one set."""
    rng = np.random.default_rng((roles, faces, seed))
    papers, seen = random_set(rng, faces), random_scene(rng, roles)
    face_pixels.cache_clear()
    measured, looks = timed(lambda: {face: look(face_pixels(face), PIXELS_PER_MM) for face in faces_of(papers)})
    ranked, found = timed(lambda: ranking([ranked_in(papers, seen, roles, faces, looks)], 12))
    told = [str(roles), str(faces), f"{faces**roles:,}", f"{measured:.2f} s", f"{ranked:.2f} s", str(found.is_proved)]
    if faces**roles > 2_000_000:
        return [*told, "", ""]
    brute, highest = timed(lambda: best_score(ranked_in(papers, seen, roles, faces, looks)))
    return [*told, f"{brute:.2f} s", str(highest == found.colourways[0].score)]


def timed(do: Callable[[], Any]) -> tuple[float, Any]:
    """Seconds of the processor, and what came of it."""
    began = time.process_time()
    found = do()
    return time.process_time() - began, found


def ranked_in(papers: PaperSet, seen: Scene, roles: int, faces: int, looks: dict[Face, Look]) -> Worth:
    """What there is to know before the search."""
    choices = tuple(Choice(paper, side) for paper in papers.papers for side in Side)[:faces]
    options = {f"role-{number}": choices for number in range(roles)}
    return worth(papers, seen, cast_of([Surface(role, side) for role in options for side in Side], options, looks.get))


def best_score(one: Worth) -> float:
    """The highest of all scores, each of them worked out."""
    sizes = [len(options) for options in one.cast.options]
    total = np.full(sizes, one.scores.constant, np.int64)
    for role, column in enumerate(one.scores.alone):
        total += column.reshape([-1 if axis == role else 1 for axis in range(len(sizes))])
    for (first, second), table in one.scores.between.items():
        total += table.reshape([size if axis in (first, second) else 1 for axis, size in enumerate(sizes)])
    return int(total.max()) / 1_000_000


def million_pairs() -> None:
    """The pairs of a thousand colours with a thousand."""
    colours = np.random.default_rng(0).uniform((0, -80, -80), (100, 80, 80), (1000, 3))
    ciede2000(colours[:, None], colours[None, :])


def faces_of(papers: PaperSet) -> list[Face]:
    return [face for paper in papers.papers for face in (paper.front, paper.back)]


def random_set(rng: np.random.Generator, faces: int) -> PaperSet:
    """Half of the faces plain, the others in any print."""

    def face() -> Face:
        patterns = [each for each in Pattern if each.value != "picture"]
        pattern = Pattern.PLAIN if rng.random() < 0.5 else patterns[rng.integers(len(patterns))]
        colours = tuple(f"#{int(value):06x}" for value in rng.integers(0, 2**24, 3))
        return Face(pattern, colours, int(rng.integers(8, 31)) * MM)

    papers = tuple(
        Paper(f"paper-{number}", f"Paper {number}", PAGE, face(), face()) for number in range(-(-faces // 2))
    )
    return PaperSet("random", "Random", Unit.INCH, papers)


def random_scene(rng: np.random.Generator, roles: int) -> Scene:
    """Two pages, a sheet of one role below, forty pieces of any role above, half of them with a photograph."""
    patches = [Patch(page, Surface("role-0"), Rect.at(0, 0, PAGE)) for page in ("left", "right")]
    for number in range(40):
        width, height = (int(side) * INCH // 8 for side in rng.integers(6, 40, 2))
        place = Rect(
            int(rng.integers(0, PAGE.width - width)), int(rng.integers(0, PAGE.height - height)), width, height
        )
        page = ("left", "right")[number % 2]
        patches.append(Patch(page, Surface(f"role-{number % roles}", Side(rng.choice(["front", "back"]))), place))
        if number % 4 < 2:
            patches.append(Patch(page, PHOTO, place.inset(INCH // 8)))
    return scene(PAGE, patches, [Surface("role-1"), Surface("role-2" if roles > 2 else "role-0")])


def preview() -> None:
    """Every shipped recipe in the best colourway of every shipped set that fits it."""
    collection = Collection()
    for reading in collection.recipes.values():
        for papers in collection.sound_paper_sets():
            if not count(reading.model, papers):
                continue
            colourway = chosen_colourway(reading.model, papers)
            preview_svg(reading, colourway)
            draws = [timed(lambda r=reading, c=colourway: preview_svg(r, c)) for _ in range(5)]
            took, svg = min(draws, key=lambda each: each[0])
            drawn, _ = timed(lambda s=svg: png(s, 1200))
            print(f"{colourway.id}: SVG {1000 * took:.1f} ms, cairosvg at 1200 px {1000 * drawn:.0f} ms")


if __name__ == "__main__":
    main()
