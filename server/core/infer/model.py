"""Which causes there are and what each reading that counts says about them.

This is where time is walked through once: units change places, blockages go when a position is
cleaned or disturbed, repairs start fresh causes, and tests that prove nothing are set aside.
"""

from . import likelihoods
from . import reasons
from .case import NOBODY
from .noisy_or import SILENCES
from .noisy_or import at_once
from .noisy_or import power
from .noisy_or import ticks_on

# What a shown fault is worth is kept per set of parents, with how often it was seen; clean
# readings and meter readings only count per cause (see belief.py for why that is enough).


class Model:
    """The causes of a case, the evidence on each, and what is where now."""

    def __init__(self, case):
        self.case = case
        self.rates = case.rates
        self.names = []
        self.priors = []
        self.kinds = []
        self.clean = []
        self.again = []  # clean readings that repeat the one before at once
        self.meter_bad = []
        self.meter_good = []
        self.ticks = []  # how often a unit that it acts on was heard to tick
        # (parents, one more present for an unplugged position) -> how often it showed a fault
        self.faulted = {}
        # The same one by one, (test, position, parents), for those who ask which reading it was.
        self.faults = []
        # The same of positions that were listened at and silent.
        self.silent = {}
        self.silences = []
        self.listened = {}  # position -> what might have silenced it when somebody listened last
        self.ignored = []
        self.last_faulted = []
        self._read_clean = {}  # position -> its parents, where the test before read clean
        self.counted = 0
        self._start()
        self._walk()
        likelihoods.tilt(self)
        self._read_meter()

    def _add(self, kind: str, name: str, prior: float) -> int:
        self.names.append(name)
        self.priors.append(prior)
        self.kinds.append(kind)
        for counts in (self.clean, self.again, self.meter_bad, self.meter_good, self.ticks):
            counts.append(0)
        return len(self.names) - 1

    def _start(self) -> None:
        case = self.case
        rates = case.rates
        self.unit = [self._add("unit", "unit:" + u.id, u.prior) for u in case.units]
        self.circuits = [[self._add("circuit", "circuit:" + p.id, rates["circuit"])] for p in case.positions]
        self.blocked = [self._add("blocked", "blocked:" + p.id, rates["blocked"]) for p in case.positions]
        self.feeds = [[self._add("feed", "feed:" + g, rates["feed"])] for g in case.groups]
        self.controls = [self._add("control", "control", rates["control"])]
        self.group = [None if p.group is None else case.groups.index(p.group) for p in case.positions]
        size = len(case.positions)
        self.fitted = [NOBODY] * size
        self.blockable = [True] * size

    def _walk(self) -> None:
        for n, test in enumerate(self.case.tests):
            self._repair(test.repaired)
            for place in test.cleaned:
                self.blockable[place] = False
            self._move(self._as_fitted(test))
            if not test.waits:
                self._listen(n, test)
            reason = self._set_aside(test)
            if reason is not None:
                self.ignored.append((n, reason))
                continue
            if self._reads(test):
                self.counted += 1
                self.last_faulted = test.faulted
                self._read_test(n, test)
        now = self.case.now
        tested = self.fitted
        self._repair(now.repaired)
        for place in now.cleaned:
            self.blockable[place] = False
        self._move(self._moved(now.fitted))
        self.hanging = [place in now.hanging for place in range(len(self.fitted))]
        self.changed = bool(now.cleaned or now.repaired or tested != self.fitted)

    def _as_fitted(self, test) -> list:
        """Return what is where in a test; a unit left out because it is unplugged stays put."""
        fitted = list(test.fitted)
        for place in test.unplugged:
            if fitted[place] == NOBODY and self.fitted[place] not in fitted:
                fitted[place] = self.fitted[place]
        return fitted

    def _moved(self, moves: list) -> list:
        """Return what is where after the moves; a unit that came from a position left it."""
        fitted = list(self.fitted)
        for _, unit in moves:
            if unit != NOBODY and unit in fitted:
                fitted[fitted.index(unit)] = NOBODY
        for place, unit in moves:
            fitted[place] = unit
        return fitted

    def _move(self, fitted: list) -> None:
        """Take over what is where; a position that was handled is no longer blocked."""
        for place in range(len(fitted)):
            was = self.fitted[place]
            if was != NOBODY and was != fitted[place]:
                self.blockable[place] = False
        self.fitted = fitted

    def _repair(self, repairs: list) -> None:
        for kind, number in repairs:
            rows = self.controls
            if kind == "circuit":
                rows = self.circuits[number]
            elif kind == "feed":
                rows = self.feeds[number]
            first = rows[0]
            name = "{}#{}".format(self.names[first], len(rows) + 1)
            rows.append(self._add(kind, name, self.priors[first]))

    def _set_aside(self, test) -> dict | None:
        """Return why a test proves nothing, or None when it counts."""
        if not test.heard:
            return reasons.not_heard(self.case.sort)
        if test.waits:
            return reasons.waits()
        for place in test.unplugged:
            if place not in test.faulted and place not in test.silent:
                return reasons.not_watching(self.case.positions[place].name)
        return None

    def _reads(self, test) -> bool:
        """Tell whether a test reports on any position; where somebody only listened, there was none."""
        for place in range(len(self.fitted)):
            if place not in test.silent:
                return True
        return False

    def _listen(self, n: int, test) -> None:
        """Take in what was heard; it needs no self-test, so it counts where that is set aside."""
        for place, ticks in test.listened:
            parents = self.sounding(place)
            self.listened[place] = parents
            if ticks:
                for cause in parents:
                    self.ticks[cause] += 1
            else:
                key = tuple(parents)
                self.silent[key] = self.silent.get(key, 0) + 1
                self.silences.append((n, place, parents))

    def sounding(self, place: int) -> list:
        """Return the causes that would keep the unit of this position from ticking now."""
        return [cause for cause in self.parents(place, False) if self.kinds[cause] in SILENCES]

    def parents(self, place: int, unplugged: bool) -> list:
        """Return the causes that would act on a reading of this position now."""
        parents = [self.circuits[place][-1], self.controls[-1]]
        group = self.group[place]
        if group is not None:
            parents.append(self.feeds[group][-1])
        if not unplugged:
            if self.fitted[place] != NOBODY:
                parents.append(self.unit[self.fitted[place]])
            if self.blockable[place]:
                parents.append(self.blocked[place])
        return sorted(parents)

    def _read_test(self, n: int, test) -> None:
        before = self._read_clean
        self._read_clean = {}
        for place in range(len(self.fitted)):
            unplugged = place in test.unplugged
            if place in test.silent or (test.fitted[place] == NOBODY and not unplugged):
                continue
            parents = self.parents(place, unplugged)
            if place in test.faulted:
                key = (tuple(parents), 1 if unplugged else 0)
                self.faulted[key] = self.faulted.get(key, 0) + 1
                if not unplugged:
                    self.faults.append((n, place, parents))
            else:
                # A fault that was away a moment ago is likely still away: the same causes, read clean
                # again at once, say less. After any change of them the reading counts in full.
                repeats = test.at_once and before.get(place) == parents
                self._read_clean[place] = parents
                counts = self.again if repeats else self.clean
                for cause in parents:
                    counts[cause] += 1

    def _read_meter(self) -> None:
        for check in self.case.meter:
            cause = self.circuits[check.position][check.generation - 1]
            if check.bad:
                self.meter_bad[cause] += 1
            else:
                self.meter_good[cause] += 1

    def suspects(self) -> list:
        """Return the causes with a faulted reading, a silence or a bad meter reading that counted."""
        suspects = []
        for parents in [parents for parents, _ in sorted(self.faulted)] + sorted(self.silent):
            for cause in parents:
                if cause not in suspects:
                    suspects.append(cause)
        for cause in range(len(self.names)):
            if self.meter_bad[cause] and cause not in suspects:
                suspects.append(cause)
        return sorted(suspects)

    def live(self) -> list:
        """Return a flag a cause: would it still act in a test made now?"""
        flags = [False] * len(self.names)
        for unit in self.fitted:
            if unit != NOBODY:
                flags[self.unit[unit]] = True
        for unit in self.case.now.loose:
            flags[self.unit[unit]] = True
        for rows in self.circuits + self.feeds + [self.controls]:
            flags[rows[-1]] = True
        for place, cause in enumerate(self.blocked):
            flags[cause] = self.blockable[place]
        return flags

    def weights(self, cause: int, one, rates: dict) -> tuple:
        """Return the weight of absent and of present after all readings that act alone."""
        bad = self.meter_bad[cause]
        good = self.meter_good[cause]
        absent = one * (1.0 - self.priors[cause])
        absent = absent * power(one * rates["meter_false"], bad, one)
        absent = absent * power(one * (1.0 - rates["meter_false"]), good, one)
        present = one * self.priors[cause]
        present = present * power(one * (1.0 - rates["shows"]), self.clean[cause], one)
        present = present * power(one * (1.0 - at_once(rates)["shows"]), self.again[cause], one)
        present = present * power(one * rates["meter_sees"], bad, one)
        present = present * power(one * (1.0 - rates["meter_sees"]), good, one)
        if self.ticks[cause]:
            present = present * power(one * ticks_on(self.kinds[cause], rates), self.ticks[cause], one)
        return absent, present
