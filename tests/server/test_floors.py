"""Imports between the rooms of the server run one way: down. The core has floors of its own."""

from pathlib import Path

import pytest

from tests.imports import circles
from tests.imports import faults
from tests.imports import import_graph

ROOT = Path(__file__).resolve().parents[2]

# From the top down. An import runs to a lower floor, or inside a room.
FLOORS = (
    ("commands",),  # what a user types
    ("serving.lan",),
    ("serving",),  # runs the app
    ("app",),  # puts all routes together
    (
        "labelling",
        "site",
        "building",
        "register",
        "slips",
    ),  # register: routes and a thread over the core's answers
    ("keeping",),
    ("keeping.verify",),
    ("keeping.record", "keeping.manifest"),
    ("lessons",),  # what the closed jobs teach
    ("keeping.record.makers",),  # whose a seal is: of records, and of other yards' figures
    ("queries",),  # the core's answers
    ("news",),  # what is new to a phone that asks
    ("log",),
    ("labelling.store",),  # the labels there are, told to phones with a sync
    ("labelling.states",),
    ("photos",),
    ("phones",),
    ("news.board",),  # who waits for news, told by rooms above
    ("serving.connections",),
    ("web",),  # HTTP as all routes share it
    ("folded",),
    ("storage",),
    ("core", "refusals", "clock", "beside"),  # the domain; what everything may use
    ("words",),  # what people read
    ("deploy",),  # files alone
)


@pytest.fixture(scope="module")
def graph():
    return import_graph("server", ROOT)


def test_imports_between_the_rooms_run_down(graph):
    assert faults(graph, "server", FLOORS) == []


def test_no_modules_import_one_another_in_a_circle(graph):
    assert circles(graph) == []


def test_the_rooms_are_really_read(graph):
    assert len(graph) > 100
    assert "server.core.host" in graph["server.queries.projection"]
    assert "server.web.help_pages" in graph["server.web.shell"]  # inside a function
    assert "server.storage.folder" in graph["server.storage"]  # relative


def write(root, **modules):
    for name, text in modules.items():
        path = root.joinpath("house", *name.split("__")).with_suffix(".py")
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return import_graph("house", root)


def test_an_import_that_runs_up_or_sideways_is_named(tmp_path):
    graph = write(
        tmp_path,
        attic__a="from ..cellar import c\nfrom house import loft",
        cellar__c="def late():\n    import house.attic.a",
        loft="",
    )

    assert faults(graph, "house", (("attic", "loft"), ("cellar",))) == [
        "house.attic.a imports house.loft, which does not stand below it",
        "house.cellar.c imports house.attic.a, which does not stand below it",
    ]
    assert circles(graph) == [["house.attic.a", "house.cellar.c"]]


def test_a_module_without_a_floor_and_a_floor_without_a_module_are_named(tmp_path):
    graph = write(tmp_path, attic__a="", attic__b__c="from house.attic.a import x")

    assert faults(graph, "house", (("attic.b",), ("hall",))) == [
        "house.attic.a stands on no floor",
        "hall is on a floor, and no module is in it",
    ]
    assert faults(graph, "house", (("attic.b",), ("attic",))) == []
