import signal
import subprocess
import sys
import time

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


def _heed_all():
    """Even where the tests run in the background or outlive their terminal, which tells them to ignore some."""
    for number in (signal.SIGINT, signal.SIGHUP):
        signal.signal(number, signal.SIG_DFL)


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGHUP])
def test_stopped_build_leaves_nothing_behind(tmp_path, number):
    folder = write_collection(tmp_path / "collection")
    (tmp_path / "out").mkdir()
    command = [sys.executable, "-c", PROGRAM, str(folder), str(tmp_path / "out")]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, preexec_fn=_heed_all
    ) as process:
        assert process.stdout.readline() == "begun\n"
        assert list((tmp_path / "out").iterdir())
        process.send_signal(number)
        try:
            _, error = process.communicate(timeout=10)
        finally:
            process.kill()
    assert (process.returncode, error) == (128 + number, "")
    assert list((tmp_path / "out").iterdir()) == []


DRAWING = """
from spreadwright.cli import signals
from spreadwright.drawing.raster import png

SVG = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><circle cx="4" cy="4" r="3"/></svg>'
signals.unwind_on_terminate()
try:
    print("begun", flush=True)
    while True:
        png(SVG, 3000)
except BaseException as reason:
    print(type(reason).__name__)
"""


@pytest.mark.parametrize(("number", "raised"), [(signal.SIGTERM, "SystemExit"), (signal.SIGINT, "KeyboardInterrupt")])
def test_picture_in_the_making_does_not_swallow_the_signal(number, raised):
    with subprocess.Popen(
        [sys.executable, "-c", DRAWING],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=_heed_all,
    ) as process:
        assert process.stdout.readline() == "begun\n"
        time.sleep(1)
        process.send_signal(number)
        try:
            out, error = process.communicate(timeout=20)
        finally:
            process.kill()
    assert (out, error) == (f"{raised}\n", "")
