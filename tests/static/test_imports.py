"""Imports between the folders of the phone app run one way: down. `static/README.md` shows the same list."""

import posixpath
import re
from pathlib import Path

import pytest

from tests.imports import circles
from tests.imports import faults

STATIC = Path(__file__).resolve().parents[2] / "static"

# From the top down, see tests/imports.py. `import(...)` in code or in a comment is not counted: the first
# reads a screen later, the second names a type and nothing of it reaches a phone.
FLOORS = (
    ("main",),  # puts all parts together
    ("begin",),  # what starts before the rest is read
    ("screens.app",),
    ("screens.pages", "screens.rare-pages"),
    ("screens.you",),
    ("screens.record",),
    (
        "screens.alone",
        "screens.counter",
        "screens.help",
        "screens.job",
        "screens.labels",
        "screens.paper",
    ),
    ("screens.unit", "screens.lessons"),
    ("screens.scan", "screens.phone"),
    ("screens.frame",),  # what all screens share
    ("alone", "record"),
    ("photos",),
    ("sync", "scan", "hear"),
    ("log",),
    ("core", "shapes"),
    ("phone",),  # what the browser gives
    ("words",),  # all that a person reads
    ("place",),
    ("sw", "sw-retire"),  # the service worker: scripts of their own
    ("plain",),  # works where the others do not, and imports nothing
)

_STATEMENT = re.compile(
    r"""^(?:import|export)\s+(?:[\w*{},\s]+?\sfrom\s+)?['"](\.[^'"]+\.js)['"]""", re.MULTILINE
)


def module_name(path: str) -> str:
    """Return a module's dotted name, `static.log.store` for `log/store.js`."""
    return f"static.{path.removesuffix('.js').replace('/', '.')}"


@pytest.fixture(scope="module")
def graph():
    files = {
        file.relative_to(STATIC).as_posix(): file.read_text("utf-8")
        for file in STATIC.rglob("*.js")
        if not {"vendor", "node_modules"} & set(file.parts)
    }
    imported = {}
    for path, text in files.items():
        reached = {
            posixpath.normpath(posixpath.join(posixpath.dirname(path), target))
            for target in _STATEMENT.findall(text)
        }
        ours = {target for target in reached if not target.startswith("vendor/")}
        assert ours <= files.keys(), path
        imported[module_name(path)] = {module_name(target) for target in ours}
    return imported


def test_imports_between_the_folders_run_down(graph):
    assert faults(graph, "static", FLOORS) == []


def test_no_modules_import_one_another_in_a_circle(graph):
    assert circles(graph) == []


def test_the_modules_are_really_read(graph):
    assert len(graph) > 180
    assert "static.begin" in graph["static.main"]
    assert "static.phone.install-prompt" in graph["static.begin"]  # for its effect alone
    assert "static.screens.help.help-page" in graph["static.screens.rare-pages"]  # export from


def test_each_folder_with_modules_says_what_lives_there():
    folders = {file.parent for file in STATIC.rglob("*.js")}
    without = [
        folder.relative_to(STATIC).as_posix()
        for folder in sorted(folders)
        if not {"vendor", "node_modules"} & set(folder.parts) and not (folder / "README.md").is_file()
    ]
    assert without == ["scan/decoding"]  # told in scan/README.md
