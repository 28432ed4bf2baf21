"""Another sort of part is declared in one place: a whole job on a made-up one, in its own words alone."""

import json
import re

import pytest

from server.core.parts import sorts
from server.core.parts.layouts import check_positions
from tests.core.driver import Driver
from tests.core.made_up_sort import INJECTOR
from tests.hosts import Answer
from tests.hosts import Core
from tests.hosts import CoreError
from tests.said import english

# What only a parking sensor has or is called. Ids keep their names in every sort: keys, kinds, marks.
OF_THE_FIRST_SORT = re.compile(
    r"\b(sensors?|bumper|parking|aim|paint|ice|dirt|sounder|pole|walk-behind|exhaust|airbag|catches)\b",
    re.IGNORECASE,
)
IDS = {"id", "icon", "kind", "found", "form", "edge", "group", "rule", "op"}


def sentences(value, key=""):
    """Return every text in an answer that people read: those with a blank, but for ids."""
    if isinstance(value, dict):
        return [text for name in value for text in sentences(value[name], name)]
    if isinstance(value, list):
        return [text for each in value for text in sentences(each, key)]
    return [value] if isinstance(value, str) and " " in value and key not in IDS else []


@pytest.fixture
def core(monkeypatch):
    """One host, for only here the made-up sort is known."""
    monkeypatch.setattr(sorts, "SORTS", [*sorts.SORTS, INJECTOR])
    return Alone()


class Alone(Core):
    """A core whose answers no other test takes for those of the core as it is."""

    def _answer(self, asked):
        return Answer(asked.op, self._host.call(asked.text))


@pytest.fixture
def job(core):
    """A driver that takes down every sentence that the job's screens show on the way."""
    return Reader(core)


class Reader(Driver):
    """A driver that reads what is on the screen whenever it looks at the job."""

    def __init__(self, core):
        """Start with nothing read."""
        super().__init__(core)
        self.read = []

    def view(self):
        """Return the view of the job, and remember its sentences."""
        view = super().view()
        self.read += sentences(view)
        return view

    def everything(self):
        """Return all that was read, and what all other questions about the job answer."""
        said = list(self.read)
        for op in ("job", "report", "assumptions", "evidence"):
            said += sentences(self.core(op, job=self.job))
        for unit in self.core("state")["units"]:
            said += sentences(self.core("unit", unit=unit))
            said += sentences(self.core("counter", unit=unit, now=1_750_009_999_999))
        return said


def begun(job):
    """Open a job on the rail; what was seen from outside is wet fuel."""
    job.open(layout="injector/row-4")
    job.tap()
    job.fact("lamp_checked", when=job.step()["expects"]["lamps"][0]["when"], result="as_it_should", note="")
    job.fact("looked", positions=[{"position": "rail-1", "found": "dirt"}], note="")
    return job


def test_its_layouts_stand_beside_those_of_the_first_sort(core):
    listed = {each["id"]: each["name"] for each in core("layouts")}
    assert listed["rear-4"] == "Rear, 4 sensors"
    assert listed["injector/row-4"] == "One bank, 4 injectors"


def test_a_whole_job_speaks_of_it_alone(job):
    begun(job)
    assert job.step()["text"] == english(INJECTOR.self_test.start)
    job.test("rail-1", heard=False)
    job.test("rail-1")
    job.photograph()
    job.exchange(rail_1="v1.rail-2", rail_2="v1.rail-1")
    job.test("rail-2", codes=[{"position": "rail-2", "code": "P0201", "failure_type": "13"}])
    job.new_unit("rail-2")
    job.guided()
    while job.step()["form"] == "test":
        job.test()
    job.fact("walk_checked", positions=[f"rail-{n}" for n in (1, 2, 3, 4)], missed=["rail-3"])
    assert job.step()["text"].startswith("Cylinder 3 ran rough.")
    job.finish()

    said = job.everything()
    assert [text for text in said if OF_THE_FIRST_SORT.search(text)] == []
    assert "One of the fuel injectors was bad and has been taken out." in said
    assert "Drive check: cylinder 3 ran rough." in said
    assert any("deposits or a stuck needle" in text for text in said)


def test_cleaning_wiring_and_mix_ups_speak_of_it_alone(job):
    begun(job).test("rail-1")
    job.fact("move_started", move="clean", fitted={}, position="rail-1", positions=["rail-1"], reason="")
    assert job.step()["title"] == "Clean cylinder 1"
    assert job.step()["text"].startswith("Flush it with cleaner")
    job.tap()
    job.test("rail-1")
    job.fact("move_started", move="meter", fitted={}, position="rail-1", reason="to see")
    assert job.step()["title"] == "Cylinder 1: measure the coil"
    job.choose(0)
    job.tap()
    job.photograph()
    job.fact("move_started", move="exchange", position="", reason="to see",
             fitted={"rail-1": "v1.rail-2", "rail-2": "v1.rail-1"})  # fmt: skip
    for _ in range(2):
        job.scan_wanted()
    job.fact("units_mixed", units=["v1.rail-1", "v1.rail-2"], note="")

    assert job.step()["title"] == "2 injectors got mixed up"
    assert [text for text in job.everything() if OF_THE_FIRST_SORT.search(text)] == []


