import pytest

from spreadwright.model import Swatch
from spreadwright.rest import create_app
from spreadwright.rest.rendered import _digest
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

PATH = "/recipes/window-seat/preview.png?width=200&set=two"


@pytest.fixture
def start(folder, tmp_path):
    """Processes that share rendered files, and nothing else."""
    return lambda: create_app(Collection(folder), store=open_store(renders=str(tmp_path / "renders"))).test_client()


def test_picture_is_drawn_once_for_all_processes(start, monkeypatch):
    drawn = start().get(PATH).data
    monkeypatch.setattr("spreadwright.rest.views.preview.preview_svg", lambda *_, **__: 1 / 0)
    assert start().get(PATH).data == drawn and drawn.startswith(b"\x89PNG")


def test_picture_that_cannot_be_kept_is_sent_all_the_same(folder, tmp_path):
    (tmp_path / "file").write_bytes(b"")
    store = open_store(renders=str(tmp_path / "file"))
    assert create_app(Collection(folder), store=store).test_client().get(PATH).status_code == 200


def test_other_width_or_document_is_another_picture(start):
    client = start()
    pictures = {client.get(path).data for path in (PATH, PATH.replace("200", "300"), PATH.replace("-seat", "-two"))}
    assert len(pictures) >= 2 and start().get(PATH).data == client.get(PATH).data


def test_long_print_that_is_there_is_no_job_any_more(start, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.views.booklet._LONG", 5)
    path = "/recipes/window-seat/booklet.pdf"
    waited = start().get(path, headers={"Prefer": "wait"})
    assert waited.status_code == 200 and start().get(path).data == waited.data


def test_other_picture_of_the_same_name_and_size_is_another_print():
    first, second = (Swatch("fern.png", data, "image/png", 8, 8) for data in (b"one", b"two"))
    assert _digest(first) != _digest(second) and _digest(first) == _digest(
        Swatch("fern.png", b"one", "image/png", 8, 8)
    )
