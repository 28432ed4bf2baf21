"""A conclusion has to survive its assumptions: the variations, the rule, `holds`, `breaks`, `certain`."""

import functools
import random

import pytest

from server.core.evidence import identity_assignments
from server.core.infer import belief
from server.core.infer.case_form import read
from server.core.infer.model import Model
from server.core.infer.variations import Variations
from server.core.infer.variations import explanation
from tests.core.brute_force import Enumeration
from tests.core.random_cases import random_case
from tests.hosts import CoreError

CLOSE = 1e-9
CLASSES = ("unit", "circuit", "blocked", "feed", "control")
NAMED = (*CLASSES, "miss", "false_alarm")
NAMES = [f"{what} {how}" for what in NAMED for how in ("x3", "/3")]
# Up to four positions: every subset of all causes is weighed fifteen times and more.
SEEDS = [seed for seed in range(80) if len(random_case(random.Random(seed))["positions"]) < 5]
FOUR = ["a", "b", "c", "d"]
FITTED = {place: place.upper() for place in FOUR}
EXCHANGED = FITTED | {"a": "B", "b": "A"}


def case(*tests, **more):
    return {
        "positions": [{"id": place, "group": "rear"} for place in FOUR],
        "units": [{"id": place.upper()} for place in FOUR],
        "tests": [{"fitted": fitted, "faulted": faulted} for fitted, faulted in tests],
        **more,
    }


def times(chance, factor):
    """A chance whose odds are `factor` times as high."""
    return chance * factor / (chance * factor + 1 - chance)


def kind_of(name):
    return name.partition(":")[0].partition("#")[0]


class Said:
    """What the enumeration says of a case: as it stands, and with something else assumed."""

    def __init__(self, exact):
        self.total = exact.total
        self.explanations = exact.explanations()
        self.clear = exact.clear()
        self.causes = {}
        for names, chance in self.explanations.items():
            for name in names:
                self.causes[name] = self.causes.get(name, 0) + chance


class Assumed:
    """The enumeration of a case, one variation at a time made in its rates and priors."""

    def __init__(self, case_):
        self.exact = Enumeration(case_)
        self.rates = dict(self.exact.rates)
        self.prior = dict(self.exact.prior)
        self.now = Said(self.exact)
        self.varied = [self.at(name.partition(" ")[0], 3 if name[-2] == "x" else 1 / 3) for name in NAMES]

    def at(self, what, factor):
        self.exact.rates = dict(self.rates)
        self.exact.prior = dict(self.prior)
        if what == "miss":
            self.exact.rates["shows"] = 1 - times(1 - self.rates["shows"], factor)
        elif what == "false_alarm":
            self.exact.rates["false_alarm"] = times(self.rates["false_alarm"], factor)
        else:
            for cause in self.prior:
                if kind_of(cause) == what:
                    self.exact.prior[cause] = times(self.prior[cause], factor)
        self.exact.weigh()
        return Said(self.exact)


@functools.cache
def assumed(seed):
    return random_case(random.Random(seed)), Assumed(random_case(random.Random(seed)))


@pytest.mark.parametrize("seed", SEEDS)
def test_every_explanation_under_every_variation_is_that_of_the_enumeration(seed, monkeypatch):
    made, exact = assumed(seed)
    for largest in (belief.LARGEST_TABLE, 0):  # and once more with everything summed out cause by cause
        monkeypatch.setattr(belief, "LARGEST_TABLE", largest)
        source = Variations(belief.Belief(Model(read(made))))
        for name, said in zip(NAMES, exact.varied, strict=True):
            factor = 3.0 if name[-2] == "x" else 1 / 3.0
            what = name.partition(" ")[0]
            found = {each: source.chance(what, factor, explanation(each)) for each in said.explanations}
            assert found == pytest.approx(said.explanations, abs=CLOSE)


