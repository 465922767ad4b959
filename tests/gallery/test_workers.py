"""Orders carried out by whoever will: in this process, in threads, in processes that end when they should."""

import os
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import nullcontext

import pytest

from spreadwright.errors import InvalidDocument, SpreadwrightError, error
from spreadwright.gallery.work.workers import AT_ONCE, Here, Workers, carried_out


def doubled(number: int) -> int:
    if number < 0:
        raise InvalidDocument("below", [error("below", "/0", "It is below nothing.", "Add something.")])
    return 2 * number


@pytest.mark.parametrize("executor", [lambda: nullcontext(Here()), lambda: ThreadPoolExecutor(3), lambda: Workers(2)])
def test_every_order_is_carried_out_once(executor):
    orders = [7, -1, *range(AT_ONCE + 20)]
    with executor() as chosen:
        results = dict(carried_out(doubled, orders, chosen))
    refused = results.pop(1).exception()
    assert isinstance(refused, InvalidDocument)
    assert (refused.name, refused.findings[0].remedy) == ("below", "Add something.")
    assert {number: future.result() for number, future in results.items()} == {
        number: 2 * order for number, order in enumerate(orders) if order >= 0
    }


def test_no_more_is_under_way_than_can_be_written():
    begun = []
    with ThreadPoolExecutor(2) as executor:
        for _ in carried_out(begun.append, range(3 * AT_ONCE), executor):
            break
    assert len(begun) <= AT_ONCE + 1


def test_every_error_of_ours_travels_whole():
    def kinds(of):
        return [of, *(each for below in of.__subclasses__() for each in kinds(below))]

    import pickle

    for kind in kinds(SpreadwrightError):
        made = kind.__new__(kind, "what", 3)
        made.__dict__.update(reason="why", findings=(error("a", "/b", "c", "d"),))
        again = pickle.loads(pickle.dumps(made))
        assert (type(again), again.args, again.__dict__) == (kind, made.args, made.__dict__)


STUCK = """
import os, sys, time
from spreadwright.gallery.work.workers import Workers, carried_out
from gallery.test_workers import stuck

if __name__ == "__main__":
    with Workers(2) as workers:
        for _ in carried_out(stuck, [sys.argv[1]] * 2, workers):
            pass
"""


def stuck(folder: str) -> None:
    """Leaves its number and never ends."""
    with open(f"{folder}/{os.getpid()}", "w"):  # noqa: PTH123
        time.sleep(600)


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGKILL])
def test_no_process_outlives_who_began_it(tmp_path, number):
    (tmp_path / "begun").mkdir()
    program = tmp_path / "program.py"
    program.write_text(STUCK)
    command = [sys.executable, str(program), str(tmp_path / "begun")]
    surroundings = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    with subprocess.Popen(
        command, stderr=subprocess.PIPE, text=True, env=surroundings, preexec_fn=_heed_ctrl_c
    ) as process:
        begun = _waited(lambda: len(list((tmp_path / "begun").iterdir())) == 2)
        process.send_signal(number)
        _, told = process.communicate(timeout=30)
    workers = [int(each.name) for each in (tmp_path / "begun").iterdir()]
    assert begun and _waited(lambda: not any(_is_alive(each) for each in workers))
    assert told.count("Traceback") <= 1  # the program's own, which handles nothing


def _heed_ctrl_c() -> None:
    """Even where the tests run in the background, which a shell tells to ignore it."""
    signal.signal(signal.SIGINT, signal.default_int_handler)


def _is_alive(number: int) -> bool:
    try:
        with open(f"/proc/{number}/stat") as file:  # noqa: PTH123
            return file.read().rpartition(")")[2].split()[0] != "Z"
    except OSError:
        return False


def _waited(is_so, seconds: float = 60) -> bool:
    end = time.monotonic() + seconds
    while not is_so() and time.monotonic() < end:
        time.sleep(0.05)
    return bool(is_so())
