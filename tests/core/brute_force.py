"""The formulas of the design, enumerated: every subset of all causes, no shortcut of any kind.

Written from the design alone and sharing nothing with the core, so that an error there cannot
repeat itself here.
"""

import numpy

DEFAULTS = {
    "unit": 0.05,
    "circuit": 0.005,
    "blocked": 0.01,
    "feed": 0.001,
    "control": 0.001,
    "shows": 0.95,
    "again": 0.3,
    "false_alarm": 0.002,
    "meter_sees": 0.95,
    "meter_false": 0.02,
    "tick_unit": 0.7,
    "tick_circuit": 0.5,
    "tick_feed": 0.95,
    "tick_control": 0.95,
    "tick_false": 0.03,
}


class Enumeration:
    """Posterior of one case by weighing all 2^n subsets."""

    def __init__(self, case):
        self.rates = dict(DEFAULTS, **case.get("rates", {}))
        self.group = {p["id"]: p.get("group") for p in case["positions"]}
        self.prior = {}
        for unit in case["units"]:
            self.prior["unit:" + unit["id"]] = unit.get("prior", self.rates["unit"])
        for place in self.group:
            self.prior["circuit:" + place] = self.rates["circuit"]
            self.prior["blocked:" + place] = self.rates["blocked"]
            if self.group[place] is not None:
                self.prior["feed:" + self.group[place]] = self.rates["feed"]
        self.prior["control"] = self.rates["control"]
        self.latest = {name: name for name in self.prior if not name.startswith(("unit", "bl"))}
        self.generation = dict.fromkeys(self.latest, 1)
        self.may_block = dict.fromkeys(self.group, True)
        self.readings = []  # (parents, one more present, faulted, repeats a clean one at once)
        self.were_clean = {}
        self.listened = []  # (causes that silence, whether it ticked)
        self.ignored = []
        self.names = []
        self.fitted = {}
        for n, test in enumerate(case["tests"]):
            self.take_test(n, test)
        now = case.get("now", {})
        self.prepare(now, dict(self.fitted, **now.get("fitted", {})))
        self.meter = [("circuit:" + m["position"], m["reads"] == "bad") for m in case["meter"]]
        self.weigh()

    def prepare(self, done, fitted):
        """Repairs, cleaning and changed units, as they stand before a test."""
        for repair in done.get("repaired", []):
            self.generation[repair] += 1
            fresh = f"{repair}#{self.generation[repair]}"
            self.latest[repair] = fresh
            self.prior[fresh] = self.prior[repair]
        for place in done.get("cleaned", []):
            self.may_block[place] = False
        for place, unit in self.fitted.items():
            if fitted.get(place) != unit:
                self.may_block[place] = False
        self.fitted = fitted

    def take_test(self, n, test):
        self.prepare(test, dict(test["fitted"]))
        for place, heard in sorted(test.get("listen", {}).items()):
            causes = [self.latest["circuit:" + place], self.latest["control"], "unit:" + self.fitted[place]]
            if self.group[place] is not None:
                causes.append(self.latest["feed:" + self.group[place]])
            self.listened.append((causes, heard == "ticks"))
        unplugged = set(test.get("unplugged", []))
        silent = set(test.get("silent", []))
        faulted = set(test["faulted"])
        if not test.get("heard", True) or unplugged - faulted - silent:
            self.ignored.append(n)
            return
        if silent == set(self.group):
            return  # nothing was tested, somebody only listened
        here = {}
        for place in sorted((set(self.fitted) | unplugged) - silent):
            parents = [self.latest["circuit:" + place], self.latest["control"]]
            if self.group[place] is not None:
                parents.append(self.latest["feed:" + self.group[place]])
            if place not in unplugged:
                parents.append("unit:" + self.fitted[place])
                if self.may_block[place]:
                    parents.append("blocked:" + place)
            at_once = test.get("after") == "at_once" and place not in faulted
            again = at_once and self.were_clean.get(place) == parents
            self.readings.append((parents, int(place in unplugged), place in faulted, again))
            here[place] = None if place in faulted else parents
        self.were_clean = here

    def column(self, name):
        if name not in self.columns:
            self.columns[name] = ((self.subsets >> self.names.index(name)) & 1).astype(numpy.uint8)
        return self.columns[name]

    def weigh(self):
        """Weigh every subset, again after a rate or a prior was changed."""
        rates = self.rates
        if self.names != sorted(self.prior):
            self.names = sorted(self.prior)
            self.subsets = numpy.arange(2 ** len(self.names), dtype=numpy.int64)
            self.columns = {}
            self.present = [extra + sum(map(self.column, parents)) for parents, extra, _, _ in self.readings]
        weight = numpy.ones(len(self.subsets))
        for name in self.names:
            weight *= numpy.array([1 - self.prior[name], self.prior[name]])[self.column(name)]
        for (parents, extra, faulted, again), present in zip(self.readings, self.present, strict=True):
            shows = rates["shows"] * (rates["again"] if again else 1)
            clean = [(1 - rates["false_alarm"]) * (1 - shows) ** k for k in range(len(parents) + extra + 1)]
            weight *= numpy.array([1 - each for each in clean] if faulted else clean)[present]
        for causes, ticked in self.listened:
            ticks = numpy.full(len(self.subsets), 1 - rates["tick_false"])
            for name in causes:
                kind = name.partition(":")[0].partition("#")[0]
                ticks *= numpy.array([1, 1 - rates[f"tick_{kind}"]])[self.column(name)]
            weight *= ticks if ticked else 1 - ticks
        for name, bad in self.meter:
            reads_bad = numpy.array([rates["meter_false"], rates["meter_sees"]])[self.column(name)]
            weight *= reads_bad if bad else 1 - reads_bad
        self.total = float(weight.sum())  # how likely all readings together are
        self.weight = weight / weight.sum()

    def marginals(self):
        return {name: float((self.weight * self.column(name)).sum()) for name in self.names}

    def suspects(self):
        found = {name for parents, _, faulted, _ in self.readings if faulted for name in parents}
        found |= {name for causes, ticked in self.listened if not ticked for name in causes}
        return sorted(found | {name for name, bad in self.meter if bad})

    def explanations(self, suspects=None):
        """The probability of each subset of the suspects, as {(names, sorted): probability}."""
        suspects = self.suspects() if suspects is None else suspects
        code = numpy.zeros(len(self.subsets), dtype=numpy.int64)
        for n, name in enumerate(suspects):
            code |= self.column(name).astype(numpy.int64) << n
        weights = numpy.bincount(code, weights=self.weight, minlength=2 ** len(suspects))
        return {
            tuple(name for n, name in enumerate(suspects) if mask >> n & 1): float(weights[mask])
            for mask in range(len(weights))
        }

    def live(self):
        """What can still act: units that are fitted, circuits as they are now, what may block."""
        live = {"unit:" + unit for unit in self.fitted.values()} | set(self.latest.values())
        return live | {"blocked:" + place for place, may in self.may_block.items() if may}

    def clear(self):
        live = self.live()
        gone = numpy.ones(len(self.subsets), dtype=bool)
        for name in self.suspects():
            if name in live:
                gone &= self.column(name) == 0
        return float(self.weight[gone].sum())
