"""What was made before: found again whole or not at all, by nobody but its owner, and not for ever."""

import json
import os
import stat
from dataclasses import dataclass
from enum import Enum
from hashlib import sha256

import pytest
from hypothesis import given
from hypothesis import strategies as st

from spreadwright.gallery import CannotKeep, Kept
from spreadwright.gallery.make import Made
from spreadwright.gallery.work.fingerprints import fingerprint
from spreadwright.gallery.work.plain import as_plain, from_plain


class Colour(Enum):
    MOSS = "moss"


@dataclass(frozen=True)
class Leaf:
    name: str
    size: tuple[int, float]
    colour: Colour
    veins: tuple[str, ...] = ()
    note: str | None = None


LEAF = Leaf("oak", (3, 4.5), Colour.MOSS, ("a", "b"))
MADE = Made({"a/b.svg": b"<svg/>\n\n", "empty": b"", "c": b"\x00\xff"}, LEAF)


def test_what_was_kept_is_found_again(tmp_path):
    Kept(tmp_path / "kept").put("key", MADE)
    assert Kept(tmp_path / "kept").get("key", Leaf) == MADE
    assert Kept(tmp_path / "kept").get("other", Leaf) is None
    assert stat.S_IMODE((tmp_path / "kept").stat().st_mode) == 0o700


def test_what_is_not_whole_was_never_there(tmp_path):
    kept = Kept(tmp_path / "kept")
    kept.put("key", MADE)
    whole = (tmp_path / "kept" / "key").read_bytes()
    for spoilt in (b"", whole[:-1], whole + b" ", whole[:70] + b"X" + whole[71:], b"\n" + whole):
        (tmp_path / "kept" / "key").write_bytes(spoilt)
        assert kept.get("key", Leaf) is None
    (tmp_path / "kept" / "key").write_bytes(whole)
    assert kept.get("key", Leaf) == MADE


@pytest.mark.parametrize("head", [[], {}, {"told": 3, "files": []}, {"told": {"name": "oak"}, "files": []}])
def test_what_another_version_kept_is_of_no_use(tmp_path, head):
    kept = Kept(tmp_path / "kept")
    rest = json.dumps(head).encode() + b"\n"
    (tmp_path / "kept" / "key").write_bytes(sha256(rest).hexdigest().encode() + b"\n" + rest)
    assert kept.get("key", Leaf) is None


def test_folder_of_others_is_refused(tmp_path):
    shared = tmp_path / "shared"
    shared.mkdir()
    shared.chmod(0o777)
    with pytest.raises(CannotKeep, match=r"others could write to it\.$"):
        Kept(shared)
    (tmp_path / "file").write_text("")
    with pytest.raises(CannotKeep, match="Nothing is kept in"):
        Kept(tmp_path / "file" / "kept")


def test_longest_unused_goes_first_and_the_last_gallery_stays(tmp_path):
    kept = Kept(tmp_path / "kept", least_bytes=3500)
    for age, name in enumerate(("d", "c", "b", "a")):
        kept.put(name, Made({"file": bytes(900)}, 1))
        os.utime(tmp_path / "kept" / name, (1000 + age, 1000 + age))
    kept = Kept(tmp_path / "kept", least_bytes=3500)
    assert kept.get("d", int)
    kept.trim()
    assert sorted(each.name for each in (tmp_path / "kept").iterdir()) == ["a", "b", "d"]


def test_what_was_broken_off_goes_after_a_day(tmp_path):
    kept = Kept(tmp_path / "kept")
    for name, age in (("unfinished-old", 0), ("unfinished-new", None)):
        (tmp_path / "kept" / name).write_bytes(b"half")
        if age is not None:
            os.utime(tmp_path / "kept" / name, (age, age))
    kept.trim()
    assert [each.name for each in (tmp_path / "kept").iterdir()] == ["unfinished-new"]


texts = st.text(max_size=5)
values = st.recursive(
    st.one_of(st.none(), st.booleans(), st.integers(), st.floats(allow_nan=False), texts, st.binary(max_size=5)),
    lambda inner: st.lists(inner, max_size=3).map(tuple),
    max_leaves=6,
)


@given(values, values)
def test_equal_fingerprints_are_of_equal_values(one, other):
    assert (fingerprint(one) == fingerprint(other)) == (repr(one) == repr(other))


def test_parts_that_are_shared_are_worked_out_once():
    known: dict[int, bytes] = {}
    assert fingerprint((LEAF, 1), known) == fingerprint((LEAF, 1)) != fingerprint((LEAF, 2), known)
    assert list(known) == [id(LEAF)]


def test_what_has_no_fingerprint_is_refused():
    with pytest.raises(TypeError):
        fingerprint({"a": 1})


@given(st.builds(Leaf, texts, st.tuples(st.integers(), st.floats(allow_nan=False)), st.sampled_from(Colour)))
def test_plain_and_back(leaf):
    assert from_plain(Leaf, json.loads(json.dumps(as_plain(leaf)))) == leaf


@pytest.mark.parametrize("plain", [None, 3, {}, {**as_plain(LEAF), "size": [1]}, {**as_plain(LEAF), "name": 3}])
def test_what_is_no_leaf_is_refused(plain):
    with pytest.raises(TypeError):
        from_plain(Leaf, plain)
