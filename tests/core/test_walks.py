"""Generated walks through a job: any answer that a step allows, and none leads nowhere.

Each walk ends closed or paused when whoever walks prefers to; no screen is the same twice in a row without
news; what a step offers is never refused; every move that is offered changes something (`walker.py` says so
at each step). Forty short ones in the ordinary run, ten with each further sort of part, and some that begin
at a fault of the wiring; SWAPTRAIL_LONG=1 walks 2,000 of up to 80 steps with each.
"""

import os

import pytest
from hypothesis import HealthCheck
from hypothesis import Phase
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine
from hypothesis.stateful import initialize
from hypothesis.stateful import precondition
from hypothesis.stateful import rule

from tests.core.walker import Answer
from tests.core.walker import Walker

IS_LONG = bool(os.environ.get("SWAPTRAIL_LONG"))
STEPS = 80 if IS_LONG else 20


def faults_at(places, *shared):
    """Return the causes that a walk may draw from."""
    of_places = [
        f"{kind}:{owner}{place}" for kind, owner in (("unit", "v1."), ("circuit", "")) for place in places
    ]
    return (*of_places, f"blocked:{places[0]}", *shared)


class Walks(RuleBasedStateMachine):
    """Somebody who mostly does what the step asks, sometimes anything else, and ends when it is enough."""

    layout = "rear-4"
    faults = faults_at(("rear-left-outer", "rear-left-inner", "rear-right-inner"), "feed:rear", "control")
    least_faults = 0

    @initialize(data=st.data())
    def begin(self, data):
        drawn = st.lists(st.sampled_from(self.faults), min_size=self.least_faults, max_size=2, unique=True)
        faults = data.draw(drawn)
        self.walker = Walker(faults, positions=3, layout=self.layout)

    def open(self):
        return not self.walker.view["closed"]

    @precondition(open)
    @rule(times=st.integers(1, 3))
    def go_on(self, times):
        """Do what an honest person does, some steps of it."""
        for _ in range(times):
            if self.open():
                self.walker.do(self.walker.answers()[0])

    @precondition(open)
    @rule(which=st.integers(0, 40))
    def answer(self, which):
        """Give any answer."""
        answers = self.walker.answers()
        self.walker.do(answers[which % len(answers)])

    @precondition(open)
    @rule(which=st.integers(0, 40))
    def another_way(self, which):
        """Take one of the other ways, but do not close yet."""
        ways = [way for way in self.walker.ways() if not way.name.startswith("close")]
        self.walker.do(ways[which % len(ways)])

    @precondition(lambda self: not self.open())
    @rule()
    def rest(self):
        """It is closed: nothing is left to do."""

    def teardown(self):
        if hasattr(self, "walker"):
            self.walker.finish()
            assert self.walker.view["closed"]


class CoilWalks(Walks):
    """The same with ignition coils, which may not hang on their wires."""

    layout = "ignition-coil/row-4"
    faults = faults_at(("cylinder-1", "cylinder-2", "cylinder-3"), "control")


class WheelWalks(Walks):
    """The same with wheel-speed senders, which share no supply."""

    layout = "wheel-sender/wheels-4"
    faults = faults_at(("wheel-front-left", "wheel-front-right", "wheel-rear-left"), "control")


class SpeakerWalks(Walks):
    """The same with door loudspeakers, which have no control unit."""

    layout = "door-speaker/doors-4"
    faults = faults_at(("door-front-left", "door-front-right", "door-rear-left"))


