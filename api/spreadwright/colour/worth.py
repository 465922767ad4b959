"""What the colourways of a recipe in one paper set are worth: all of them at once, as tables."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from spreadwright.colour.parts import WEIGHTS, Part
from spreadwright.colour.scene import Meeting, Scene, Surface
from spreadwright.colour.search import Supply
from spreadwright.colour.tables import POINT, Cast, Picks, Sums, Tables, judged, part_tables, points, weighted_sum
from spreadwright.colour.weakness import Weakness, merged_roles, weaknesses
from spreadwright.model import Choice, Colourway, PaperSet

Liking = Callable[[str, Choice], float]
"""How well a choice suits a role for some further reason, 0 to 1."""


@dataclass(frozen=True, slots=True)
class Wish:
    """A further part of the score: the mean of `liking` over all roles by their area in sight.

    As far as a paper cannot be told from larger ones that it meets, it counts for nothing: it shows nothing more.

    Attributes:
        weight: Beside the weights of `parts.WEIGHTS`, which are 100 in all.
        praise: What is said where it goes well, as half a sentence in the language spoken.
        blame: What is said where it goes badly.
    """

    name: str
    weight: float
    liking: Liking
    praise: str = ""
    blame: str = ""


@dataclass(frozen=True, slots=True)
class Ranked:
    """One colourway and what it is worth.

    Attributes:
        score: 0 to 100, the weighted sum of its parts.
        parts: 0 to 100 each, by name.
        shares: Of each part in the score, 1 in all.
        weak: What costs each part the most, where anything does.
        merged: The roles, two by two, that nothing tells apart where they meet.
    """

    colourway: Colourway
    score: float
    parts: Mapping[str, float]
    shares: Mapping[str, float]
    weak: Mapping[str, Weakness]
    merged: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Worth:
    """All colourways in one set, and what each of them is worth.

    Attributes:
        judged: Every part by which the recipe can be judged, as its formula gives it.
        parts: The value of every part, in millionths of a point.
        shares: Of each part in the score, 1 in all.
        scores: The weighted sum.
    """

    papers: PaperSet
    scene: Scene
    cast: Cast
    judged: Mapping[str, Part]
    parts: Mapping[str, Tables]
    shares: Mapping[str, float]
    scores: Tables
    supply: Supply | None = None

    def ranked(self, pick: Sequence[int]) -> Ranked:
        """One pick, with its score and its parts."""
        one = np.array([pick], np.int64)
        parts = {name: _value(tables, one) for name, tables in self.parts.items()}
        weak = weaknesses(self.judged, self.scene, self.cast, pick)
        apart = self.judged.get("separation")
        merged = merged_roles(apart, self.cast, pick) if apart else ()
        return Ranked(self.colourway(pick), _value(self.scores, one), parts, self.shares, weak, merged)

    def colourway(self, pick: Sequence[int]) -> Colourway:
        """One pick as a colourway."""
        chosen = zip(self.cast.roles, self.cast.options, pick, strict=True)
        return Colourway(self.papers.id, tuple((role, options[number]) for role, options, number in chosen))


def _value(tables: Tables, one: Picks) -> float:
    return int(tables.values(one)[0]) / POINT


def worth(papers: PaperSet, scene: Scene, cast: Cast, supply: Supply | None = None, wish: Wish | None = None) -> Worth:
    """What is to be known for ranking; `cast` has every option of every role in that set."""
    parts = judged(scene, cast.looks)
    tables = {name: part_tables(part, cast) for name, part in parts.items()}
    weights = {name: float(WEIGHTS[name]) for name in tables}
    if wish:
        tables[wish.name], weights[wish.name] = _wished(wish, scene, cast, parts.get("separation")), wish.weight
    whole = sum(weights.values())
    shares = {name: weight / whole for name, weight in weights.items()}
    scores = weighted_sum(cast, [(tables[name], share) for name, share in shares.items()])
    return Worth(papers, scene, cast, parts, tables, shares, scores, supply)


def _wished(wish: Wish, scene: Scene, cast: Cast, apart: Part | None) -> Tables:
    """What a wish is worth: nothing where a paper cannot be told from the larger ones that it meets."""
    shares, sums = role_shares(scene), Sums(cast)
    liked = {
        role: np.array([wish.liking(role, choice) for choice in options])
        for role, options in zip(cast.roles, cast.options, strict=True)
    }
    for role, values in liked.items():
        sums.add_alone(Surface(role), points(shares.get(role, 0.0) * values))
    if apart is None:
        return sums.tables()
    for (small, large), share in _outdone(scene).items():
        alike = apart.matrix[np.ix_(cast.shown[small], cast.shown[large])] == 0
        sums.add_between(small, large, -points(share * liked[small.role][:, None] * alike))
    return sums.tables()


def _outdone(scene: Scene) -> dict[Meeting, float]:
    """For every surface its share of the paper in sight, in equal parts over the larger ones of other roles that it
    meets, so that no surface can lose more than it has.
    """
    areas = scene.papers
    whole = sum(areas.values())
    met = sorted({*scene.edges, *scene.facing})
    by_size = [sorted(pair, key=lambda each: (areas[each], each)) for pair in met if set(pair) <= areas.keys()]
    pairs = [(small, large) for small, large in by_size if small.role != large.role]
    count = Counter(small for small, _large in pairs)
    return {(small, large): areas[small] / whole / count[small] for small, large in pairs}


def role_shares(scene: Scene) -> dict[str, float]:
    """How much of all paper in sight is of each role, 1 in all."""
    areas: dict[str, int] = {}
    for surface, area in scene.papers.items():
        areas[surface.role] = areas.get(surface.role, 0) + area
    whole = sum(areas.values())
    return {role: area / whole for role, area in areas.items()}
