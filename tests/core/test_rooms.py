"""The core is built in rooms: imports run down only, and the `__init__` of a room says what lives there."""

import ast
from pathlib import Path

import pytest

from tests.imports import circles
from tests.imports import faults
from tests.imports import import_graph

ROOT = Path(__file__).resolve().parents[2]
CORE = ROOT / "server" / "core"

# From the top down. An import runs to a lower floor, or inside a room.
FLOORS = (
    ("host",),
    ("operations",),
    ("views",),
    ("guide",),
    ("record", "rules", "returns"),
    ("evidence",),
    ("words",),
    ("plan",),
    ("infer",),
    ("facts",),
    ("state", "printing"),
    ("codes", "parts"),
    ("meter", "harness"),
    ("log",),
    ("errors",),
    ("messages",),
)
# Packages that are called as a whole; the `__init__` of each other room only describes it.
CALLED = ("rules", "returns")


@pytest.fixture(scope="module")
def graph():
    return import_graph("server.core", ROOT)


def test_imports_between_the_rooms_run_down(graph):
    assert faults(graph, "server.core", FLOORS) == []


def test_no_modules_import_one_another_in_a_circle(graph):
    assert circles(graph) == []


@pytest.mark.parametrize("room", sorted(folder.name for folder in CORE.iterdir() if any(folder.glob("*.py"))))
def test_the_init_of_a_room_says_in_a_few_lines_what_lives_there_and_holds_no_code(room):
    tree = ast.parse((CORE / room / "__init__.py").read_text("utf-8"))
    text = ast.get_docstring(tree)
    assert text
    assert 3 <= len(text.splitlines()) <= 16
    assert room in CALLED or len(tree.body) == 1