def test_what_is_refused_is_said_in_its_words(job):
    begun(job).test("rail-1")
    job.photograph()
    job.fact("unit_pulled", unit="v1.rail-1", position="rail-1", how="tapped")
    job.fact("unit_labelled", unit="v1.rail-1", code=job.codes[0], how="scanned")
    refusals = [
        job.check({"kind": kind, "data": data})
        for kind, data in (
            ("unit_labelled", {"unit": "v1.rail-1", "code": job.codes[0], "how": "scanned"}),
            ("unit_labelled", {"unit": "v1.rail-2", "code": job.codes[0], "how": "scanned"}),
            ("unit_pulled", {"unit": "v1.rail-1", "position": "rail-1", "how": "scanned"}),
            ("unit_fitted", {"unit": "v1.rail-2", "position": "rail-1", "how": "scanned", "override": ""}),
            ("unit_seen", {"unit": "v1.rail-1", "place": "out", "position": "", "how": "tapped"}),
            ("units_mixed", {"units": ["v1.rail-1"], "note": ""}),
            ("money_set", {"labour_per_hour": 10**12, "part_price": 0, "wrong_purchase": 0}),
            ("job_closed", {"note": ""}),
        )
    ]
    assert None not in refusals
    assert [text for text in sentences(refusals) if OF_THE_FIRST_SORT.search(text)] == []


def test_its_rates_and_minutes_are_those_the_reasoning_starts_from(job):
    begun(job).test("rail-1")
    rates = {rate["id"]: rate for rate in job.core("assumptions", job=job.job)["rates"]}
    assert (rates["unit"]["default_words"], rates["unit"]["changed"]) == ("10 %", False)
    assert rates["circuit"]["default_words"] == "0.5 %"
    # To clean takes no pulling and no fitting, to exchange four of each twice: the made-up minutes count.
    minutes = {move["move"]: int(move["minutes_words"].split()[0]) for move in job.view()["moves"]}
    assert minutes["exchange"] - minutes["clean"] >= 16


def test_a_spare_of_one_sort_is_no_candidate_on_a_job_of_another(core):
    first = Driver(core, job="j000000000002").begin(part="")
    first.fact("unit_pulled", unit="v1.rear-left-outer", position="rear-left-outer", how="tapped")
    first.fact("unit_labelled", unit="v1.rear-left-outer", code=first.codes[0], how="scanned")
    first.fact("unit_moved", unit="v1.rear-left-outer", place="stock", how="scanned", note="")
    job = Driver(core, device="d0000000000000002")
    job.open(layout="injector/row-4", part="")
    job.tap()
    job.tap()
    job.test("rail-1")

    fitted = [unit for move in job.view()["moves"] for draft in move["events"]
              for unit in draft["data"]["fitted"].values()]  # fmt: skip
    assert fitted
    assert all(unit.startswith("v1.rail-") for unit in fitted)


def test_the_reasoning_alone_takes_the_sort_by_its_id_and_refuses_any_other(core):
    case = {"positions": [{"id": "a"}], "units": [{"id": "A"}],
            "tests": [{"fitted": {"a": "A"}, "faulted": ["a"], "heard": False}]}  # fmt: skip
    said = json.dumps(core("reason", case={**case, "sort": "injector"})["ignored"])
    assert "The speed was not seen to fall" in said
    for wrong in ("pump", None, 3, ["injector"]):
        with pytest.raises(CoreError) as refused:
            core("reason", case={**case, "sort": wrong})
        known = ", ".join(sort.identity for sort in sorts.SORTS)
        assert (refused.value.field, refused.value.wanted) == ("sort", f"one of {known}")


def test_a_sort_that_only_a_newer_version_knows_opens_in_the_words_of_the_first(core):
    """An app of today gets the job of a later sort from another phone."""
    assert sorts.by_layout("pump/one").identity == "parking-sensor"
    assert sorts.by_layout("injector").identity == "parking-sensor"
    assert sorts.by_layout("").identity == "parking-sensor"
    assert sorts.by_layout("injector/row-4") is INJECTOR


@pytest.mark.parametrize("sort", [*sorts.SORTS, INJECTOR], ids=lambda sort: sort.identity)
def test_a_declaration_holds_together(sort):
    layouts = sort.layouts()
    assert layouts
    for each in layouts:
        check_positions(each["positions"])
    assert "/" not in sort.identity
    assert {identity for step in sort.at_step.values() for identity in step} <= set(sort.cautions)
    assert sort.at_step["cautions"]
    assert sort.caution_in_report in sort.cautions
    assert {lamp.when for lamp in sort.lamps} <= {"key_on", "reverse"}
    ids = [check["id"] for check in sort.circuit_checks]
    assert len(ids) == len(set(ids)) > 0
    assert sort.circuit_check(ids[0])["id"] == ids[0]
    assert sort.circuit_check("no such check") is None


def test_no_two_sorts_share_a_position():
    """A vehicle keeps what sits where by the position's id alone."""
    seen = {}
    for sort in [*sorts.SORTS, INJECTOR]:
        for each in sort.layouts():
            for position in each["positions"]:
                assert seen.setdefault(position["id"], sort.identity) == sort.identity
