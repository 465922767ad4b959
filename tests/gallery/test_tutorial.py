"""“Your first recipe” is gone through as it stands: files are saved, commands run, and the output is what it shows."""

import os
import re
import socket
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from spreadwright import shipped
from spreadwright.images import read
from spreadwright.words import LANGUAGES

PAGE = (shipped.folder("site") / "docs" / "first-recipe.md").read_text(encoding="utf-8")
BLOCK = re.compile(r"^(?P<before>[^\n]*)\n\n```(?P<kind>\w+)\n(?P<body>.*?)(?=^```$)", re.MULTILINE | re.DOTALL)
SAVED = re.compile(r"[Ss]ave this (?:one )?as `(?P<name>[^`]+)`:$")
END, FAILED = "@end", "@failed "


@dataclass
class Step:
    """Commands, and what they print; files that are saved are commands, too."""

    commands: str
    shown: str | None = None


def steps() -> list[Step]:
    found: list[Step] = []
    for block in BLOCK.finditer(PAGE):
        saved = SAVED.search(block["before"])
        if saved:
            found.append(Step(f"cat > {saved['name']} <<'@'\n{block['body']}@\n"))
        elif block["kind"] == "sh":
            found.append(Step(block["body"]))
        elif block["kind"] == "text":
            found[-1].shown = block["body"]
    return found


def free_port() -> int:
    with socket.socket() as asked:
        asked.bind(("127.0.0.1", 0))
        return int(asked.getsockname()[1])


def matches(shown: str, printed: str) -> bool:
    """Whether it is what the page shows; a line of `…` stands for any lines, `…` in a line for anything in it."""
    pattern = re.escape(shown.strip() + "\n").replace("…\\\n", "(?:.*\\n)*?").replace("…", ".*")
    return re.fullmatch(pattern, printed.strip() + "\n") is not None


@pytest.fixture(scope="module")
def gone_through(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[str], list[str]]:
    """The folder, what each step printed, and which commands failed."""
    folder = tmp_path_factory.mktemp("first") / "recipe"
    folder.mkdir()
    script = f"trap 'echo \"{FAILED}$BASH_COMMAND\"' ERR\n" + "".join(
        f"{each.commands}echo {END}\n" for each in steps()
    )
    script += "wait\n"
    environment = {
        **{key: value for key, value in os.environ.items() if not key.startswith("SPREADWRIGHT_")},
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}",
        "XDG_CACHE_HOME": str(folder.parent / "cache"),
    }
    script = script.replace("8080", str(free_port()))
    ran = subprocess.run(
        ["bash"], input=script, text=True, capture_output=True, cwd=folder, env=environment, timeout=300, check=False
    )
    lines = ran.stdout.splitlines(keepends=True)
    failed = [line.removeprefix(FAILED).strip() for line in lines if line.startswith(FAILED)]
    printed = "".join(line for line in lines if not line.startswith(FAILED)).split(f"{END}\n")
    return folder, printed, failed


def test_every_block_is_taken():
    assert len(re.findall("^```", PAGE, re.MULTILINE)) == 2 * len(list(BLOCK.finditer(PAGE)))
    assert sum(each.shown is not None for each in steps()) == PAGE.count("```text")


def test_only_the_command_that_finds_a_fault_fails(gone_through):
    assert gone_through[2] == ["spreadwright check album/snails.json"]


@pytest.mark.parametrize("number", [number for number, each in enumerate(steps()) if each.shown])
def test_what_is_shown_is_what_is_printed(gone_through, number):
    assert matches(steps()[number].shown, gone_through[1][number]), gone_through[1][number]


def test_pictures_booklet_and_gallery_are_there(gone_through):
    folder = gone_through[0]
    for name, width in (("rhubarb.png", 1600), ("windfall.png", 1600), ("service.png", 800)):
        assert read((folder / name).read_bytes()).width == width
    assert (folder / "snails.pdf").read_bytes().startswith(b"%PDF-")
    page = (folder / "shown/recipes/snails/index.html").read_text(encoding="utf-8")
    assert "Snails in the rhubarb" in page
    assert not any((folder / "shown" / language).exists() for language in LANGUAGES)


def test_an_ellipsis_stands_for_what_varies():
    assert matches("a\n…\nb …", "a\nx\ny\nb 2\n") and matches("a\n…\nb", "a\nb")
    assert not matches("a\n…\nb …", "a\nx\nc\n")
