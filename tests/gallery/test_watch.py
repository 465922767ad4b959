"""What is told to have changed, and what a watched gallery does then."""

from itertools import count

import pytest

from spreadwright.cli.watching import watched
from spreadwright.errors import CannotDraw, InvalidDocument, InvalidDocuments, error
from spreadwright.gallery.work import watch as watching
from spreadwright.gallery.work.watch import Watch, sources


@pytest.fixture
def folder(tmp_path):
    for name in ("one.json", "paper-sets/two.json", "paper-sets/two/rope.png", "benches/long.json", "notes/long.txt"):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(name)
    return tmp_path


def changed_by(folder, *steps):
    """What is told when one step is done in each pause, and how many pauses it took."""
    pauses = count()

    def sleep(_):
        if (number := next(pauses)) < len(steps):
            steps[number]()

    told = Watch(sources(folder)[:3], sleep=sleep).changed()
    return [name.removeprefix(f"{folder}/") for name in told], next(pauses)


def test_documents_and_pictures_are_watched(folder):
    def change(name):
        return lambda: (folder / name).write_text("another text")

    def nothing():
        pass

    assert changed_by(folder, nothing, nothing, change("one.json")) == (["one.json"], 4)
    assert changed_by(folder, change("paper-sets/two/rope.png"))[0] == ["paper-sets/two/rope.png"]
    assert changed_by(folder, (folder / "benches/long.json").unlink)[0] == ["benches/long.json"]
    assert changed_by(folder, change("three.json"))[0] == ["three.json"]


def test_what_is_saved_in_several_steps_is_told_at_once(folder):
    steps = [lambda size=size: (folder / "one.json").write_text("x" * size) for size in (1, 2, 3)]
    others = [lambda: (folder / "paper-sets/two.json").write_text("")]
    assert changed_by(folder, *steps, *others) == (["one.json", "paper-sets/two.json"], 5)


def test_what_is_no_part_of_a_collection_is_not_watched(folder):
    def aside():
        (folder / "notes/long.txt").write_text("another text")
        (folder / "paper-sets/.two.json.swp").write_text("an editor's")
        (folder / "gallery-out").mkdir()
        (folder / "gallery-out/index.html").write_text("")

    assert changed_by(folder, aside, lambda: (folder / "one.json").unlink())[0] == ["one.json"]


class Changes:
    """In place of files: the changes that are to be told, then Ctrl+C."""

    def __init__(self, *changes):
        self._changes = list(changes)

    def __call__(self, _):
        return self

    def changed(self):
        if not self._changes:
            raise KeyboardInterrupt
        return self._changes.pop(0)


BROKEN = [InvalidDocument(name, [error("off", "/sheets", f"{name} does not add up.", "Mend it.")]) for name in "ab"]


def test_a_watched_gallery_tells_what_changed_and_what_is_wrong(folder, monkeypatch, capsys):
    outcomes = [None, InvalidDocuments(BROKEN), CannotDraw("The picture"), None]

    def build():
        if outcome := outcomes.pop(0):
            raise outcome

    changes = Changes(("/a/one.json",), ("b",), tuple("abcde"))
    monkeypatch.setattr(watching, "Watch", changes)
    watched(folder, build, folder / "out")
    told = capsys.readouterr().err
    assert outcomes == []
    assert "Changed: one.json." in told and "Changed: a, b, c and 2 more." in told
    assert told.count("Built in 0.0 s.") == 2 and told.count("the gallery stays as it was") == 2
    assert all(f"{name} does not add up." in told for name in "ab")
