"""What is public is described: finding codes, commands, addresses, public functions."""

import ast
import importlib
import inspect
import pkgutil
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import spreadwright
from spreadwright.cli import main
from spreadwright.rest import create_app
from spreadwright.store import Collection

REPOSITORY = Path(__file__).parents[1]
SOURCES = sorted((REPOSITORY / "api").rglob("*.py"))
ROOMS = [name for _, name, is_package in pkgutil.iter_modules(spreadwright.__path__) if is_package]

MAKERS = ("error", "warning", "note", "UnreadablePicture")
"""What takes the code of a finding first."""


def codes_in(source: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(source.read_text())):
        is_finding = isinstance(node, ast.Call) and getattr(node.func, "id", "") in MAKERS
        if is_finding and node.args and isinstance(node.args[0], ast.Constant):
            yield str(node.args[0].value)
        if isinstance(node, ast.ClassDef) and node.name in ("UnreadableLength", "BetweenMarks"):
            yield from (str(item.value.value) for item in node.body if isinstance(item, ast.Assign))


def test_every_finding_code_is_described():
    used = {code for source in SOURCES for code in codes_in(source) if re.fullmatch(r"[a-z]+(-[a-z]+)*", code)}
    used |= {"row-does-not-fill", "column-does-not-fill"}
    described = re.findall(r"^\| `([a-z-]+)` \|", (REPOSITORY / "site/docs/findings.md").read_text(), re.MULTILINE)
    assert sorted(described) == sorted(used)


def test_every_command_is_in_the_readme():
    readme = (REPOSITORY / "README.md").read_text()
    assert [name for name in main.commands if f"| `{name}" not in readme] == []


def test_every_address_is_in_the_readme():
    readme = (REPOSITORY / "README.md").read_text()
    rules = {
        re.sub(r"<[^>]*>", "{id}", rule.rule).split(".")[0] for rule in create_app(Collection()).url_map.iter_rules()
    }
    words = {part for rule in rules for part in rule.split("/") if part and "{" not in part and part != "static"}
    assert {word for word in words if word not in readme} == set()


@pytest.mark.parametrize("room", ROOMS)
def test_every_public_name_has_a_docstring(room):
    module = importlib.import_module(f"spreadwright.{room}")
    public = [getattr(module, name) for name in getattr(module, "__all__", [])]
    assert [each for each in public if inspect.isroutine(each) and not inspect.getdoc(each)] == []
    assert inspect.getdoc(module)
