import signal
import subprocess
import sys

import pytest

from gallery.built import write_collection

PROGRAM = """
import sys, time
from pathlib import Path
from spreadwright.cli import signals
from spreadwright.gallery import build
from spreadwright.store import Collection

def progress(*_):
    print("begun", flush=True)
    time.sleep(20)

signals.unwind_on_terminate()
build(Collection(Path(sys.argv[1])), Path(sys.argv[2]) / "gallery", progress=progress)
"""


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_stopped_build_leaves_nothing_behind(tmp_path, number):
    folder = write_collection(tmp_path / "collection")
    (tmp_path / "out").mkdir()
    command = [sys.executable, "-c", PROGRAM, str(folder), str(tmp_path / "out")]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as process:
        assert process.stdout.readline() == "begun\n"
        assert list((tmp_path / "out").iterdir())
        process.send_signal(number)
        _, error = process.communicate(timeout=10)
    assert (process.returncode, error) == (128 + number, "")
    assert list((tmp_path / "out").iterdir()) == []
