"""The story of the kept data: the demo of commit 2a35a3b, and what a demo does not show.

It runs in a checkout of that commit (make_at_2a35a3b.py puts it there), on the modules of then. Beyond the
demo: two vehicles without a VIN, sensors that got mixed up, another part fitted with a reason, assumptions
changed, wiring measured and repaired, a label torn, a move given up, a job closed and opened again by a phone
that did not know, sensors in dispute, a fact of a newer app, and returns accepted, held, refused, overruled.
"""

import io

from PIL import Image

from demo_db import stories
from demo_db.cars import Car
from demo_db.dice import identity
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.pictures import Finish
from demo_db.work import Work

CLERKS_PHONE = "d3f08c21b6a97e451"
NEWER_PHONE = "d77aa10c39be2f684"
_MINUTE = 60_000
_DAY = 24 * 60 * _MINUTE
_TINY = (48, 36)


def told(base: str, printed: list[str]) -> Log:
    """Return the log of the whole story; `printed` are codes of labels that the server printed."""
    log = _SmallPictures(base)
    log._codes = printed + log._codes
    stories.tell(log)
    start = stories.START + 19 * _DAY
    mara, ivo = Phone(stories.MARAS_PHONE, "Mara"), Phone(stories.OLD_PHONE, "Ivo", 4 * _MINUTE)
    for phone in (mara, ivo):
        mine = [entry for entry in log.entries if entry["event"]["device"] == phone.device]
        phone.seq, phone.prev = mine[-1]["event"]["seq"], mine[-1]["hash"]
    clerk = _Clerk(log, Phone(CLERKS_PHONE, "Jo"))
    estates = log.ask("unit", unit=_unit_of("Blue estate", "rear-right-outer"))["shown"]
    clerk.receives(start, estates, "accept")
    mixed = _mixed_up(Work(log, mara, _pickup(), "mixed up"), ivo, start + 60 * _MINUTE)
    other_part = _another_part(Work(log, ivo, _saloon(), "another part"), mara, start + 400 * _MINUTE)
    clerk.receives(start + _DAY, mixed, "hold")
    clerk.receives(start + _DAY + 9 * _MINUTE, other_part, "hold", read={"part": "ST-0999", "serial": ""})
    clerk.decides_again(start + _DAY + 30 * _MINUTE, other_part, "refuse")
    _disputed(log, mara, ivo, start + 2 * _DAY)
    newer = Phone(NEWER_PHONE, "Lin")
    weather = {"kind": "weather_noted", "data": {"degrees": 4, "note": "Rain since noon, ä€😀"}}
    _unasked(log, newer, stories.FOLLOWS, start + 2 * _DAY + 90 * _MINUTE, weather)
    return log


class _SmallPictures(Log):
    """Keeps a small copy of each picture, for the kept data is to be small."""

    def keep_photo(self, data: bytes) -> dict:
        small = io.BytesIO()
        Image.open(io.BytesIO(data)).resize(_TINY).save(small, "JPEG", quality=30)
        return super().keep_photo(small.getvalue())


def _pickup() -> Car:
    finish = Finish(bumper=(60, 96, 70), body=(54, 90, 64), painted=True, dirt=0.4)
    return Car("Green pickup", "", "ST-0631", finish)


def _saloon() -> Car:
    finish = Finish(bumper=(150, 152, 156), body=(146, 148, 152), painted=True, dirt=0.1)
    return Car("Silver saloon", "", "ST-0417", finish)


def _unit_of(car: str, position: str) -> str:
    return f"{identity('v', car)}.{position}"


def _mixed_up(work: Work, helper: Phone, at: int) -> str:
    """Lose track of two sensors, tell them apart by tests, replace the bad one; returns its label."""
    work.car.bad_units = [work.car.first_unit("rear-right-outer")]
    work.open(at, "No tone at all, lamp stays dark in reverse", "rear-4")
    work.begin()
    work.self_test(photo=True)
    work.photograph_positions()
    _mix_up(work)
    while (step := work.step())["id"] == "mixed.label":
        work.scan(work.log.fresh_label(), step["expects"])
    work.tap("mixed.fit")
    work.guided()
    bodies = [unit for unit in work.sitting().values() if "." not in unit]
    work.car.bad_units = [bodies[0]]
    work.self_test()
    work.self_test()
    bad = work.label_on(bodies[0])
    _begin_replacing(work, bodies[0], work.car.part)
    work.guided()
    for _ in range(12):
        if work.step()["form"] == "test":
            work.self_test()
    _end(work, bad)
    # This phone was away: it does not know of the closing, and opens the job again.
    _unasked(work.log, helper, work.job, work.at + 5 * _MINUTE, _clean_test())
    work.tap("close")
    return bad


