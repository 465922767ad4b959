"""What the command *gallery* takes, and what it refuses before anything is built."""

import sys

import pytest
from click.testing import CliRunner

from spreadwright.cli import gallery as command
from spreadwright.cli.commands import main
from spreadwright.gallery import Site
from spreadwright.words import LANGUAGES


@pytest.fixture
def run(monkeypatch, tmp_path):
    """Runs the command without building; what would have been built, and how the command ended."""
    built = []
    monkeypatch.setattr(command, "build_gallery", lambda *given: built.append(given))
    monkeypatch.setattr(command.signals, "unwind_on_terminate", lambda: None)

    def run(*arguments):
        built.clear()
        return built, CliRunner().invoke(main, ["gallery", str(tmp_path / "out"), *arguments])

    return run


def test_everything_is_built_in_every_language_when_nothing_is_said(run, tmp_path):
    built, result = run()
    ((collection, output, site, processes, dated),) = built
    assert (output, site, processes, dated) == (tmp_path / "out", Site(LANGUAGES), None, None)
    assert "rain-until-four" in collection.files() and result.exit_code == 0
    assert f"open {tmp_path / 'out' / 'index.html'} in a browser" in result.stderr


def test_what_is_said_is_done(run, tmp_path):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "one.json").write_text("{}")
    options = ["--language", "fr", "--language", "en", "--address", "https://a.example/b/", "--api", "/c"]
    built, _ = run("--from", str(tmp_path / "mine"), "--processes", "3", *options)
    ((collection, _, site, processes, _),) = built
    assert list(collection.files()) == ["one"] and processes == 3
    assert site == Site(("fr", "en"), "https://a.example/b/", "/c")


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["--from", "nowhere"], "“nowhere” is neither a folder nor an address"),
        (["--from", "https://a.example/", "--watch"], "a service cannot be watched"),
        (["--address", "a.example"], "“a.example” is no address"),
        (["--address", "/ours"], "“/ours” is no address"),
        (["--address", "https://["], "“https://[” is no address"),
        (["--api", "ftp://a.example"], "“ftp://a.example” is no address"),
        (["--language", "nl"], "'nl' is not one of 'en', 'de', 'fr'"),
        (["--processes", "0"], "0 is not in the range"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(run, arguments, told):
    built, result = run(*arguments)
    assert (built, result.exit_code) == ([], 2)
    assert told in result.stderr and "Traceback" not in result.output


def test_a_service_needs_the_client(run, monkeypatch):
    monkeypatch.setitem(sys.modules, "spreadwright.gallery.work.fetched", None)
    built, result = run("--from", "https://a.example/")
    assert (built, result.exit_code) == ([], 2)
    assert "pip install 'spreadwright[client]'" in result.stderr


def test_a_service_that_is_not_there_is_told(run, monkeypatch, tmp_path):
    from spreadwright.client.retries import Patience

    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setattr("spreadwright.client.client.Patience", lambda: Patience(times=1))
    built, result = run("--from", "http://127.0.0.1:9/")
    assert (built, result.exit_code) == ([], 2)
    assert result.stderr.startswith("Fetching from http://127.0.0.1:9/") and "Nothing comes from" in result.stderr


def test_nothing_is_kept_where_others_could_write(monkeypatch, tmp_path, capsys):
    folder = tmp_path / "spreadwright" / "gallery"
    folder.mkdir(parents=True)
    folder.chmod(0o777)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert command.kept_before() is None
    assert "others could write to it" in capsys.readouterr().err
    folder.chmod(0o700)
    assert command.kept_before() is not None
