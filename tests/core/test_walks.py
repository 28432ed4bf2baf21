"""Generated walks through a job: any answer that a step allows, and none leads nowhere.

Each walk ends closed or paused when whoever walks prefers to; no screen is the same twice in a row without
news; what a step offers is never refused; every move that is offered changes something (`walker.py` says so
at each step). Sixty short ones in the ordinary run; SWAPTRAIL_LONG=1 walks 2,000 of up to 80 steps.
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

PLACES = ("rear-left-outer", "rear-left-inner", "rear-right-inner")
FAULTS = (
    *(f"unit:v1.{place}" for place in PLACES),
    *(f"circuit:{place}" for place in PLACES),
    f"blocked:{PLACES[0]}",
    "feed:rear",
    "control",
)
WALKS, STEPS = (2000, 80) if os.environ.get("SWAPTRAIL_LONG") else (60, 20)


class Walks(RuleBasedStateMachine):
    """Somebody who mostly does what the step asks, sometimes anything else, and ends when it is enough."""

    @initialize(faults=st.lists(st.sampled_from(FAULTS), max_size=2, unique=True))
    def begin(self, faults):
        self.walker = Walker(faults, positions=len(PLACES))

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


TestWalks = Walks.TestCase
TestWalks.settings = settings(
    max_examples=WALKS,
    stateful_step_count=STEPS,
    deadline=None,
    phases=[Phase.explicit, Phase.generate],  # what is wrong is told as a story; to shorten it takes minutes
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)
