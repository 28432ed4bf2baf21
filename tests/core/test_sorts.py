"""Each sort of part there is goes from open to close in its own words, with the right verdict."""

import re

import pytest

from server.core.parts import cautions
from server.core.parts import sorts
from server.words.source import sources
from server.words.speech import Speech
from tests.core.driver import Driver
from tests.core.test_another_sort import Reader
from tests.core.test_another_sort import sentences

# What only a parking sensor has, is called or does.
OF_THE_FIRST_SORT = re.compile(
    r"\b(sensors?|bumper|parking aid|paint|ice|sounder|pole|walk-behind|ticks?|ticking|catches|self-test)\b",
    re.IGNORECASE,
)
SORTS = {
    "ignition-coil/row-4": ("cylinder-2", "cylinder-3"),
    "wheel-sender/wheels-4": ("wheel-rear-left", "wheel-rear-right"),
    "door-speaker/doors-4": ("door-front-left", "door-front-right"),
}


def begun(driver, layout):
    driver.open(layout=layout, part="")
    driver.tap()
    driver.tap()
    return driver


# What has to be read at these steps, by sort: where work can hurt.
CAUTIONS = {
    "ignition-coil/row-4": {"test": "High voltage: hands off", "pull": "Hot parts", "seat": "Key off"},
    "wheel-sender/wheels-4": {
        "test": "Two people",
        "pull": "On stands",
        "seat": "On stands",
        "walk": "Wheels may lock",
    },
    "door-speaker/doors-4": {"test": "Turn it down", "pull": "Leave airbag parts", "seat": "Sharp edges"},
}  # fmt: skip


class Careful(Reader):
    """A reader who also remembers what is said at each step."""

    def __init__(self, core):
        """Start with none read."""
        super().__init__(core)
        self.cautions = {}

    def view(self):
        """Return the view of the job, and remember what its step says, cautions first."""
        view = super().view()
        shorts = [each["short"] for each in view["cautions"]]
        self.cautions.setdefault(view["step"]["id"], []).append([*shorts, *sentences(view["step"])])
        return view


@pytest.mark.parametrize("layout", SORTS)
def test_a_fault_that_follows_goes_from_open_to_close(core, layout):
    bad, good = SORTS[layout]
    job = begun(Careful(core), layout)
    job.test(bad)
    job.photograph()
    job.exchange(**{bad: f"v1.{good}", good: f"v1.{bad}"})
    job.test(good)

    assert job.view()["reasoning"]["verdict"][0]["cause"] == f"unit:v1.{bad}"
    job.new_unit(good, part="")
    job.guided()
    while job.step()["form"] == "test":
        job.test()
    job.finish()

    assert job.view()["closed"]
    assert [said for said in job.everything() if OF_THE_FIRST_SORT.search(said)] == []
    for step, caution in CAUTIONS[layout].items():
        for said in job.cautions[step]:
            assert [words for words in said if caution in words], (step, said)


@pytest.mark.parametrize("sort", sorts.SORTS, ids=lambda sort: sort.identity)
def test_no_word_of_a_sort_is_left_unsaid(sort):
    """Ids are put together from a sort's name, so the look for words that nothing says skips them."""
    declared = set(re.findall(rf"{sort.identity}-[a-z0-9-]+", declaration(sort)))

    own = {each.id for each in sources("en") if each.area == sort.identity and "." not in each.id}
    assert own - {f"part-{sort.identity}"} == declared


def declaration(value) -> str:
    """Return all that a sort declares, as text."""
    if isinstance(value, dict):
        return " ".join(f"{key} {declaration(value[key])}" for key in value)
    if isinstance(value, list | tuple):
        return " ".join(declaration(each) for each in value)
    if callable(value):
        return declaration(value())
    return declaration(vars(value)) if hasattr(value, "__dict__") else str(value)


@pytest.mark.parametrize("language", ["en", "es"])
@pytest.mark.parametrize("layout", SORTS)
def test_it_is_told_in_each_language_without_a_gap(layout, language):
    speech = Speech(language)
    [each] = [known for known in sorts.all_layouts() if known["id"] == layout]
    said = [speech.text(words) for words in each["called"].values()]
    assert len(set(said)) == len(each["positions"])
    assert all(speech.text(words) for words in [each["name"], *each["complaints"]])


