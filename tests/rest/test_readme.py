"""What the README shows is run as it stands there, against a service of its own."""

import re
import subprocess
import threading
from pathlib import Path

import pytest
from werkzeug.serving import make_server

from builder import SOUND
from spreadwright.client import Client
from spreadwright.rest import create_app
from spreadwright.store import Collection
from spreadwright.store.opening import open_store

README = (Path(__file__).parents[2] / "README.md").read_text()
SHOWN = "http://127.0.0.1:8080"
QUIET = 'set -eu\ncurl() { command curl --silent --show-error --fail-with-body "$@"; echo; }\n'


def blocks(kind):
    inside = README.partition("## Over HTTP")[2].partition("\n## ")[0]
    return re.findall(rf"```{kind}\n(.*?)```", inside, re.DOTALL)


@pytest.fixture(scope="module")
def service():
    """The address of a service, and a token for it."""
    store = open_store()
    server = make_server("127.0.0.1", 0, create_app(Collection(), store=store), threaded=True)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}", store.tokens.create("ana", ("write",)).secret
    server.shutdown()


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    """An empty one: what the examples send they have fetched before."""
    return tmp_path_factory.mktemp("examples")


def test_every_curl_of_the_readme_succeeds(service, folder):
    address, token = service
    script = QUIET + "".join(blocks("sh")).replace(SHOWN, address)
    assert script.count("\ncurl ") > 14
    done = subprocess.run(
        ["bash", "-c", script], cwd=folder, env={"TOKEN": token, "PATH": "/usr/bin:/bin"}, capture_output=True
    )
    assert done.returncode == 0, done.stdout[-500:] + done.stderr
    assert (folder / "spread.png").read_bytes().startswith(b"\x89PNG") and b"%PDF" in (folder / "cut.pdf").read_bytes()


def test_python_of_the_readme_runs(service, capsys):
    address, token = service
    (shown,) = blocks("python")
    with Client(address, token) as client:
        client.publish(client.create("recipes", {**SOUND, "tags": ["seaside"]}, name="my-own"))
    found = {}
    exec(shown.replace(SHOWN + "/", address).replace("spw_...", token).replace("my-first", "my-own"), found)
    assert SOUND["title"] in capsys.readouterr().out and found["plan"]["plans"]
