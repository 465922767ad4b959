import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.gallery.overview.names import author_path, slug, tag_path

SAFE = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@given(st.text(min_size=1))
def test_every_name_is_a_safe_folder(name: str):
    assert SAFE.fullmatch(slug(name)) and len(slug(name)) <= 49


@given(st.lists(st.text("aAbBäÅ-_ .1é水con", min_size=1, max_size=5), unique=True, max_size=60))
def test_two_names_never_share_a_folder(names: list[str]):
    assert len({slug(name) for name in names}) == len(names)


@given(st.from_regex(r"[a-z][a-z0-9]{0,8}(-[a-z0-9]{1,5}){0,2}", fullmatch=True))
def test_a_plain_name_stays_or_is_signed(name: str):
    assert slug(name) == name or slug(name).startswith(f"{name}-")


@pytest.mark.parametrize("name", ["con", "aux", "lpt1", "COM7"])
def test_names_of_devices_are_no_folders(name: str):
    assert slug(name).startswith(f"{name.lower()}-")


def test_what_looks_signed_is_signed_again():
    signed = slug("Band")
    assert slug(signed) not in ("band", signed)


def test_tags_and_authors_lie_apart():
    assert tag_path("ada") == "tags/ada/index.html" and author_path("ada") == "authors/ada/index.html"
