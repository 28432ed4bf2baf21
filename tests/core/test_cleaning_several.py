"""Several positions are cleaned one after the other, and one self-test serves for all of them."""

from server.core.guide.moves import title_of
from server.core.state.job import Job
from tests.core.driver import Driver
from tests.core.scenarios import INNER
from tests.core.scenarios import OUTER
from tests.core.scenarios import first_test
from tests.said import english


def begun(core):
    """Start cleaning both suspects, as the drafts of such a move would."""
    job = Driver(core)
    first_test(job, OUTER, INNER)
    job.fact("move_started", move="clean", fitted={}, position=INNER, positions=[INNER, OUTER], reason="dirt")
    return job


def test_each_position_is_guided_and_recorded_on_its_own(core):
    job = begun(core)

    first = job.step()
    job.tap()
    second = job.step()
    job.tap()

    assert [first["title"], second["title"]] == ["Clean right inner", "Clean right outer"]
    assert first["text"].endswith("Then go on to right outer.")
    assert second["text"].endswith("Then run the self-test again.")
    assert [s["progress"]["now"] for s in (first, second)] == [1, 2]
    assert first["progress"]["total"] == 2
    assert [s["action"]["events"][0]["data"]["position"] for s in (first, second)] == [INNER, OUTER]
    assert job.step()["form"] == "test"


def test_the_test_afterwards_speaks_of_both(core):
    job = begun(core)
    job.guided()
    job.test()

    assert job.view()["moves"][0]["move"] != "clean"
    assert "right inner and right outer" in str(job.view())


def test_the_trail_names_both(core):
    assert "Begun: clean at right inner and right outer." in str(begun(core).view())


def test_a_cleaning_of_one_still_starts_as_before(core):
    job = Driver(core)
    first_test(job, OUTER)
    job.fact("move_started", move="clean", fitted={}, position=OUTER, reason="dirt")

    step = job.step()
    assert step["title"] == "Clean right outer"
    assert step["progress"] is None
    job.tap()
    assert job.step()["form"] == "test"


def test_positions_that_are_no_names_are_refused(core):
    job = Driver(core)
    first_test(job, OUTER)
    data = {"move": "clean", "fitted": {}, "position": OUTER, "positions": [7], "reason": "dirt"}

    assert "positions" in str(job.check({"kind": "move_started", "data": data}))


def test_the_title_lists_them():
    job = Job(
        None,
        {
            "id": "j",
            "layout": "rear-4",
            "positions": [{"id": "a", "name": "left outer"}, {"id": "b", "name": "right inner"}],
        },
    )
    both = {"move": "clean", "positions": ["a", "b"]}

    assert english(title_of(job, both)) == "Clean left outer and right inner, then test again"
    assert english(title_of(job, {"move": "clean", "position": "a"})) == "Clean left outer and test again"
