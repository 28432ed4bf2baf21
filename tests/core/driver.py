"""Drives a job through the core as the app does: asks, records what the step offers, scans labels."""

JOB = "j000000000001"
DEVICE = "d0123456789abcdef"
START = 1_750_000_000_000  # some day; the core never reads a clock
CODES_SEED = [(index * 97 + 41) % 256 for index in range(900)]


class Refused(Exception):
    """The core refused to record a draft."""

    def __init__(self, refusal):
        """Keep the refusal for the test to look at."""
        super().__init__(refusal["sentence"])
        self.refusal = refusal


class Driver:
    """One phone at work on one job."""

    def __init__(self, core, device=DEVICE, job=JOB, actor="Mara"):
        """Start a device chain; the core is shared with whoever else uses it."""
        self.actor = actor
        self.core = core
        self.device = device
        self.job = job
        self.seq = 0
        self.prev = ""
        self.events = []
        self.codes = core("codes", random=CODES_SEED, count=20)
        self.labels = {}

    def envelope(self, kind, data, job="same"):
        """Return the next envelope of this device and move the chain on."""
        self.seq += 1
        event = {
            "device": self.device,
            "seq": self.seq,
            "prev": self.prev,
            "v": 1,
            "at": START + self.seq * 60_000,
            "actor": self.actor,
            "job": self.job if job == "same" else job,
            "kind": kind,
            "data": data,
        }
        self.prev = self.core("envelope", event=event)["hash"]
        self.events.append(event)
        return event

    def check(self, *drafts):
        """Return the refusal that stands against drafts, or None."""
        phone = {"job": self.job, "actor": self.actor, "device": self.device}
        return self.core("check", events=[{**phone, **draft} for draft in drafts])["refusal"]

    def record(self, *drafts):
        """Record drafts as the app does: ask first, raise Refused, else chain and fold."""
        refusal = self.check(*drafts)
        if refusal:
            raise Refused(refusal)
        for draft in drafts:
            self.force(draft["kind"], **draft["data"])

    def fact(self, kind, **data):
        """Record one fact."""
        self.record({"kind": kind, "data": data})

    def force(self, kind, **data):
        """Fold a fact without asking, as a server does with what arrives."""
        self.core("add", events=[{"event": self.envelope(kind, data)}])

    def view(self):
        """Return the job as the app draws it."""
        return self.core("job", job=self.job)

    def step(self):
        """Return the step to do now."""
        return self.view()["step"]

    def tap(self, which="action"):
        """Do what the step's button does."""
        self.record(*self.step()[which]["events"])

    def choose(self, index):
        """Tap one of the step's choices."""
        self.record(*self.step()["choices"][index]["events"])

    def take(self, way, identity, **typed):
        """Take one of the other ways ("pause", "repair", "close"), as its screen does."""
        if way == "close" and self.view()["ways"]["close"]["stop"]:
            self.record(*self.view()["ways"]["close"]["stop"]["events"])
        choice = next(each for each in self.view()["ways"][way]["choices"] if each["id"] == identity)
        *before, last = choice["events"]
        self.record(*before, {"kind": last["kind"], "data": {**last["data"], **typed}})

    def scan(self, text, how="scanned"):
        """Show a label to the app, record what it says, return its answer."""
        answer = self.core("scan", job=self.job, text=text, how=how)
        if answer.get("events"):
            self.record(*answer["events"])
        return answer

    def scan_wanted(self, **more):
        """Scan the label of the unit that the step wants; return what the scan says."""
        return self.scan(self.label_of(self.step()["expects"]["unit"]), **more)

    def open(self, layout="rear-4", part="PS-1", vin="", first=None):
        """Open the job and go to the baseline test; `first` takes that many positions of the layout."""
        layouts = {entry["id"]: entry for entry in self.core("layouts")}
        self.fact(
            "job_opened",
            vehicle={"id": "v1", "name": "Blue estate", "vin": vin},
            complaint="beeps without reason",
            layout=layout,
            part=part,
            positions=layouts[layout]["positions"][:first],
        )
        return self

    def begin(self, **options):
        """Open the job and do everything before the first test."""
        self.open(**options)
        self.tap()
        self.tap()
        return self

    def photograph(self):
        """Photograph every position that the flow still asks for."""
        while self.step()["form"] == "photo":
            self.fact(
                "photo_taken",
                sha256="ab" * 32,
                mime="image/jpeg",
                bytes=1000,
                width=40,
                height=30,
                shows="position",
                position=self.step()["expects"]["position"],
                unit="",
            )

    def test(self, *faulted, **more):
        """Record a self-test."""
        data = {
            "heard": True,
            "faulted": list(faulted),
            "silent": [],
            "unplugged": [],
            "codes": [],
            "came_and_went": False,
            "note": "",
        }
        data.update(more)
        self.fact("test_run", **data)

    def guided(self):
        """Do every step of the move under way up to its test, each unit scanned."""
        for _ in range(60):
            step = self.step()
            if step["form"] == "scan":
                self.scan(self.label_of(step["expects"]["unit"]))
            elif step["id"] in ("lock", "seat", "clean"):
                self.tap()
            else:
                return
        raise AssertionError("the guided move does not end")

    def exchange(self, **fitted):
        """Begin an exchange of position=unit (underscores for hyphens) and go through with it."""
        plan = {position.replace("_", "-"): unit for position, unit in fitted.items()}
        self.fact("move_started", move="exchange", fitted=plan, position="", reason="to see")
        self.guided()

    def faulted(self, position="rear-right-outer"):
        """Come to a baseline fault with every position photographed."""
        self.begin()
        self.test(position)
        self.photograph()
        return self

    def start_exchange(self, one="rear-right-outer", other="rear-right-inner"):
        """Begin to exchange two sensors of the driver's vehicle."""
        fitted = {one: home(other), other: home(one)}
        self.fact("move_started", move="exchange", position="", reason="to see", fitted=fitted)

    def new_unit(self, position, unit="u00000000new1", part="PS-1"):
        """Bring in a new unit with a fresh label and begin to replace what sits at `position`."""
        self.labels[unit] = self._fresh()
        self.record(
            {
                "kind": "unit_added",
                "data": {
                    "unit": unit,
                    "part": part,
                    "serial": "",
                    "code": self.labels[unit],
                    "how": "scanned",
                    "place": "out",
                },
            },
            {
                "kind": "move_started",
                "data": {
                    "move": "replace",
                    "fitted": {position: unit},
                    "position": position,
                    "reason": "",
                },
            },
        )

    def finish(self):
        """Go from proven to closed the short way: all sound, leave the good ones, counter, close."""
        for _ in range(20):
            step = self.step()
            if step["id"] == "done":
                return
            if step["action"]:
                self.tap()
            else:
                self.choose(0)
        raise AssertionError("the job does not close")

    def label_of(self, unit):
        """Return the code on a unit's label, a fresh one where it has none yet."""
        if unit not in self.labels:
            self.labels[unit] = self._fresh()
        return self.labels[unit]

    def _fresh(self):
        return self.codes[len(self.labels)]


def home(position):
    """Return the id of the unit that sat at a position of the driver's vehicle at first sight."""
    return f"v1.{position}"
