"""What a list is asked for."""

from dataclasses import dataclass, field

from spreadwright.store.values import State

SORTS = {
    "id": "id",
    "title": "title",
    "created": "created_at",
    "changed": "changed_at",
    "pages": "pages",
    "sheets": "sheets",
    "photos": "photos",
    "cuts": "cuts",
}
"""The name of an order, and the column that it is by."""
MOST_LIMIT = 200


@dataclass(frozen=True, slots=True)
class Range:
    """From least to most, both included; None leaves that side open."""

    least: int | None = None
    most: int | None = None

    @property
    def is_open(self) -> bool:
        """Whether it leaves nothing out."""
        return self.least is None and self.most is None

    @property
    def is_exact(self) -> bool:
        """Whether it leaves one number."""
        return self.least is not None and self.least == self.most


_ALL = Range()


@dataclass(frozen=True, slots=True)
class Wanted:
    """Which documents, in which order, from where on.

    Attributes:
        owner: Only those of this owner.
        also_of: Drafts and withdrawn ones of this owner too.
        words: Each of them begins a word of what is found.
        tags: All of them; so for authors and roles.
        page_size: Width and height, ticks.
        sort: One of `SORTS`, with `-` before it the other way round.
        after: What an earlier page called `next`.
    """

    kind: str
    states: tuple[State, ...] = (State.PUBLISHED,)
    owner: str | None = None
    also_of: str | None = None
    words: str = ""
    tags: tuple[str, ...] = ()
    authors: tuple[str, ...] = ()
    roles: tuple[str, ...] = ()
    licence: str | None = None
    language: str | None = None
    page_size: tuple[int, int] | None = None
    pages: Range = _ALL
    sheets: Range = _ALL
    photos: Range = _ALL
    cuts: Range = _ALL
    sort: str = "id"
    limit: int = 20
    after: str | None = field(default=None)

    @property
    def labels(self) -> tuple[tuple[str, str], ...]:
        """Field and value of everything that is asked for by name."""
        one = (("licence", self.licence), ("language", self.language))
        several = (("tag", self.tags), ("author", self.authors), ("role", self.roles))
        return (
            *((name, value) for name, values in several for value in values),
            *((name, value) for name, value in one if value is not None),
        )

    @property
    def is_choosy(self) -> bool:
        """Whether it leaves anything out, besides by state."""
        return bool(self.owner is not None or self.words or self.labels or self.ranges or self.page_size)

    @property
    def ranges(self) -> dict[str, Range]:
        """By column, those that leave something out."""
        found = {"pages": self.pages, "sheets": self.sheets, "photos": self.photos, "cuts": self.cuts}
        return {name: each for name, each in found.items() if not each.is_open}