class WiringWalks(Walks):
    """Somebody whose fault is in the wiring: reads checks one way or another, repairs, owes a reading."""

    faults = ("circuit:rear-left-outer", "circuit:rear-left-inner", "circuit:rear-right-inner", "feed:rear")
    least_faults = 1

    @initialize(data=st.data())
    def begin(self, data):
        """Begin where the first test has shown a fault."""
        super().begin(data)
        while self.walker.view["step"]["form"] in ("cautions", "look", "test", "photo"):
            self.walker.do(self.walker.answers()[0])

    def offers_checks(self):
        return self.open() and [each for each in self.walker.answers() if "meter" in each.name]

    @precondition(lambda self: self.open() and self.walker.readings("bad"))
    @rule(reads=st.sampled_from(("good", "bad", "unclear")), times=st.integers(1, 18))
    def read(self, reads, times):
        """Let some checks in a row read alike."""
        for _ in range(times):
            answers = self.walker.readings(reads)
            if answers:
                self.walker.do(answers[0])

    @precondition(offers_checks)
    @rule(which=st.integers(0, 40))
    def measure(self, which):
        """Begin to check the wiring of a position."""
        offered = self.offers_checks()
        self.walker.do(offered[which % len(offered)])

    @precondition(lambda self: self.open() and not self.walker.view["paused"])
    @rule(which=st.integers(0, 40))
    def repair(self, which):
        """Repair something of the wiring, whatever the step asks for."""
        repairs = [way for way in self.walker.ways() if way.name.startswith("repair")]
        self.walker.do(repairs[which % len(repairs)])


class CoilWiringWalks(WiringWalks):
    """The same where the checks are gone through in a fixed order."""

    layout = "ignition-coil/row-4"
    faults = ("circuit:cylinder-1", "circuit:cylinder-2", "circuit:cylinder-3")


def case_of(machine, walks):
    """Return the test that pytest finds, which takes so many walks in the ordinary run."""
    machine.TestCase.settings = settings(
        max_examples=2000 if IS_LONG else walks,
        stateful_step_count=STEPS,
        deadline=None,
        phases=[Phase.explicit, Phase.generate],  # what is wrong is told as a story; to shorten takes minutes
        suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
    )
    return machine.TestCase


TestWalks = case_of(Walks, 40)
TestCoilWalks = case_of(CoilWalks, 10)
TestWheelWalks = case_of(WheelWalks, 10)
TestSpeakerWalks = case_of(SpeakerWalks, 10)
TestWiringWalks = case_of(WiringWalks, 15)
TestCoilWiringWalks = case_of(CoilWiringWalks, 8)


def steps_of_the_wiring(walker, place):
    """Lead a walker whose fault is at a circuit to each kind of step there; yield where it stands."""
    for _ in range(40):
        if walker.view["step"]["id"] == "wiring.measure":
            break
        # Checks that are chosen among the moves are steps of their own; here an exchange leads to the wiring.
        walker.do(next(each for each in walker.answers() if "meter" not in each.name))
    at_wiring = walker.bookmark()
    yield at_wiring
    read_all(walker, "unclear")
    yield walker.bookmark()
    walker.go_back(at_wiring)
    read_all(walker, "bad")
    yield walker.bookmark()
    walker.do(walker.answers()[0])
    yield walker.bookmark()
    walker.do(walker.readings("bad")[0])
    yield walker.bookmark()
    walker.go_back(at_wiring)
    begin = {"move": "meter", "fitted": {}, "position": place, "reason": ""}
    walker.do(Answer("meter", [{"kind": "move_started", "data": begin}]))
    read_all(walker, "unclear")
    yield walker.bookmark()


def read_all(walker, reads):
    """Let every check that is left read alike."""
    while walker.view["step"]["form"] == "measure":
        walker.do(walker.readings(reads)[0])


@pytest.mark.parametrize(
    ("layout", "place", "named"),
    [("rear-4", "rear-left-outer", "wiring.found"),
     ("ignition-coil/row-4", "cylinder-1", "wiring.measure.done")],
)  # fmt: skip
def test_whatever_is_answered_at_a_step_of_the_wiring_leads_on(layout, place, named):
    walker = Walker(["circuit:" + place], positions=3, layout=layout)
    stood_at = []
    for here in list(steps_of_the_wiring(walker, place)):
        walker.go_back(here)
        stood_at.append(walker.view["step"]["id"])
        answers = walker.answers()
        assert answers
        for n in range(len(answers)):
            walker.go_back(here)
            walker.do(walker.answers()[n])
            walker.finish()
    assert stood_at == [
        "wiring.measure", "wiring.stuck", named, "measure.again", "measure.still", "measure.done"
    ]  # fmt: skip