def _another_part(work: Work, helper: Phone, at: int) -> str:
    """Repair a wire, then replace a bad sensor by one of another part number; returns its label."""
    bad = work.car.first_unit("rear-left-outer")
    work.car.bad_units = [bad]
    work.open(at, "Beeps without reason when it rains", "rear-4")
    work.begin(seen={"rear-left-outer": "paint"})
    work.record({"kind": "part_noted", "data": {"unit": bad, "part": "ST-0417", "serial": "S-5530"}})
    work.record({"kind": "reach_set", "data": {"position": "rear-left-outer", "minutes": 7}})
    prices = {"labour_per_hour": 6500, "part_price": 4800, "wrong_purchase": 0}
    work.record({"kind": "money_set", "data": prices})
    work.record({"kind": "rates_set", "data": {"rates_ppm": {"circuit": 20_000}, "confidence_ppm": 900_000}})
    work.self_test(photo=True)
    work.record({"kind": "code_weight_set", "data": {"position": "rear-left-outer", "on": False}})
    work.photograph_positions()
    work.start_exchange()
    work.record({"kind": "move_dropped", "data": {"reason": "The customer wants the wire looked at first."}})
    for check, value, reads in (("connector", "", "good"), ("signal", "0.2 V", "bad")):
        data = {"position": "rear-left-outer", "check": check, "value": value, "reads": reads}
        work.record({"kind": "circuit_measured", "data": data})
    repaired = {"cause": "circuit:rear-left-outer", "what": "A chafed wire, taped"}
    work.record({"kind": "circuit_repaired", "data": repaired})
    work.self_test()
    bodies = _mix_up(work)
    work.scan(work.label_on(bad), work.step()["expects"])
    # The other phone had not heard that they were told apart, and names one as it lay there.
    serial = {"unit": bodies[0], "part": "ST-0417", "serial": "S-5531"}
    _unasked(work.log, helper, work.job, work.at + _MINUTE, {"kind": "part_noted", "data": serial})
    work.guided()
    torn = work.label_on(bad)
    work.record({"kind": "label_voided", "data": {"unit": bad, "code": torn, "reason": "torn"}})
    work.record(
        {"kind": "unit_labelled", "data": {"unit": bad, "code": work.log.fresh_label(), "how": "typed"}}
    )
    work.self_test()
    work.record({"kind": "comes_and_goes_set", "data": {"value": True}})
    work.phone = helper
    work.test_again()
    new, place = _begin_replacing(work, bad, "ST-0418")
    while (step := work.step())["id"] != "fit":
        work.scan(work.label_on(step["expects"]["unit"]), step["expects"])
    reason = "Superseded by the maker, same connector."
    fitted = {"unit": new, "position": place, "how": "scanned", "override": reason}
    work.record({"kind": "unit_fitted", "data": fitted})
    work.guided()
    for _ in range(12):
        if work.step()["form"] == "test":
            work.self_test()
    label = work.label_on(bad)
    _end(work, label)
    return label


def _mix_up(work: Work) -> list[str]:
    """Begin an exchange and lose track of what was pulled for it; returns what stands for each since."""
    work.start_exchange()
    moved = list(work.log.ask("state")["jobs"][work.job]["move"]["fitted"].values())
    while (step := work.step())["id"] == "pull":
        work.scan(work.label_on(step["expects"]["unit"]) or work.log.fresh_label(), step["expects"])
    work.record({"kind": "units_mixed", "data": {"units": moved, "note": "Both rolled off the bench."}})
    return list(work.log.ask("state")["mixed"][-1]["bodies"])


