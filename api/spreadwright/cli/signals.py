"""Being told to stop: what was begun is tidied up first."""

import signal
from types import FrameType
from typing import NoReturn


def unwind_on_terminate() -> None:
    """From now on SIGTERM and a closed terminal unwind like Ctrl+C, so that no half-built folder stays behind.

    Call it in the main thread. Whoever sets handlers later, as a server does for its own gentle stop, has the say.
    """
    for name in ("SIGTERM", "SIGHUP"):  # the second is unknown to some systems
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is not signal.SIG_IGN:  # as under nohup
            signal.signal(number, _leave)


def _leave(number: int, _: FrameType | None) -> NoReturn:
    raise SystemExit(128 + number)
