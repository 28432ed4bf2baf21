"""Kills a browser as a phone ends an app: at once, in the middle of whatever it does."""

import contextlib
import os
import signal
import threading
import time
from pathlib import Path

_GONE_SECONDS = 20


class Killer:
    """Ends the browser of one profile folder, by its process ids, after a while or at once."""

    def __init__(self, profile: Path):
        """Find the browser that was started on the folder."""
        self._profile = profile
        self._pid = self._main_process()
        self._timer: threading.Timer | None = None

    def arm(self, seconds: float) -> None:
        """Kill it so many seconds from now; the first call counts."""
        if self._timer is None:
            self._timer = threading.Timer(seconds, self.kill)
            self._timer.start()

    def kill(self) -> None:
        """Kill it now, with everything that it has started."""
        for pid in [self._pid, *_descendants(self._pid)]:
            with contextlib.suppress(ProcessLookupError):
                os.kill(pid, signal.SIGKILL)

    def bury(self) -> None:
        """Wait until it is gone and let the next browser have its profile."""
        if self._timer:
            self._timer.join()
        ends = time.monotonic() + _GONE_SECONDS
        while _is_running(self._pid) and time.monotonic() < ends:
            time.sleep(0.02)
        assert not _is_running(self._pid)
        for lock in self._profile.glob("Singleton*"):
            lock.unlink()

    def _main_process(self) -> int:
        """Return the process that was given the folder and is no helper of another."""
        wanted = f"--user-data-dir={self._profile}".encode()
        for entry in Path("/proc").glob("[0-9]*/cmdline"):
            with contextlib.suppress(OSError):
                arguments = entry.read_bytes().split(b"\0")
                if wanted in arguments and not any(each.startswith(b"--type=") for each in arguments):
                    return int(entry.parent.name)
        raise AssertionError(f"no browser runs on {self._profile}")


def _descendants(pid: int) -> list[int]:
    """Return the processes that a process has started, and theirs."""
    found = []
    for entry in Path("/proc").glob(f"{pid}/task/*/children"):
        with contextlib.suppress(OSError):
            for child in map(int, entry.read_text().split()):
                found += [child, *_descendants(child)]
    return found


def _is_running(pid: int) -> bool:
    """Tell whether a process is there and not only waits to be noticed as dead."""
    try:
        state = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return False
    return state != "Z"
