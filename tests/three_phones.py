"""Three people with phones on the same jobs: two on line, the third off line for long stretches.

Everybody does what the own phone's step allows, mostly what an honest person does. The phones are
`ModelPhone`s: the real core, the real protocol, the real server. `Workshop.work` goes on for so many steps,
`Workshop.heal` lets all send and fetch what is left; then `Workshop.screens` says what each of them shows.
"""

import random
from contextlib import closing
from pathlib import Path

from server.app import Config
from server.app import create_app
from server.clock import now_ms
from server.core.log import canon
from server.phones.pairing import make_link
from server.storage import DataFolder
from tests.core.driver import Driver
from tests.core.walker import CODES_SEED
from tests.core.walker import Walker
from tests.model_phone import ModelPhone
from tests.server.conftest import SMALL_APP
from tests.server.phone import BASE
from tests.server.phone import Phone

ON_LINE, OFF_LINE = (0, 1), 2
MOST_JOBS = 3
MOST_ROUNDS = 400
HONEST, OTHER_WAY = 0.75, 0.06
CORRECTS, READS_NUMBERS = 0.04, 0.03  # in place of what the step asks for
HEARS = 0.8  # of the other phone, before the next step
COMES_BACK = 0.02  # the third, at a step
MOST_AWAY = 120


class Hands(Walker):
    """A person who works at a phone; what was stuck on which sensor, and what is broken, all know alike."""

    def __init__(self, phone: ModelPhone, world: dict):
        """Take a phone; `world` is shared by all hands."""
        self.phone = phone
        self.driver = Driver(self._ask, phone.device)
        self.driver.force = self._record
        self.driver.codes = self.driver.core("codes", random=CODES_SEED, count=200)
        self.driver.labels = world["labels"]
        self.faults = world["faults"]
        self.story = world["story"]
        self.world = world

    @property
    def added(self):
        """Count the new units of all: two phones never make up the same one."""
        return self.world["added"]

    @added.setter
    def added(self, count):
        self.world["added"] = count

    def turns_to(self, job: str) -> None:
        """Look at a job."""
        self.phone.look()
        self.driver.job = job
        self.view = self.driver.view()

    def goes_on(self) -> None:
        """Take a job up again that rests."""
        if self.view["paused"]:
            self._record("job_resumed")
            self.turns_to(self.driver.job)

    def settles(self, choose) -> None:
        """Read a label at the card, or none, and tap the answer that `choose` takes."""
        step = self.view["step"]
        offered = step["choices"]
        if step["expects"]["units"]:
            code = self.driver.labels[choose(step["expects"]["units"])]
            said = self.driver.core("scan", job=self.driver.job, text=code, how="scanned")
            offered = said["choices"] + said["others"]
        chosen = choose(offered)
        self.story.append(f"{self.phone.device[-1]} {self.driver.job} settles by {canon.dumps(chosen)}")
        for draft in chosen["events"]:
            self.phone.record(draft["kind"], draft["data"], chosen["job"])
        self.turns_to(self.driver.job)

    def corrects(self, choose) -> bool:
        """Enter anew what a test showed, or take it back; False where there is none, or it may not be."""
        tests = [
            entry for entry in self.view["history"] if entry["kind"] == "test_run" and entry["may_right"]
        ]
        if not tests:
            return False
        entry = choose(tests)
        of = {"device": entry["device"], "seq": entry["seq"], "reason": "slip", "over": entry["over"]}
        asked = self.driver.core("entry", job=self.driver.job, device=entry["device"], seq=entry["seq"])
        faults = next(each for each in asked["fields"] if each["name"] == "faulted")
        place = choose(faults["options"])["value"]
        said = {"kind": asked["kind"], "data": {**asked["data"], "faulted": [place]}}
        kind, data = choose([("put_right", {**of, "entry": said})] * 3 + [("corrected", of)])
        if self.driver.check({"kind": kind, "data": data}):
            return False
        self.story.append(f"{self.phone.device[-1]} {self.driver.job} corrects by {canon.dumps(data)}")
        self._record(kind, **data)
        return True

    def reads_numbers(self, choose) -> bool:
        """Note what is printed on a sensor of the job, rightly or not; False where none was handled."""
        if not self.view["units"]:
            return False
        unit = choose(self.view["units"])
        read = {"part": choose(["PS-1", "PS-2", "ps 2"]), "serial": choose(["", "77", "78"])}
        self.story.append(f"{self.phone.device[-1]} {self.driver.job} reads {canon.dumps(read)}")
        self._record("part_noted", unit=unit["id"], over=unit["noted"], **read)
        return True

    def begins(self, number: int) -> None:
        """Open a job on a vehicle of its own."""
        self.driver.job = f"j{number:012x}"
        layouts = {each["id"]: each for each in self.driver.core("layouts")}
        self._record(
            "job_opened",
            vehicle={"id": f"v{number}", "name": f"Estate {number}", "vin": ""},
            complaint="beeps",
            layout="rear-4",
            part="PS-1",
            positions=layouts["rear-4"]["positions"],
        )
        self.view = self.driver.view()

    def open_jobs(self) -> list[str]:
        """Return the jobs that are open as far as this phone knows."""
        self.phone.look()
        return sorted(each["id"] for each in self.driver.core("jobs") if not each["closed"])

    def do(self, answer) -> bool:
        """Do it; False where this phone refuses it, for somebody else was faster."""
        drafts = answer.drafts
        if answer.scan:
            said = self.driver.core("scan", job=self.driver.job, text=answer.scan, how="scanned")
            drafts = said.get("events", [])
        if not drafts or self.driver.check(*drafts):
            return False
        self.story.append(
            f"{self.phone.device[-1]} {self.driver.job} {self.view['step']['id']}: {answer.name}"
        )
        for draft in drafts:
            self._take_effect(draft)
            self._record(draft["kind"], **draft["data"])
        return True

    def _shows(self, off):
        vehicle = self.view["vehicle"]["id"]
        state = self.driver.core("state")
        holds = state["vehicles"][vehicle]["holds"]
        places = [each["id"] for each in state["jobs"][self.driver.job]["positions"]]
        found = []
        for place in places:
            causes = (f"circuit:{vehicle}.{place}", f"unit:{holds.get(place)}")
            if place in off or not holds.get(place) or any(cause in self.faults for cause in causes):
                found.append(place)
        return found

    def _take_effect(self, draft):
        if draft["kind"] == "circuit_repaired":
            place = draft["data"]["cause"].partition(":")[2].partition("#")[0]
            self.faults.pop(f"circuit:{self.view['vehicle']['id']}.{place}", None)
        elif draft["kind"] == "unit_added":
            self.added += 1

    def _record(self, kind, **data):
        if kind == "test_run":
            data["knows"] = self.view["knows"]  # the form of the app says so
        self.phone.record(kind, data, self.driver.job)
        self.phone.look()

    def _ask(self, op, **arguments):
        return self.phone.ask_core({"op": op, **arguments})


