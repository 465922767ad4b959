import os
import subprocess
import sys

LEFT = """
from spreadwright.cutting.search.ready import prepare
from spreadwright.cutting.search.speed import LOOPS
prepare()
print([loop.__name__ for loop in LOOPS if not loop.signatures])
"""


def test_after_preparing_no_loop_is_left_to_compile(tmp_path):
    fresh = {**os.environ, "NUMBA_CACHE_DIR": str(tmp_path)}
    done = subprocess.run([sys.executable, "-c", LEFT], env=fresh, capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_commands_that_do_not_plan_start_without_the_compiler():
    code = "import sys, spreadwright.cli.commands, spreadwright.rest; sys.exit('numba' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
