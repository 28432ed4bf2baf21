"""Puts a site into a folder so that at every moment whoever opens it gets one whole build.

A new site is made beside its folder and moved there. In an empty folder, and in an older site's place, the
files of the new build come first, the page and the worker that name them last; the build before stays until
the next time.
"""

import json
import os
import re
import shutil
from collections.abc import Mapping
from pathlib import Path

from server.core.messages import message
from server.refusals import CommandRefused
from server.storage.parts import beside
from server.storage.parts import scratch_folder
from server.storage.parts import take_away_left

MARK = "swaptrail-site.json"
_APP = "swaptrail site"
_BUILD = re.compile("[0-9a-f]{16}")
# Manifest and pages name the build's files, the worker checks them: each comes after what it names.
_LAST = ("plain.html", "manifest.webmanifest", "index.html", "sw.js", MARK)


def put(files: Mapping[str, bytes], build: str, folder: Path) -> bool:
    """Writes a site; returns whether it took the place of an older one."""
    if str(folder) == "-":  # by custom the standard output, which is no folder
        raise CommandRefused(message("serving-site-no-folder", folder=str(folder)))
    folder = folder.absolute()  # "." has no name of its own
    earlier = _earlier(folder)
    if earlier is None and not folder.exists():
        _put_new({**files, MARK: _mark(build, None)}, folder)
        return False
    if earlier is None:
        _mark_empty(build, folder)
    before = earlier["build"] if earlier and earlier["build"] != build else (earlier or {}).get("before")
    _put_over({**files, MARK: _mark(build, before)}, build, before, folder)
    return earlier is not None


def _earlier(folder: Path) -> dict | None:
    """Returns what the site in `folder` says of itself, None where there is nothing yet."""
    if folder.is_symlink() or (folder.exists() and not folder.is_dir()):
        raise CommandRefused(message("serving-site-no-folder", folder=str(folder)))
    take_away_left(beside(folder))
    if not folder.exists() or not any(folder.iterdir()):
        return None
    try:
        mark = json.loads((folder / MARK).read_text("utf-8"))
        if mark["app"] == _APP and isinstance(mark["build"], str):
            return dict(mark)
    except (OSError, ValueError, KeyError, TypeError):
        pass
    raise CommandRefused(message("serving-site-other-files", folder=str(folder)))


def _mark(build: str, before: str | None) -> bytes:
    return json.dumps({"app": _APP, "v": 1, "build": build, "before": before}, indent=1).encode()


def _put_new(files: Mapping[str, bytes], folder: Path) -> None:
    if not folder.parent.is_dir():
        raise CommandRefused(message("serving-site-no-parent", folder=str(folder), parent=str(folder.parent)))
    with scratch_folder(folder.parent) as made:
        _write(files, made)
        made.chmod(0o755)  # what is to be served may be read
        made.rename(folder)


def _mark_empty(build: str, folder: Path) -> None:
    """Begins in an empty folder, which stays: it may be a mount, or stand where nothing else can be made.

    The mark comes first, so that the next run takes up what is cut off here; nobody opens it before its page.
    """
    with scratch_folder(folder) as made:
        _write({MARK: _mark(build, None)}, made)
        (made / MARK).replace(folder / MARK)


def _put_over(files: Mapping[str, bytes], build: str, before: str | None, folder: Path) -> None:
    app = folder / "app"
    if app.is_symlink() or (app.exists() and not app.is_dir()):
        raise CommandRefused(message("serving-site-not-ours", folder=str(folder), app=str(app)))
    app.mkdir(exist_ok=True)
    own = f"app/{build}/"
    whole = all((folder / name).is_file() for name in files if name.startswith(own))
    with scratch_folder(folder) as made:
        _write(files, made)
        if not whole:
            shutil.rmtree(app / build, ignore_errors=True)  # the rest of a copy that was cut off
            (made / own).rename(app / build)
        names = [name for name in files if not name.startswith(own)]
        for name in sorted(names, key=lambda name: (_LAST.index(name) + 1 if name in _LAST else 0, name)):
            os.replace(made / name, folder / name)
    for old in app.iterdir():
        # Nothing but a build is taken away: what else lies there, somebody else has put there.
        is_build = _BUILD.fullmatch(old.name) and old.is_dir() and not old.is_symlink()
        if is_build and old.name not in {build, before}:
            shutil.rmtree(old)


def _write(files: Mapping[str, bytes], folder: Path) -> None:
    for name, body in files.items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(body)