class Workshop:
    """The server, three phones, and what is true of the cars."""

    def __init__(self, scratch: Path, seed: int):
        """Pair three phones with a new server."""
        for name, text in SMALL_APP.items():
            (scratch / "static" / name).parent.mkdir(parents=True, exist_ok=True)
            (scratch / "static" / name).write_text(text)
        self.dice = random.Random(seed)
        self.folder = DataFolder(scratch / "data")
        self.app = create_app(Config(scratch / "data", BASE, scratch / "static"))
        self.world = {"labels": {}, "faults": {}, "story": [], "added": 0}
        self.hands = []
        with closing(self.folder.open()) as db:
            for number in range(3):
                paired = Phone(self.app, f"d{number + 1:016x}")
                assert paired.pair_by(make_link(db, BASE, now_ms())).status_code == 200
                self.hands.append(Hands(ModelPhone(number + 1, paired.client), self.world))
        self.jobs = 0
        self._away = 0

    def work(self, steps: int) -> None:
        """Do so many steps, each at one of the phones."""
        done = 0
        while done < steps:
            who = self.dice.randrange(3)
            done += self._step(self.hands[who])
            if who in ON_LINE:
                self.exchange(who)
            for other in ON_LINE:
                if other != who and self.dice.random() < HEARS:
                    self.exchange(other)
            self._away += 1
            if self.dice.random() < COMES_BACK or self._away > MOST_AWAY:
                self._away = 0
                self.exchange(OFF_LINE)

    def exchange(self, who: int) -> None:
        """Let a phone send and fetch until nothing is left."""
        self.hands[who].phone.sync_all(MOST_ROUNDS)

    def heal(self) -> None:
        """Let everybody send all, then fetch all."""
        for _ in range(2):
            for who in range(3):
                self.exchange(who)

    def screens(self, who: int) -> dict[str, str]:
        """Return what a phone shows, screen by screen."""
        hands = self.hands[who]
        hands.phone.look()
        ask = hands.driver.core
        shown = {"jobs": ask("jobs"), "units": ask("units"), "vehicles": ask("vehicles")}
        for job in [each["id"] for each in shown["jobs"]]:
            shown[f"job {job}"] = ask("job", job=job)
            shown[f"evidence {job}"] = ask("evidence", job=job)
            shown[f"report {job}"] = ask("report", job=job)
            for unit in shown[f"job {job}"]["units"]:
                shown[f"unit {unit['id']}"] = ask("unit", unit=unit["id"])
        return {name: canon.dumps(value) for name, value in shown.items()}

    def _step(self, hands: Hands) -> int:
        """Do one thing at a phone; 0 where nothing was done."""
        dice = self.dice
        jobs = hands.open_jobs()
        if not jobs or (self.jobs < MOST_JOBS and dice.random() < 0.03):
            return self._begin(hands)
        stays = hands.driver.job in jobs and dice.random() < 0.8
        hands.turns_to(hands.driver.job if stays else dice.choice(jobs))
        if dice.random() < CORRECTS and hands.corrects(dice.choice):
            return 1
        if dice.random() < READS_NUMBERS and hands.reads_numbers(dice.choice):
            return 1
        answers = hands.answers()
        ways = hands.ways()
        if ways and (not answers or dice.random() < OTHER_WAY):
            return hands.do(dice.choice(ways))
        return hands.do(answers[0] if dice.random() < HONEST else dice.choice(answers))

    def _begin(self, hands: Hands) -> int:
        self.jobs += 1
        place = self.dice.choice(["left-outer", "left-inner", "right-inner", "right-outer"])
        self.world["faults"][
            self.dice.choice([f"unit:v{self.jobs}.rear-{place}", f"circuit:v{self.jobs}.rear-{place}"])
        ] = True
        hands.begins(self.jobs)
        return 1
