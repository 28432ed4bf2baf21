"""The jobs of the demo, told in the order in which they happened, three weeks in all.

A story that the core would lead elsewhere raises StoryBroken: then the story or the core is wrong,
and a test says so before anyone sees a demo that lies.
"""

from demo_db import cars
from demo_db import other_parts
from demo_db import pictures
from demo_db.cars import Car
from demo_db.dice import identity
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.work import Work

START = 1_772_434_800_000  # Monday 2 March 2026, 07:00 UTC; fixed, so that every build is the same
_MINUTE = 60_000
_DAY = 24 * 60 * _MINUTE

MARAS_PHONE = "d5a1d0c3e7b24f608"
OLD_PHONE = "d0b7e24c91f6a3d85"
_LAG = 4 * _MINUTE  # the older phone's clock is late; the order of events does not hang on clocks

CLOSED = identity("j", "closed")
COMES_AND_GOES = identity("j", "comes and goes")
STAYS = identity("j", "stays")
TWO_FAULTS = identity("j", "two faults")
FOLLOWS = identity("j", "follows")


def tell(log: Log, start: int = START) -> None:
    """Record the whole scenario."""
    mara, ivo = Phone(MARAS_PHONE, "Mara"), Phone(OLD_PHONE, "Ivo", _LAG)
    estate, van, hatchback = cars.blue_estate(), cars.white_van(), cars.red_hatchback()
    _spares(log, ivo, start, (estate, estate, hatchback))
    _closed(Work(log, mara, estate, "closed"), start + 90 * _MINUTE)
    other_parts.coils(log, mara, start + 4 * _DAY + 200 * _MINUTE)
    other_parts.doors(log, ivo, start + 7 * _DAY + 90 * _MINUTE)
    other_parts.wheels(log, mara, start + 9 * _DAY + 310 * _MINUTE)
    comes_and_goes = Work(log, ivo, van, "comes and goes")
    _comes_and_goes(comes_and_goes, start + 16 * _DAY + 450 * _MINUTE)
    _next_morning(comes_and_goes, mara, start + 17 * _DAY + 40 * _MINUTE)
    _stays(Work(log, mara, van, "stays"), start + 17 * _DAY + 120 * _MINUTE)
    _two_faults(Work(log, mara, hatchback, "two faults"), ivo, start + 18 * _DAY + 75 * _MINUTE)
    _follows(Work(log, mara, estate, "follows"), start + 18 * _DAY + 380 * _MINUTE)


def _spares(log: Log, phone: Phone, at: int, fit: tuple[Car, ...]) -> None:
    """Put known-good sensors into stock, each with a label, before any job."""
    for number, car in enumerate(fit):
        code = log.fresh_label()
        spare = {"unit": identity("u", code), "part": car.part, "serial": f"S-{2104 + 37 * number}",
                 "code": code, "how": "scanned", "place": "stock"}  # fmt: skip
        log.record(phone, None, at + number * _MINUTE, [{"kind": "unit_added", "data": spare}])


def _closed(work: Work, at: int) -> None:
    """Take the estate's first fault from complaint to close, with a slip and a stopped mix-up."""
    bad = work.car.first_unit("rear-right-outer")
    work.car.bad_units = [bad]
    work.open(at, "Long tone when reverse goes in, then the parking aid is off", "rear-4")
    work.begin()
    slip = work.self_test(faulted=["rear-left-outer"], codes=[work.car.code("rear-left-outer")])
    undone = {"device": slip.device, "seq": slip.seq, "reason": "Tapped the wrong side; it is the right one."}
    work.record({"kind": "corrected", "data": undone})
    work.self_test(photo=True)
    work.photograph_positions()
    work.start_exchange()
    work.guided(mix_up=True)
    work.self_test(photo=True)
    work.fit_new("S-7718")
    work.guided()
    work.self_test(photo=True)
    work.tap("walk")
    step = work.step("home")
    code = work.label_on(bad)
    work.photo(pictures.pulled(work.car.finish, code, work.log.base, seed=work.name), "unit", unit=bad)
    work.scan(code, step["expects"])
    work.choose(
        lambda choice: "counter" in [draft["data"].get("place") for draft in choice["events"]], "home"
    )


def _comes_and_goes(work: Work, at: int) -> None:
    """Find mud on one of the van's sensors, clean it and begin to count clean tests."""
    muddy = "rear-left-inner"
    work.car.blocked = [muddy]
    work.open(at, "Beeps now and then with nothing behind, mostly after rain", "rear-4")
    work.begin(lamp="as_it_should", seen={muddy: "dirt"})
    work.self_test(photo=True, came_and_went=True)
    work.photograph_positions(dirty=muddy)
    work.start("clean", muddy)
    work.tap("clean")
    work.car.blocked = []
    work.self_test()
    for _ in range(2):
        work.wait(11)
        work.test_again()


def _next_morning(work: Work, phone: Phone, at: int) -> None:
    """Go on with the other phone until the app itself asks for tests and nothing else.

    One test runs without its sounder being heard, and does not count.
    """
    work.phone = phone
    work.at = at
    work.test_again(heard=False, note="A lorry idled next to the van.")
    work.test_again(photo=True)
    while work.best_move() not in ("retest", ""):
        work.wait(8)
        work.test_again()


def _stays(work: Work, at: int) -> None:
    """Show that the van's front fault stays where it is, and begin the wiring checks."""
    work.car.bad_circuits = ["front-left-inner"]
    work.open(at, "Front parking aid off since the bumper was repaired", "front-4")
    work.begin(seen={"front-left-inner": "repaired_bumper"})
    work.self_test(photo=True)
    work.photograph_positions()
    work.start_exchange()
    work.guided()
    work.self_test(photo=True)
    work.photo(pictures.plug(seed=work.name), "work", position="front-left-inner")
    for _ in range(2):
        work.choose(lambda choice: choice["reads"] == "good", "wiring.measure")


def _two_faults(work: Work, helper: Phone, at: int) -> None:
    """Test the hatchback's eight sensors: two faults at once; the helper takes the pictures."""
    faults = ("front-left-inner", "rear-right-outer")
    work.car.bad_units = [work.car.first_unit(position) for position in faults]
    work.open(at, "Warning in the display, no tone in front or behind", "both-8")
    work.begin()
    work.self_test(photo=True)
    work.phone = helper
    work.photograph_positions()


def _follows(work: Work, at: int) -> None:
    """Let the estate come back with another fault that follows its sensor."""
    bad = work.car.first_unit("rear-left-inner")
    work.car.bad_units = [bad]
    work.open(at, "Parking aid off again, three weeks after the last repair", "rear-4")
    work.begin()
    work.self_test(photo=True)
    work.photograph_positions()
    work.start_exchange()
    work.guided()
    work.self_test(photo=True)
    drawn = pictures.pulled(work.car.finish, work.label_on(bad), work.log.base, seed=work.name)
    work.photo(drawn, "unit", unit=bad)