@pytest.mark.parametrize("seed", SEEDS)
def test_the_rule_is_that_of_the_enumeration(core, seed):
    made, exact = assumed(seed)
    confidence = made["confidence"]

    answer = core("reason", case=made)

    best = tuple(answer["explanations"][0]["causes"])
    chances = [said.explanations[best] for said in exact.varied]
    check_held(answer["holds"], chances)
    reaches = exact.now.explanations[best] >= confidence and min(chances) >= 1 - 2 * (1 - confidence)
    assert (answer["verdict"] is not None) == (reaches and best != ())
    check_held(answer["clear_holds"], [said.clear for said in exact.varied])
    check_certain(answer, exact, confidence)
    if answer["verdict"]:
        check_breaks(answer["verdict"], exact, confidence)


def check_held(held, chances):
    least = min(chances)
    assert held["lowest"] / 1e9 == pytest.approx(least, abs=CLOSE)
    if held["when"] is None:
        assert least == pytest.approx(1, abs=CLOSE)
    else:
        # The one that is named is as low as any, up to the last figure.
        assert chances[NAMES.index(held["when"])] == pytest.approx(least, abs=CLOSE)


def check_certain(answer, exact, confidence):
    wanted = []
    for cause in exact.exact.suspects():
        chances = [said.causes[cause] for said in exact.varied]
        sure = exact.now.causes[cause] >= confidence and min(chances) >= (
            confidence if cause.startswith("unit:") else 1 - 2 * (1 - confidence)
        )
        if sure and cause in exact.exact.live():
            wanted.append(cause)
    assert sorted(entry["cause"] for entry in answer["certain"]) == wanted
    for entry in answer["certain"]:
        cause = entry["cause"]
        assert entry["probability"] / 1e9 == pytest.approx(exact.now.causes[cause], abs=CLOSE)
        check_held(entry["holds"], [said.causes[cause] for said in exact.varied])


def check_breaks(verdict, exact, confidence):
    """At the factor it is below the confidence, a tenth less it is not; a class left out never falls."""
    causes = tuple(verdict["causes"])
    for what in CLASSES:
        factor = verdict["breaks_x10"].get(what)
        if factor is None:
            assert exact.at(what, 100).explanations[causes] >= confidence - CLOSE
        else:
            assert exact.at(what, factor / 10).explanations[causes] < confidence + CLOSE
            assert exact.at(what, (factor - 1) / 10).explanations[causes] >= confidence - CLOSE


def test_two_suspects_exchanged_with_each_other_that_fault_again_are_no_verdict(core):
    """Two bad circuits look the same: only 'wiring fails more rarely' would decide."""
    answer = core("reason", case=case((FITTED, ["a", "b"]), (EXCHANGED, ["a", "b"])))
    best = answer["explanations"][0]
    assert best["causes"] == ["unit:A", "unit:B"]
    assert round(best["probability"] / 1e7, 1) == 95.5
    assert round(answer["holds"]["lowest"] / 1e7, 1) == 86.3
    assert answer["holds"]["when"] == "circuit x3"
    assert answer["verdict"] is None
    assert answer["certain"] == []


def test_one_exchange_that_follows_stands(core):
    answer = core("reason", case=case((FITTED, ["a"]), (EXCHANGED, ["b"])))
    assert answer["verdict"]["causes"] == ["unit:A"]
    assert round(answer["holds"]["lowest"] / 1e7, 1) == 96.7
    assert answer["verdict"]["breaks_x10"]["circuit"] > 100
    assert [entry["cause"] for entry in answer["certain"]] == ["unit:A"]


def test_one_exchange_that_stays_stands(core):
    answer = core("reason", case=case((FITTED, ["a"]), (EXCHANGED, ["a"])))
    assert answer["verdict"]["causes"] == ["circuit:a"]
    assert round(answer["holds"]["lowest"] / 1e7, 1) == 93.4


def test_a_doubt_of_one_switches_the_rule_off(core):
    answer = core("reason", case=case((FITTED, ["a", "b"]), (EXCHANGED, ["a", "b"]), doubt=1))
    assert answer["verdict"]["causes"] == ["unit:A", "unit:B"]
    assert answer["holds"] == {"lowest": answer["verdict"]["probability"], "when": None}


@pytest.mark.parametrize(
    ("doubt", "when"),
    [(2, "circuit x2"), (2.50, "circuit x2.5"), (10, "circuit x10"), (1.125, "circuit x1.125")],
)
def test_the_variation_is_named_with_the_doubt_as_written(core, doubt, when):
    answer = core("reason", case=case((FITTED, ["a", "b"]), (EXCHANGED, ["a", "b"]), doubt=doubt))
    assert answer["holds"]["when"] == when