def test_what_nothing_shares_is_no_cause_anywhere(core):
    """Loudspeakers have no control unit and share no supply: neither is suspected, priced or repaired."""
    layout = "door-speaker/doors-4"
    bad, good = SORTS[layout]
    job = begun(Driver(core), layout)
    assert job.step()["expects"]["codes"] is False
    job.test(bad)

    kinds = {cause["cause"].partition(":")[0] for cause in core("reasoned", job=job.job)["causes"]}
    assert kinds == {"unit", "circuit", "blocked"}
    assert not {"feed", "control"} & {rate["id"] for rate in core("assumptions", job=job.job)["rates"]}
    repaired = [way["id"].partition(":")[0] for way in job.view()["ways"]["repair"]["choices"]]
    assert set(repaired) == {"circuit"}

    job.photograph()
    job.exchange(**{bad: f"v1.{good}", good: f"v1.{bad}"})
    job.test(bad)
    job.exchange(**{bad: "v1.door-rear-left", "door-rear-left": f"v1.{good}"})
    job.test(bad)
    while job.step()["id"] == "wiring.measure":
        job.choose(0)
    assert job.step()["id"] == "wiring.stuck"
    assert "output of the radio" in job.step()["text"]
    assert [each for each in job.step()["choices"] if "control" in each["words"]] == []


@pytest.mark.parametrize("layout", SORTS)
def test_a_test_that_nothing_proves_leads_on_to_what_may_be_amiss(core, layout):
    job = begun(Reader(core), layout)
    job.fact(
        "test_run", heard=False, faulted=[], silent=[], unplugged=[], codes=[], came_and_went=False, note=""
    )
    steps = []
    while job.step()["id"].startswith("sounder.") and job.step()["progress"]:
        steps.append(job.step()["title"])
        job.choose(0)

    assert len(set(steps)) == 3
    assert job.step()["id"] == "sounder.rest"
    repairs = [each for each in job.step()["choices"] if each["events"][0]["kind"] == "circuit_repaired"]
    assert len(repairs) == (0 if layout.startswith("door-speaker") else 1)
    assert [said for said in job.everything() if OF_THE_FIRST_SORT.search(said)] == []


def test_every_door_silent_is_never_put_down_to_something_shared(core):
    job = begun(Driver(core), "door-speaker/doors-4")
    job.test(*(each["id"] for each in job.view()["board"]["positions"]))
    assert not [m for m in job.view()["moves"] if "control" in m["title"] or "supply" in m["title"]]


@pytest.mark.parametrize("layout", ["ignition-coil/row-4", "wheel-sender/wheels-4"])
def test_what_may_not_hang_is_pushed_home_before_its_test(core, layout):
    bad, good = SORTS[layout]
    job = begun(Driver(core), layout)
    job.test(bad)
    job.photograph()
    job.fact("move_started", move="exchange", position="", reason="to see",
             fitted={bad: f"v1.{good}", good: f"v1.{bad}"})  # fmt: skip
    for _ in range(4):
        job.scan_wanted()

    assert (job.step()["id"], job.step()["form"]) == ("seat", "checklist")
    job.tap()
    assert job.step()["form"] == "test"
    assert core("job", job=job.job)["board"]["positions"][0]["x"] > 0


# Where a hand is among what is hot, sharp, under tension or on a jack, by sort.
HANDS_IN = {
    "ignition-coil": {"voltage": ("test", "measure"), "hot": ("pull", "fit", "clean", "measure")},
    "wheel-sender": {
        "stand": ("pull", "fit", "seat", "clean", "measure"),
        "brakes": ("pull", "fit", "clean", "measure"),
        "ground": ("pull", "measure"),
    },
    "door-speaker": {
        "airbag": ("pull", "fit", "seat", "measure"),
        "window": ("pull", "fit", "seat", "measure"),
    },
}  # fmt: skip


@pytest.mark.parametrize("identity", HANDS_IN)
def test_what_can_hurt_a_hand_is_said_at_each_step_that_puts_one_there(identity):
    sort = sorts.by_identity(identity)
    lacking = [
        (step, caution)
        for caution, steps in HANDS_IN[identity].items()
        for step in steps
        if caution not in [each["id"] for each in cautions.for_step(sort, step, {})]
    ]
    assert lacking == []
