"""A Chromium that trusts one certificate authority and no other of the user's: a home folder of its own."""

import os
import shutil
import stat
import subprocess
from pathlib import Path

from tests.browser.pace import paced
from tests.browser_support import find_browser

#: For a phone that is to trust: a busy machine shows its certificate later than the trust page waits for it.
PATIENT = paced(("server/serving/lan/page/trust.js", "WAIT_MS", 10))


class NoCertutil(RuntimeError):
    """The tool that puts a certificate into a browser's store is missing; the text says what to do."""


def browser_of(home: Path, authority: Path | None = None, before: list[str] | tuple[str, ...] = ()) -> str:
    """Return a Chromium at home in `home` that trusts `authority` (PEM); `before` goes before its command."""
    store = home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    _certutil("-N", "--empty-password", store=store)
    if authority is not None:
        _certutil("-A", "-n", "yard", "-t", "C,,", "-i", str(authority), store=store)
    program = home / "browser"
    words = " ".join([*before, "env", f"HOME={home}", find_browser()])
    program.write_text(f'#!/bin/sh\nunset XDG_DATA_HOME XDG_CONFIG_HOME\nexec {words} "$@"\n')
    program.chmod(program.stat().st_mode | stat.S_IXUSR)
    return str(program)


def _certutil(*arguments: str, store: Path) -> None:
    subprocess.run([_tool(), *arguments, "-d", f"sql:{store}"], check=True, capture_output=True, timeout=60)


def _tool() -> str:
    found = shutil.which("certutil")
    if not found and os.geteuid() == 0 and shutil.which("apt-get"):
        for command in (["update"], ["install", "-y", "--no-install-recommends", "libnss3-tools"]):
            subprocess.run(["apt-get", *command], check=False, capture_output=True)
        found = shutil.which("certutil")
    if not found:
        raise NoCertutil("No `certutil` found. Install it (apt-get install libnss3-tools).")
    return found
