"""The package as people install it: the wheel, built as pip does, and unpacked into a folder of its own."""

import fcntl
import subprocess
import sys
import zipfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def build_wheel(out: Path) -> Path:
    """Return the wheel, built into `out` without a second environment for the build."""
    subprocess.run(
        [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(out)],
        cwd=ROOT,
        check=True,
        capture_output=True,
        timeout=300,
    )
    (file,) = out.glob("*.whl")
    return file


def shared_wheel(folder: Path) -> Path:
    """Return the wheel in `folder`; whichever worker comes first builds it, the others wait for it."""
    folder.mkdir(exist_ok=True)
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        built = list(folder.glob("*.whl"))
        return built[0] if built else build_wheel(folder)


def unpack(wheel: Path, folder: Path) -> Path:
    """Return a folder with the wheel's files, to be put on the path; its dependencies are not in it."""
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder)
    return folder
