"""A person at work on one job: does what the core's step asks for, with what the car really has.

The stories tell only who does what when. What is tapped, scanned and measured comes from the step
at hand, so the demo cannot drift away from the app.
"""

from collections.abc import Callable

from demo_db import pictures
from demo_db import screen
from demo_db.cars import Car
from demo_db.dice import Dice
from demo_db.dice import identity
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.log import Place
from demo_db.log import StoryBroken
from server.words.files import FIRST
from server.words.spoken import speech_of

_MOST_STEPS = 60
_GUIDED = ("take", "pull", "fit", "lock", "seat")


class Work:
    """One job, seen and done through the core."""

    def __init__(
        self, log: Log, phone: Phone, car: Car, name: str, take_label: Callable[[], str] | None = None
    ):
        """Begin with nothing recorded; `name` tells the jobs of the demo apart.

        `take_label` says where its labels come from: the front of the roll unless told otherwise.
        """
        self.take_label = take_label or log.fresh_label
        self.log = log
        self.phone = phone
        self.car = car
        self.job = identity("j", name)
        self.name = name
        self.at = 0
        self._dice = Dice("work", name)

    # --- the job and its steps

    def open(self, at: int, complaint: str, layout: str) -> None:
        """Open the job."""
        self.at = at
        layouts = {each["id"]: each for each in self.log.ask("layouts")}
        vehicle = {"id": self.car.id, "name": self.car.name, "vin": self.car.vin}
        self.record(
            {
                "kind": "job_opened",
                "data": {
                    "vehicle": vehicle,
                    "complaint": complaint,
                    "layout": layout,
                    "part": self.car.part,
                    "positions": layouts[layout]["positions"],
                },
            }
        )

    def view(self) -> dict:
        """Return the job as the app draws it."""
        return self.log.ask("job", job=self.job)

    def step(self, *expected: str) -> dict:
        """Return the step to do now; with `expected`, it has to be one of these."""
        step = self.view()["step"]
        if expected and step["id"] not in expected:
            raise StoryBroken(f"{self.name}: the step is {step['id']}, the story wants {expected}")
        return step

    def record(self, *drafts: dict) -> Place:
        """Record drafts a little later than the last ones."""
        self.at += self._dice.whole(14_000, 95_000)
        return self.log.record(self.phone, self.job, self.at, list(drafts))

    def wait(self, minutes: int) -> None:
        """Let time pass."""
        self.at += minutes * 60_000

    def tap(self, *expected: str, which: str = "action") -> Place:
        """Tap the main button of a step, or with `which` the second one."""
        return self.record(*self.step(*expected)[which]["events"])

    def choose(self, wanted: Callable[[dict], bool], *expected: str, how: str = "") -> Place:
        """Tap the first choice of a step that `wanted` takes; `how` its label was read just before."""
        for choice in self.step(*expected)["choices"]:
            if wanted(choice):
                drafts = choice["events"]
                if how:
                    drafts = [{**draft, "data": {**draft["data"], "how": how}} for draft in drafts]
                return self.record(*drafts)
        raise StoryBroken(f"{self.name}: the step offers no such choice")

    # --- what the steps ask for

    def begin(self, lamp: str = "not_as_it_should", seen: dict[str, str] | None = None) -> None:
        """Read the cautions, look at the lamps and at every sensor; `seen` is position -> finding."""
        self.tap("cautions")
        step = self.step("look")
        shown = {"key_on": "as_it_should", "reverse": lamp}
        lamps = [
            {
                "kind": "lamp_checked",
                "data": {"when": each["when"], "result": shown[each["when"]], "note": ""},
            }
            for each in step["expects"]["lamps"]
        ]
        found = [
            {"position": each["id"], "found": (seen or {}).get(each["id"], "nothing")}
            for each in step["expects"]["positions"]
        ]
        self.record(*lamps, {"kind": "looked", "data": {"positions": found, "note": ""}})

    def self_test(self, *, heard: bool = True, shows: bool = True, photo: bool = False, **more) -> Place:
        """Run the self-test; `shows` is False when a fault that comes and goes is away."""
        step = self.step()
        if step["form"] != "test":
            raise StoryBroken(f"{self.name}: the step is {step['id']}, not a test")
        self.wait(2)
        faulted = self.car.faulted(self.sitting()) if heard and shows else []
        data = {
            "heard": heard,
            "faulted": faulted,
            "silent": [],
            "unplugged": step["expects"]["unplugged"],
            "codes": [self.car.code(position) for position in faulted] if step["expects"]["codes"] else [],
            "came_and_went": False,
            "note": "",
            "open_list": True,
        }
        place = self.record({"kind": "test_run", "data": {**data, **more}})
        if photo:
            self.photograph_screen(faulted, step["expects"]["number"])
        return place

    def test_again(self, **options) -> Place:
        """Choose to run the self-test once more, whatever else is offered, and run it."""
        self.start("retest")
        return self.self_test(**options)

    def photograph_positions(self, dirty: str = "") -> None:
        """Take a picture of each position that the step still asks for."""
        while (step := self.step())["form"] == "photo":
            position = step["expects"]["position"]
            drawn = pictures.bumper(self.car.finish, position, seed=self.name, dirty=position == dirty)
            self.photo(drawn, "position", position=position)

    def photograph_screen(self, faulted: list[str], number: int) -> None:
        """Take a picture of the control unit's list."""
        codes = {position: "{code}-{failure_type}".format(**self.car.code(position)) for position in faulted}
        # A control unit has a language of its own, whatever the demo is looked at in.
        said = speech_of(FIRST).text
        lines = [
            (said(each["name"]), codes.get(each["id"], "")) for each in self.view()["board"]["positions"]
        ]
        drawn = screen.self_test(lines, f"test {number} done · sounder on", seed=self.name)
        self.photo(drawn, "screen")

    def photo(self, drawn: bytes, shows: str, position: str = "", unit: str = "") -> None:
        """Record a picture."""
        fields = {**self.log.keep_photo(drawn), "shows": shows, "position": position, "unit": unit}
        self.record({"kind": "photo_taken", "data": fields})

    def start(self, move: str, position: str = "") -> None:
        """Begin the best of the next moves of a kind, at a position if one is named."""
        self._begin(lambda offered, data: offered == move and position in ("", data["position"]))

    def start_exchange(self) -> None:
        """Begin the best exchange of sensors that sit on the vehicle, no spare among them."""
        on_board = set(self.sitting().values())
        self._begin(lambda offered, data: offered == "exchange" and on_board >= {*data["fitted"].values()})

    def best_move(self) -> str:
        """Return the kind of the move that the app puts first, "" when it offers none."""
        moves = self.view()["moves"]
        return moves[0]["move"] if moves else ""

    def guided(self, mix_up: bool = False) -> None:
        """Go through the steps of the move under way; with `mix_up`, the wrong one is held up once."""
        for _ in range(_MOST_STEPS):
            step = self.step()
            if step["id"] not in _GUIDED:
                return
            if step["form"] != "scan":
                self.tap()
                continue
            expects = step["expects"]
            if mix_up and step["id"] == "fit":
                self._hold_up_the_wrong_one(expects)
                mix_up = False
            self.scan(self.label_on(expects["unit"]) or self.take_label(), expects)
        raise StoryBroken(f"{self.name}: the move does not end")

    def repair(self, cause: str, segment: str) -> None:
        """Say that a cause was found and put right, and at which segment of its circuit."""
        data = {"cause": cause, "what": "repaired", "segment": segment}
        self.record({"kind": "circuit_repaired", "data": data})

    def scan(self, code: str, expects: dict, outcome: str = "ours") -> None:
        """Scan a label and record what the core makes of it."""
        text = self.log.label_text(code)
        host = self.log.base.partition("://")[2]
        answer = self.log.ask("scan", job=self.job, text=text, how="scanned", host=host, expects=expects)
        if answer["outcome"] != outcome:
            raise StoryBroken(f"{self.name}: {code} is {answer['outcome']}, not {outcome}")
        if answer["events"]:
            self.record(*answer["events"])

    def fit_new(self, serial: str) -> str:
        """Label a new sensor and begin to replace the bad one with it; returns the new one's id."""
        expects = self.step("replace")["expects"]
        code = self.take_label()
        unit = identity("u", code)
        self.scan(code, {"do": "new"})
        added = {"unit": unit, "part": expects["part"], "serial": serial, "code": code,
                 "how": "scanned", "place": "out"}  # fmt: skip
        place = expects["position"]
        move = {"move": "replace", "fitted": {place: unit}, "position": place, "reason": ""}
        self.record({"kind": "unit_added", "data": added}, {"kind": "move_started", "data": move})
        return unit

    # --- what is where

    def sitting(self) -> dict[str, str]:
        """Return position -> unit of what sits on the vehicle."""
        board = self.view()["board"]["positions"]
        return {each["id"]: each["unit"]["id"] for each in board if each["unit"]}

    def label_on(self, unit: str) -> str:
        """Return the code on a unit, "" while it has none."""
        code: str = self.log.ask("unit", unit=unit)["shown"].replace("-", "")
        return code

    def _begin(self, wanted: Callable[[str, dict], bool]) -> None:
        for offered in self.view()["moves"]:
            if offered["events"] and wanted(offered["move"], offered["events"][0]["data"]):
                self.record(*offered["events"])
                return
        raise StoryBroken(f"{self.name}: no such move is offered")

    def _hold_up_the_wrong_one(self, expects: dict) -> None:
        """Pick up the other sensor that lies on the ground."""
        others = [each["id"] for each in self.view()["out"] if each["id"] != expects["unit"]]
        self.scan(self.label_on(others[0]), expects, "stop")
