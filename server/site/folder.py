"""Puts a site into a folder so that at every moment whoever opens it gets one whole build.

A new site is made beside its folder and moved there. In an older site's place, the files of the new build
come first, the page and the worker that name them last; the build before stays until the next time.
"""

import json
import os
import shutil
import tempfile
from collections.abc import Mapping
from pathlib import Path

from server.refusals import CommandRefused

MARK = "swaptrail-site.json"
_APP = "swaptrail site"
# Manifest and page name the build's files, the worker checks the page: each comes after what it names.
_LAST = ("manifest.webmanifest", "index.html", "sw.js", MARK)


def put(files: Mapping[str, bytes], build: str, folder: Path) -> bool:
    """Writes a site; returns whether it took the place of an older one."""
    earlier = _earlier(folder)
    if earlier is None:
        _put_new({**files, MARK: _mark(build, None)}, folder)
        return False
    before = earlier["build"] if earlier["build"] != build else earlier.get("before")
    _put_over({**files, MARK: _mark(build, before)}, build, before, folder)
    return True


def _earlier(folder: Path) -> dict | None:
    """Returns what the site in `folder` says of itself, None where there is nothing yet."""
    if folder.is_symlink() or (folder.exists() and not folder.is_dir()):
        raise CommandRefused(f"--out is {folder}, which is no folder. Name a new folder, or an empty one.")
    if not folder.exists() or not any(folder.iterdir()):
        return None
    try:
        mark = json.loads((folder / MARK).read_text("utf-8"))
        if mark["app"] == _APP and isinstance(mark["build"], str):
            return dict(mark)
    except (OSError, ValueError, KeyError, TypeError):
        pass
    raise CommandRefused(
        f"--out is {folder}, which holds files that are no site of this command. Name a new folder, an empty "
        "one, or one that this command has made."
    )


def _mark(build: str, before: str | None) -> bytes:
    return json.dumps({"app": _APP, "v": 1, "build": build, "before": before}, indent=1).encode()


def _put_new(files: Mapping[str, bytes], folder: Path) -> None:
    if not folder.parent.is_dir():
        raise CommandRefused(f"--out is {folder}, but there is no folder {folder.parent}. Make it first.")
    made = Path(tempfile.mkdtemp(prefix=f".{folder.name}-", dir=folder.parent))
    try:
        _write(files, made)
        made.chmod(0o755)  # what is to be served may be read
        if folder.exists():
            folder.rmdir()
        made.rename(folder)
    finally:
        shutil.rmtree(made, ignore_errors=True)


def _put_over(files: Mapping[str, bytes], build: str, before: str | None, folder: Path) -> None:
    app = folder / "app"
    app.mkdir(exist_ok=True)
    own = f"app/{build}/"
    whole = all((folder / name).is_file() for name in files if name.startswith(own))
    made = Path(tempfile.mkdtemp(prefix=".new-", dir=folder))
    try:
        _write(files, made)
        if not whole:
            shutil.rmtree(app / build, ignore_errors=True)  # the rest of a copy that was cut off
            (made / own).rename(app / build)
        names = [name for name in files if not name.startswith(own)]
        for name in sorted(names, key=lambda name: (_LAST.index(name) + 1 if name in _LAST else 0, name)):
            os.replace(made / name, folder / name)
    finally:
        shutil.rmtree(made, ignore_errors=True)
    for old in app.iterdir():
        if old.name not in {build, before} and old.is_dir():
            shutil.rmtree(old)


def _write(files: Mapping[str, bytes], folder: Path) -> None:
    for name, body in files.items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(body)
