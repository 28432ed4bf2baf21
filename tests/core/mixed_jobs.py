"""Jobs in which sensors got mixed up, done as the app leads, with a fault that only the job knows."""

from tests.core.driver import Driver
from tests.core.driver import home
from tests.core.walker import quick_core


class MixedJob:
    """One job of a rear bumper: a fault at one position, `mixed` positions pulled, what came off mixed up.

    `bad` is what is wrong: the number of the body that is the bad sensor, the id of one that was not pulled,
    "circuit", or "gone" (a blockage that went away with the handling). `labels` old labels are still on.
    `torn` says before which steps which one of the labels that are on is torn off: {step: number}.
    """

    def __init__(self, mixed, faulted, bad, labels=0, positions=4, torn=()):
        """Come to the first fitting after the mix-up."""
        job = self.job = Driver(quick_core())
        self.faulted, self.bad, self.torn = faulted, bad, dict(torn)
        job.begin(first=positions)
        job.test(faulted)
        self.tests = 0
        self.steps = []
        for place in mixed:
            job.fact("unit_pulled", unit=home(place), position=place, how="tapped")
            job.labels[home(place)] = job._fresh()
            job.fact("unit_labelled", unit=home(place), code=job.labels[home(place)], how="scanned")
        job.fact("units_mixed", units=[home(place) for place in mixed], note="")
        self.bodies = list(job.core("state")["mixed"][0]["bodies"])
        for place in mixed[len(mixed) - labels :]:
            if job.core("state")["units"][home(place)]["place"] == "mixed":
                job.scan(job.labels[home(place)])
        aliases = job.core("state")["aliases"]
        self.bodies = [aliases.get(body, body) for body in self.bodies]
        while job.step()["id"] == "mixed.label":
            unit = job.step()["expects"]["unit"]
            job.labels[unit] = job._fresh()
            job.scan(job.labels[unit])

    def unit(self):
        """Return the id of the bad sensor, None where none is bad."""
        if self.bad in ("circuit", "gone"):
            return None
        bad = self.bodies[self.bad] if isinstance(self.bad, int) else self.bad
        return self.job.core("state")["aliases"].get(bad, bad)

    def may_be(self):
        """Tell whether the labels that are still on let the bad sensor have sat where the fault showed."""
        bad = self.bodies[self.bad] if isinstance(self.bad, int) else None
        was = home(self.faulted)
        return bad is None or bad == was or (was not in self.bodies and not bad.startswith(home("")))

    def faults(self):
        """Return where a test shows a fault now."""
        holds = self.job.core("state")["vehicles"]["v1"]["holds"]
        if self.bad == "circuit":
            return [self.faulted]
        return [place for place in sorted(holds) if holds[place] == self.unit()]

    def settles(self, most=40):
        """Follow the app until a verdict stands or nothing is left to fix; return the tests it took."""
        job = self.job
        for _ in range(most):
            view = job.view()
            told = view["reasoning"]
            if self.tests and not _to_fit(view) and (told["verdict"] or told["settled"]):
                return self.tests
            if len(self.steps) in self.torn:
                self._tears_off_a_label(self.torn.pop(len(self.steps)))
            else:
                self._does(view)
        raise AssertionError(f"the mix-up does not end: {self.steps}")

    def _tears_off_a_label(self, number):
        job = self.job
        units = job.core("state")["units"]
        here = [each for each in sorted(units) if units[each]["place"] in ("out", "fitted")]
        worn = [each for each in here if units[each]["code"]]
        if worn:
            unit = worn[number % len(worn)]
            job.fact("label_voided", unit=unit, code=units[unit]["code"], reason="torn")
            job.labels[f"{unit}, torn off at {len(self.torn)}"] = job.labels.pop(unit)

    def _does(self, view):
        job, step = self.job, view["step"]
        self.steps.append(step["id"])
        if step["form"] == "moves":
            job.record(*next(each["events"] for each in view["moves"] if each["events"]))
        elif step["form"] == "photo":
            job.photograph()
        elif step["form"] == "test":
            job.test(*self.faults(), unplugged=step["expects"]["unplugged"])
            self.tests += 1
        elif step["form"] == "scan" and step["second"] and step["second"]["events"]:
            job.tap("second")  # its label was lost: it goes back to where it was
        elif step["form"] == "scan":
            unit = step["expects"]["unit"]
            if unit in job.labels and not job.core("state")["units"][unit]["code"]:
                job.labels[f"{unit}, lost"] = job.labels.pop(unit)
            job.scan(job.label_of(step["expects"]["unit"]))
        elif step["form"] == "new_unit":
            if step["choices"]:
                job.choose(0)
            else:
                job.new_unit(step["expects"]["position"], f"new{self.tests}")
        elif step["form"] == "measure":
            bad = self.bad == "circuit" and step["expects"]["position"] == self.faulted
            reads = [each["reads"] for each in step["choices"]]
            job.choose(reads.index("bad" if bad else "good"))
        elif step["action"]:
            job.tap()
        else:
            job.choose(0)


def _to_fit(view):
    """Tell whether a position is empty that something in the hand may come into."""
    empty = [position for position in view["board"]["positions"] if position["unit"] is None]
    asks_for_a_new_one = view["step"]["form"] == "new_unit" and not view["step"]["choices"]
    return empty and not asks_for_a_new_one