def test_a_doubt_may_be_another_for_each_class(core):
    tests = (FITTED, ["a", "b"]), (EXCHANGED, ["a", "b"])
    whole = core("reason", case=case(*tests, doubt=2))
    each = core("reason", case=case(*tests, doubt=dict.fromkeys(NAMED, 2)))
    assert each == whole
    calm = core("reason", case=case(*tests, doubt=dict.fromkeys(NAMED, 1)))
    assert calm == core("reason", case=case(*tests, doubt=1))
    assert core("reason", case=case(*tests, doubt={})) == core("reason", case=case(*tests))
    only = core("reason", case=case(*tests, doubt={**dict.fromkeys(NAMED, 1), "circuit": 4}))
    assert only["holds"]["when"] in {"circuit x4", "circuit /4"}


@pytest.mark.parametrize("doubt", [{"luck": 2}, {"unit": 0.5}, {"unit": "2"}])
def test_a_doubt_of_a_class_that_is_none_is_refused(core, doubt):
    with pytest.raises(CoreError, match="doubt"):
        core("reason", case=case((FITTED, ["a"]), doubt=doubt))


@pytest.mark.parametrize("doubt", [0, 0.99, 101, "3", None, True])
def test_another_doubt_is_refused(core, doubt):
    with pytest.raises(CoreError, match="doubt"):
        core("reason", case=case((FITTED, ["a"]), doubt=doubt))


def test_without_a_suspect_nothing_leans_on_a_rate(core):
    answer = core("reason", case=case((FITTED, [])))
    assert answer["holds"] == {"lowest": 1000000000, "when": None}
    assert answer["clear_holds"] == {"lowest": 1000000000, "when": None}


def test_rates_of_nothing_and_of_certainty_stay(core):
    """With `shows` 1 a miss stays impossible, with no false alarm there is none; a prior of 1 stays."""
    sure = case((FITTED, ["a"]), rates={"shows": 1, "false_alarm": 0})
    sure["units"][0]["prior"] = 1
    sure["rates"] |= {"circuit": 0, "blocked": 0, "feed": 0, "control": 0}
    answer = core("reason", case=sure)
    assert answer["verdict"] == {"causes": ["unit:A"], "probability": 1000000000, "breaks_x10": {}}
    assert answer["holds"] == {"lowest": 1000000000, "when": None}


def test_what_was_repaired_is_of_its_class_too(core):
    """The circuit after its repair has faulted again: tripled it is tripled, like the first."""
    tests = case((FITTED, ["a"]), (EXCHANGED, ["a"]))
    tests["tests"].append({"fitted": EXCHANGED, "faulted": ["a"], "repaired": ["circuit:a"]})
    answer = core("reason", case=tests)
    best = tuple(answer["explanations"][0]["causes"])
    exact = Assumed({"meter": [], **tests})
    check_held(answer["holds"], [said.explanations[best] for said in exact.varied])


def test_among_units_that_got_mixed_up_a_variation_moves_who_is_who_too():
    """x and y are the units of a and b, nobody knows which: each way has its weight under each variation."""
    mixed = case((FITTED, ["a"]), (FITTED | {"a": "x", "b": "y"}, ["b"]), meter=[], confidence=0.8)
    mixed["tests"] = [{"cleaned": [], **test} for test in mixed["tests"]]
    mixed["units"] += [{"id": "x"}, {"id": "y"}]
    ways = [[{"x": "A", "y": "B"}], [{"x": "B", "y": "A"}]]
    exact = [Assumed(identity_assignments.as_if(mixed, way)) for way in ways]

    answer = identity_assignments.reasoned(mixed, ways, plan=False)

    best = tuple(answer["explanations"][0]["causes"])
    leading, clear = [], []
    for n in range(len(NAMES)):
        said = [way.varied[n] for way in exact]
        total = sum(one.total for one in said)
        leading.append(sum(one.total * one.explanations.get(best, 0) for one in said) / total)
        clear.append(sum(one.total * one.clear for one in said) / total)
    check_held(answer["holds"], leading)
    check_held(answer["clear_holds"], clear)
