"""Being told to stop: what was begun is tidied up first."""

import signal
from types import FrameType

_TICK_S = 0.0005
"""Between two tries to leave: the library works in C most of the time, and a rarer try would always find it there."""


def unwind_on_terminate() -> None:
    """From now on SIGTERM and a closed terminal unwind like Ctrl+C, so that no half-built folder stays behind.

    Call it in the main thread. Whoever sets handlers later, as a server does for its own gentle stop, has the say.
    """
    for name in ("SIGINT", "SIGTERM", "SIGHUP"):  # the last is unknown to some systems
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is not signal.SIG_IGN:  # as under nohup
            signal.signal(number, _leave)


def _leave(number: int, frame: FrameType | None) -> None:
    if _is_called_back(frame):
        signal.signal(signal.SIGALRM, lambda _, later: _leave(number, later))
        signal.setitimer(signal.ITIMER_REAL, _TICK_S, _TICK_S)
        return
    signal.setitimer(signal.ITIMER_REAL, 0)
    if number == signal.SIGINT:
        raise KeyboardInterrupt
    raise SystemExit(128 + number)


def _is_called_back(frame: FrameType | None) -> bool:
    """Whether the drawing library waits for this code: what is raised there never arrives."""
    while frame is not None:
        if frame.f_code.co_name == "write_func" and frame.f_globals.get("__name__", "").startswith("cairocffi"):
            return True
        frame = frame.f_back
    return False
