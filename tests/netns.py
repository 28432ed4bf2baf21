"""Two machines that exist only inside this one: network namespaces joined by a cable of their own.

Nothing in them comes near the machine's own network, so a test may announce a name there and listen at
every address. Where the machine lets nobody make such a namespace, `missing` says why, and whoever needs
one is left out, which the report of the run says.
"""

import functools
import os
import shutil
import subprocess
import time
from collections.abc import Callable
from pathlib import Path

YARD, PHONE = "10.77.0.1", "10.77.0.2"
YARD_6, PHONE_6 = "fd77::1", "fd77::2"
LEFT_OUT = "no network namespace"
WHAT = "the yard's network: a name announced and resolved, a phone that opens the app by it"


@functools.cache
def missing() -> str:
    """Return why no namespaces can be made here, or nothing when they can."""
    for tool in ("unshare", "nsenter", "ip"):
        if not shutil.which(tool):
            return f"this machine has no `{tool}`"
    try:
        with TwoMachines():
            return ""
    except (OSError, RuntimeError, subprocess.CalledProcessError) as error:
        return f"this machine lets nobody make network namespaces ({error})"


class TwoMachines:
    """The yard's machine and a phone, joined by one cable; both end with the context."""

    def __init__(self) -> None:
        """Keep nothing yet."""
        self._held: list[subprocess.Popen] = []
        self._rootless = os.geteuid() != 0

    def __enter__(self) -> "TwoMachines":
        """Make the namespaces and the cable, with addresses and a way out at both ends."""
        try:
            self.yard = self._hold([], rootless=self._rootless)
            self.phone = self._hold(self.inside(self.yard, net=False), rootless=False)
            self.ip(self.yard, f"link add v0 type veth peer name v1 netns {self.phone}")
            for machine, end, own, own_6, local_6, other in (
                (self.yard, "v0", YARD, YARD_6, "fe80::1", PHONE),
                (self.phone, "v1", PHONE, PHONE_6, "fe80::2", YARD),
            ):
                self.ip(machine, "link set lo up")
                self.ip(machine, f"addr add {own}/24 dev {end}")
                # Given, not found by itself: one that comes later would cut a browser's connections.
                self.ip(machine, f"link set {end} addrgenmode none")
                for address in (own_6, local_6):
                    self.ip(machine, f"-6 addr add {address}/64 dev {end} nodad")
                self.ip(machine, f"link set {end} up")
                self.ip(machine, f"route add default via {other}")
            for machine, end in ((self.yard, "v0"), (self.phone, "v1")):
                self._wait(machine, f"link show {end}", lambda said: "state UP" in said)
                settled = f"-6 addr show dev {end}"
                self._wait(machine, settled, lambda said: "fe80" in said and "tentative" not in said)
        except BaseException:
            self.__exit__()
            raise
        return self

    def __exit__(self, *_: object) -> None:
        """End both; with the last process of a namespace its end of the cable goes."""
        for process in reversed(self._held):
            process.kill()
            process.wait()
            process.stderr.close()

    def inside(self, machine: int, *, net: bool = True) -> list[str]:
        """Return what to put before a command so that it runs on a machine."""
        into = [f"--net=/proc/{machine}/ns/net"] if net else []
        if self._rootless:
            into += [f"--user=/proc/{machine}/ns/user", "--preserve-credentials"]
        return ["nsenter", *into] if into else []

    def ip(self, machine: int, arguments: str) -> str:
        """Change or show addresses, routes or links of a machine; return what `ip` says."""
        command = [*self.inside(machine), "ip", *arguments.split()]
        return subprocess.run(command, check=True, capture_output=True, text=True).stdout

    def _wait(self, machine: int, shown: str, is_so: Callable[[str], bool]) -> None:
        """Wait until what `ip` shows is so."""
        until = time.monotonic() + 10
        while not is_so(self.ip(machine, shown)):
            if time.monotonic() > until:
                raise RuntimeError(f"the cable does not come up: {self.ip(machine, shown)}")
            time.sleep(0.02)

    def _hold(self, before: list[str], *, rootless: bool) -> int:
        """Start a process that does nothing but keep a new namespace; return its id."""
        flags = ["--user", "--map-root-user", "--net"] if rootless else ["--net"]
        process = subprocess.Popen([*before, "unshare", *flags, "sleep", "infinity"], stderr=subprocess.PIPE)
        self._held.append(process)
        until = time.monotonic() + 10
        # The process is the tool at first, and in its namespace once it has become `sleep`.
        while Path(f"/proc/{process.pid}/comm").read_text() != "sleep\n":
            if process.poll() is not None or time.monotonic() > until:
                raise RuntimeError(process.stderr.read().decode().strip() or "nothing was said")
            time.sleep(0.01)
        return process.pid
