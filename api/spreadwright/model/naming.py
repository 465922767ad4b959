"""How the parts of a recipe are counted and called."""

from collections import Counter
from collections.abc import Iterator

from spreadwright.model.cut_tree import Content, Leaf, Use, leaf_count
from spreadwright.model.recipe import Recipe

MOST_PARTS = 1000
"""More parts than this in one recipe are refused before anything is laid out."""


def part_count(recipe: Recipe) -> int:
    """How many parts all sheets give, counted without laying them out."""
    return sum(sheet.times * leaf_count(sheet.content) for sheet in recipe.sheets)


def is_too_large(recipe: Recipe) -> bool:
    """Whether the recipe cuts more parts than a recipe may have."""
    return part_count(recipe) > MOST_PARTS


def piece_roles(recipe: Recipe) -> dict[str, str]:
    """The role of every piece by its id; empty for a recipe that is too large."""
    if is_too_large(recipe):
        return {}
    namer = Namer(recipe)
    return {
        namer.id(leaf): sheet.role
        for sheet in recipe.sheets
        for _ in range(sheet.times)
        for leaf in _repeated(sheet.content)
        if leaf.use is Use.PIECE
    }


def _repeated(content: Content) -> Iterator[Leaf]:
    """The leaves, each as often as it is cut, in document order."""
    if isinstance(content, Leaf):
        yield content
        return
    for branch in content.branches:
        for _ in range(branch.times):
            yield from _repeated(branch.content)


class Namer:
    """Gives each leaf its id: the name alone, or numbered when several carry it."""

    def __init__(self, recipe: Recipe) -> None:
        self._total: Counter[str] = Counter()
        for sheet in recipe.sheets:
            self._count(sheet.content, sheet.times)
        self._seen: Counter[str] = Counter()

    def _count(self, content: Content, times: int) -> None:
        if isinstance(content, Leaf):
            self._total[leaf_name(content)] += times
            return
        for branch in content.branches:
            self._count(branch.content, times * branch.times)

    def id(self, leaf: Leaf) -> str:
        """The id of the next leaf, to be asked in document order."""
        name = leaf_name(leaf)
        self._seen[name] += 1
        return f"{name}-{self._seen[name]}" if self._total[name] > 1 else name


def leaf_name(leaf: Leaf) -> str:
    """The name of a piece; what it is used for otherwise."""
    return leaf.name or leaf.use.value
