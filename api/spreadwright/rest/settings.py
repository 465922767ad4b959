"""What a service may be told by its environment: addresses, bounds and habits, each with its default.

Sizes are bytes, widths are pixels, times are seconds. A variable that is set but empty counts as left out.
"""

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, fields
from typing import Any

from spreadwright.document import MOST_BYTES, MOST_PICTURE_PIXELS
from spreadwright.errors import SpreadwrightError
from spreadwright.store.pictures import MOST_BYTES as MOST_PICTURE_BYTES
from spreadwright.tasks.draw import NARROWEST_PX, WIDEST_PX

PREFIX = "SPREADWRIGHT_"


class BadSetting(SpreadwrightError):
    """A variable whose value is not understood; the value itself may be a secret and is not told."""

    def __init__(self, name: str, wanted: str) -> None:
        super().__init__(name)
        self.name, self.wanted = name, wanted

    def __str__(self) -> str:
        return f"The variable {self.name} is not understood. Set it to {self.wanted}."


def _told(default: Any, words: str, *, least: int = 0, most: int = 2**31 - 1) -> Any:
    """A field with the words that describe it; `PUBLIC` is what stands in place of the default on a public address."""
    return field(default=default, metadata={"words": words, "least": least, "most": most})


@dataclass(frozen=True, slots=True)
class Settings:
    """The settings of one service; `describe` tells them with their variables."""

    database_url: str = _told(
        "", "Where documents are kept: sqlite:///file or postgresql://…; empty: for this run only."
    )
    renders: str = _told("", "Folder or fsspec address where rendered files are kept; empty: in memory only.")
    counters: str = _told("", "Where clients are counted, a Redis: redis://host:6379/0; empty: in the database.")
    public_url: str = _told("", "The address under which others reach the service; empty: as each request names it.")
    origins: str = _told("*", "Web origins whose pages may read answers, separated by blanks; * for all.")
    proxies: int = _told(0, "How many reverse proxies stand before it, whose X-Forwarded headers are believed.", most=9)
    log: str = _told("off", "The request log on stderr: json or off.")
    review_first: int = _told(
        0, "1: only reviewers publish; 0: owners publish, and reviewers may refuse later.", most=1
    )
    document_bytes: int = _told(MOST_BYTES, "Of one document.", least=1000, most=MOST_BYTES)
    upload_bytes: int = _told(48_000_000, "Of one upload of photographs with all its parts.", least=1000)
    set_pictures: int = _told(24, "Pictures that one paper set may have; 0: none are taken.", most=200)
    picture_bytes: int = _told(MOST_PICTURE_BYTES, "Of one picture of a paper.", least=1000, most=MOST_PICTURE_BYTES)
    picture_pixels: int = _told(
        MOST_PICTURE_PIXELS, "Pixels of one picture of a paper, as it is sent.", least=1000, most=MOST_PICTURE_PIXELS
    )
    booklet_pieces: int = _told(
        300, "Pieces of a recipe that is still printed as a booklet on demand; 300 take about twelve seconds.", least=1
    )
    print_pages: int = _told(200, "Pages of a booklet or of templates that are printed on demand.", least=1, most=2000)
    widest_px: int = _told(WIDEST_PX, "Width of a picture in pixels.", least=NARROWEST_PX, most=WIDEST_PX)
    search_s: int = _told(20, "Seconds that one search for a plan may take.", least=1, most=20)
    list_items: int = _told(100, "Items on one page of a list.", least=1, most=100)
    read_s: int = _told(30, "Seconds that a request may take to arrive in full.", least=1, most=3600)
    hold_s: int = _told(
        150, "Seconds for which one request may hold a thread, until its answer is taken.", least=60, most=3600
    )
    keys_days: int = _told(30, "Days for which a request is known by its Idempotency-Key.", least=1, most=3650)
    results_s: int = _told(3600, "Seconds for which the result of a job is kept.", least=60, most=604_800)
    work_per_minute: int = _told(0, "Answers that have to be worked out, by one client; 0: no limit.")
    writes_per_minute: int = _told(0, "Writes by one client; 0: no limit.")

    @classmethod
    def from_environment(cls, environment: Mapping[str, str] = os.environ, *, is_public: bool = False) -> "Settings":
        """The settings as the environment has them.

        Args:
            environment: Variables by name.
            is_public: The service listens to other machines, so that clients are counted unless told otherwise.

        Raises:
            BadSetting: One of them is not understood.
        """
        values: dict[str, Any] = dict(PUBLIC) if is_public else {}
        for each in fields(cls):
            text = environment.get(variable(each.name), "").strip()
            if text:
                values[each.name] = _value(each.name, text, each.metadata, each.type)
        return cls(**values)


PUBLIC: Mapping[str, Any] = {"log": "json", "work_per_minute": 600, "writes_per_minute": 120}
"""What is set on an address that other machines reach, unless the environment says otherwise."""


def variable(name: str) -> str:
    """The name of the variable of a setting."""
    return PREFIX + name.upper()


def described() -> list[tuple[str, str, str]]:
    """Variable, default, and what it is, of every setting."""
    return [
        (variable(each.name), _default(each.name, each.default), each.metadata["words"]) for each in fields(Settings)
    ]


def _default(name: str, default: Any) -> str:
    public = f" (public: {PUBLIC[name]})" if name in PUBLIC else ""
    return f"{default}{public}" if default != "" else "empty"


def _value(name: str, text: str, told: Mapping[str, Any], kind: Any) -> Any:
    read = _READERS.get(name)
    if read is not None:
        return read(text)
    if kind is str or kind == "str":
        return text
    least, most = told["least"], told["most"]
    if not text.isascii() or not text.isdigit() or len(text) > 12 or not least <= int(text) <= most:
        raise BadSetting(variable(name), f"a whole number from {least} to {most}")
    return int(text)


def _log(text: str) -> str:
    if text not in ("json", "off"):
        raise BadSetting(variable("log"), "json or off")
    return text


def _public_url(text: str) -> str:
    if not text.startswith(("https://", "http://")) or any(sign in text for sign in " ?#\"'<>"):
        raise BadSetting(variable("public_url"), "an address that begins with https://")
    return text.rstrip("/")


_READERS: Mapping[str, Callable[[str], str]] = {"log": _log, "public_url": _public_url}
