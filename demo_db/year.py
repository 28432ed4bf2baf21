"""A year of jobs before the demo's own: enough that what they teach fills its page.

Vehicles of a few models come in, one a week; some come back. Each job goes the plain way (`yard`), through
the core's check as everything of the demo does.
"""

from demo_db.dice import Dice
from demo_db.dice import identity
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.yard import Hands
from demo_db.yard import Truth
from demo_db.yard import Visit
from demo_db.yard import Worker

YEARS_PHONE, COUNTERS_PHONE = "d3f6b8120ce94a75d", "d7a1c90e44b2f5386"
JOBS = 48
_LABELS = 200
_DAY = 86_400_000
_HOUR = 3_600_000
_COLOURS = ("Blue", "Grey", "Red", "White", "Green", "Silver")
# What it is, where its sensors sit, its part, and how its number begins: one model shares the first eight.
_MODELS = (
    ("estate", "rear-4", "ST-0417", "00SWAPES0EX"),
    ("van", "rear-4", "ST-0522", "00SWAPVA0VX"),
    ("hatchback", "both-8", "ST-0880", "00SWAPHA0HX"),
)
_COMPLAINTS = ("Long tone in reverse, then nothing", "Parking aid off", "Beeps with nothing behind")
_AGREED = "Agreed on the telephone"
# A yard whose wiring suffers more than is assumed, and whose hands take their time.
_TRUTH = Truth(circuit=0.018, blocked=0.02)
_HANDS = Hands(reach=5.2, test=1.8)


def tell(log: Log, phone: Phone, before: int) -> None:
    """Record the jobs of the year that ends before a moment, and what became of the sensors they returned."""
    dice = Dice("year")
    clerk = Phone(COUNTERS_PHONE, "Jo")
    roll = log.more_labels(_LABELS)
    layouts = {each["id"]: each["positions"] for each in log.ask("layouts")}
    vehicles: list[tuple[dict, tuple[str, str, str, str]]] = []
    for number in range(JOBS):
        at = before - (JOBS - number) * 7 * _DAY + dice.whole(0, 5) * _HOUR
        comes_back = bool(vehicles) and dice.whole(1, 8) == 1
        if not comes_back:
            vehicles.append(_vehicle(number, dice))
        vehicle, (_, layout, part, _) = vehicles[-1] if not comes_back else dice.pick(vehicles[-6:])
        job = identity("j", f"year {number}")
        visit = Visit(job, vehicle, dice.pick(_COMPLAINTS), layout, layouts[layout], part)
        held = log.ask("vehicle", vehicle=vehicle["id"])["positions"] if comes_back else []
        sits = {each["id"]: each["unit"] for each in held}
        labelled = [each["unit"] for each in held if log.ask("unit", unit=each["unit"])["code"]]
        worker = Worker(visit, _TRUTH, _HANDS, dice, roll.pop, sits, labelled)
        for after, drafts in worker.work():
            at += after
            log.record(phone, job, at, drafts)
        for unit in _given_back(worker):
            if dice.whole(1, 2) == 1:
                _decide(log, clerk, unit, part, at + dice.whole(20, 60) * _HOUR, dice)


def _given_back(worker: Worker) -> list[str]:
    drafts = [draft for _, drafts in worker.steps for draft in drafts if draft["kind"] == "unit_moved"]
    return [draft["data"]["unit"] for draft in drafts if draft["data"]["place"] == "counter"]


def _decide(log: Log, clerk: Phone, unit: str, part: str, at: int, dice: Dice) -> None:
    """Decide on a returned sensor; now and then another part comes with its label.

    Nobody took pictures in that year, so a hold is what is proposed, and often agreed otherwise.
    """
    is_other = dice.whole(1, 5) == 1
    read = {"part": "ST-0999", "compared": "other"} if is_other else {"part": part, "compared": "same"}
    asked = {"how": "scanned", "read": read, "now": at, "window_days": 0, "record": []}
    answer = log.ask("counter", text=log.ask("unit", unit=unit)["code"], **asked)
    agreed = answer["proposed"] == "hold" and dice.whole(1, 3) > 1
    decision, overrule = ("accept", _AGREED) if agreed else (answer["proposed"], "")
    chosen = next(each for each in answer["decisions"] if each["decision"] == decision)
    said = {"signed": clerk.actor, "overrule": overrule}
    decided = [{**each, "data": {**each["data"], **said}} for each in chosen["events"]]
    log.record(clerk, None, at, [answer["received"], *decided])


def _vehicle(number: int, dice: Dice) -> tuple[dict, tuple[str, str, str, str]]:
    model = dice.pick(_MODELS)
    name = f"{dice.pick(_COLOURS)} {model[0]} {number + 1}"
    return {"id": identity("v", f"year {number}"), "name": name, "vin": f"{model[3]}Y{number:05}"}, model
