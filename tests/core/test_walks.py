"""Generated walks through a job: any answer that a step allows, and none leads nowhere.

Each walk ends closed or paused when whoever walks prefers to; no screen is the same twice in a row without
news; what a step offers is never refused; every move that is offered changes something (`walker.py` says so
at each step). Sixty short ones in the ordinary run, and ten with each further sort of part; SWAPTRAIL_LONG=1
walks 2,000 of up to 80 steps with each.
"""

import os

from hypothesis import HealthCheck
from hypothesis import Phase
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine
from hypothesis.stateful import initialize
from hypothesis.stateful import precondition
from hypothesis.stateful import rule

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

    @initialize(data=st.data())
    def begin(self, data):
        faults = data.draw(st.lists(st.sampled_from(self.faults), max_size=2, unique=True))
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


TestWalks = case_of(Walks, 60)
TestCoilWalks = case_of(CoilWalks, 10)
TestWheelWalks = case_of(WheelWalks, 10)
TestSpeakerWalks = case_of(SpeakerWalks, 10)
