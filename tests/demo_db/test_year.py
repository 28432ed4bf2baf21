"""The demo's past year: jobs of our own, through the real core, enough to fill the page of lessons."""

import json
from contextlib import closing

import pytest

import demo_db
from demo_db import stories
from demo_db import year
from server.core.host import Host
from server.lessons.figures import figures
from server.lessons.page import page
from server.log import events
from server.storage import DataFolder

NOW = stories.START + 30 * 86_400_000


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    root = tmp_path_factory.mktemp("year")
    demo_db.build(root, "http://localhost:8765", with_year=True)
    return DataFolder(root)


def test_the_year_fills_every_section_of_the_page(folder):
    with closing(folder.open()) as db:
        found = figures(db, NOW)

    told = page(found, "all")

    assert found["closed"] > year.JOBS
    assert len(found["proven"]) > year.JOBS / 2
    assert found["comebacks"]
    assert {
        "reliability",
        "comebacks",
        "causes",
        "rates",
        "minutes",
        "reach",
        "models",
        "parts",
        "returns",
        "left-out",
    } == {each["id"] for each in told["sections"]}
    assert {kind for kind, _, _ in found["causes"]} >= {"unit", "circuit", "blocked"}


def test_the_models_and_the_decisions_of_the_year_are_told_apart(folder):
    with closing(folder.open()) as db:
        found = figures(db, NOW)

    often = [each["name"].split()[1] for each in found["models"] if each["count"] >= 10]
    assert sorted(often) == ["estate", "hatchback", "van"]
    assert {decision for decision, *_ in found["returns"]} == {"accept", "hold", "refuse"}


def test_nothing_of_the_year_contradicts_and_the_demo_goes_on_as_ever(folder):
    with closing(folder.open()) as db:
        entries = events.after(db, 0, 10_000, 2**30)
    host = Host()

    def ask(op, **arguments):
        return json.loads(host.call(json.dumps({"op": op, **arguments})))["value"]

    ask("reset", events=entries)

    assert ask("conflicts") == {"conflicts": [], "not_understood": []}
    still_open = {each["id"] for each in ask("jobs") if not each["closed"]}
    assert {stories.STAYS, stories.TWO_FAULTS, stories.FOLLOWS} <= still_open
    assert len(still_open) < year.JOBS / 4