def _begin_replacing(work: Work, bad: str, part: str) -> tuple[str, str]:
    """Label a new sensor and begin to replace the bad one by it; returns its id and the position."""
    code = work.log.fresh_label()
    new = identity("u", code)
    place = next(place for place, unit in work.sitting().items() if unit == bad)
    added = {"unit": new, "part": part, "serial": "", "code": code, "how": "scanned", "place": "out"}
    move = {"move": "replace", "fitted": {place: new}, "position": place, "reason": ""}
    work.record({"kind": "unit_added", "data": added}, {"kind": "move_started", "data": move})
    return new, place


def _end(work: Work, label: str) -> None:
    """Go from a proven repair to the close, the bad sensor to the counter, the others left or at home."""
    for _ in range(20):
        step = work.step()
        if step["id"] == "done":
            return
        if step["id"] == "where_to":
            work.scan(label, step["expects"])
            work.choose(lambda choice: choice["events"][0]["data"]["place"] == "counter", how="scanned")
        else:
            work.tap()
    raise AssertionError(f"{work.name} does not close: {work.step()}")


def _clean_test() -> dict:
    data = {"heard": True, "faulted": [], "silent": [], "unplugged": [], "codes": [], "came_and_went": False,
            "note": "Once more before the customer came."}  # fmt: skip
    return {"kind": "test_run", "data": data}


def _disputed(log: Log, mara: Phone, ivo: Phone, at: int) -> None:
    """Let two phones move the same sensors: one dispute is settled by a scan, the other stays open."""
    one, other = [unit["id"] for unit in log.ask("units") if unit["where"] == "in your stock"][:2]
    for unit, settled in ((one, True), (other, False)):
        moved = {"unit": unit, "place": "out", "how": "scanned", "note": ""}
        log.record(mara, stories.STAYS, at, [{"kind": "unit_moved", "data": moved}])
        for phone, job, place in (
            (ivo, stories.COMES_AND_GOES, "rear-right-outer"),
            (mara, stories.STAYS, "front-right-outer"),
        ):
            fitted = {"unit": unit, "position": place, "how": "tapped", "override": "Trying it out."}
            _unasked(log, phone, job, at + _MINUTE, {"kind": "unit_fitted", "data": fitted})
        if settled:
            seen = {"unit": unit, "place": "out", "position": "", "how": "scanned"}
            _unasked(log, mara, stories.STAYS, at + 9 * _MINUTE, {"kind": "unit_seen", "data": seen})


def _unasked(log: Log, phone: Phone, job: str, at: int, draft: dict) -> None:
    """Fold a fact without asking whether a rule stands against it, as a server does with what arrives."""
    entry = log._chained(phone, job, at, draft)
    log.ask("add", events=[entry])
    log.entries.append(entry)


class _Clerk:
    """The phone at the parts counter."""

    def __init__(self, log: Log, phone: Phone):
        self.log = log
        self.phone = phone

    def receives(self, at: int, label: str, decision: str, read: dict | None = None) -> None:
        """Take a sensor in hand and decide."""
        answer = self._asked(at, read, text=self.log.label_text(label.replace("-", "")), how="scanned")
        self._decides(at, [answer["received"]], answer, decision)

    def decides_again(self, at: int, label: str, decision: str) -> None:
        """Decide on a sensor that waits."""
        unit = self.log.ask("unit", code=label)["id"]
        assert unit in str(self.log.ask("waiting"))
        answer = self._asked(at, None, unit=unit, how="")
        self._decides(at, [], answer, decision)

    def _asked(self, at: int, read: dict | None, **which) -> dict:
        host = self.log.base.partition("://")[2]
        return self.log.ask("counter", now=at, host=host, read=read, window_days=30, record=[], **which)

    def _decides(self, at: int, before: list[dict], answer: dict, decision: str) -> None:
        chosen = next(each for each in answer["decisions"] if each["decision"] == decision)
        overrule = "" if decision == answer["proposed"] else "Talked it over with the workshop."
        drafts = [{**each, "data": {**each["data"], "signed": "Jo", "overrule": overrule}}
                  for each in chosen["events"]]  # fmt: skip
        self.log.record(self.phone, None, at, before + drafts)
