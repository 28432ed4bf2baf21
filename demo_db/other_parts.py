"""Three jobs of the demo on other sorts of part, each from open to close: coils, wheel senders, loudspeakers.

Their labels come off the other end of the roll, so that those of the parking sensors stay what they are.
"""

from demo_db import cars
from demo_db.dice import identity
from demo_db.log import Log
from demo_db.log import Phone
from demo_db.work import Work

COILS = identity("j", "coils")
WHEELS = identity("j", "wheels")
DOORS = identity("j", "doors")


def coils(log: Log, phone: Phone, at: int) -> None:
    """Find the coil of the second cylinder by moving it, and fit a new one."""
    work = Work(log, phone, cars.grey_saloon(), "coils", log.last_label)
    bad = work.car.first_unit("cylinder-2")
    work.car.bad_units = [bad]
    work.open(at, "Shakes at idle, the engine lamp flashed on the motorway", "ignition-coil/row-4")
    _find(work)
    _fit_new(work, "IC-2291", bad)


def wheels(log: Log, phone: Phone, at: int) -> None:
    """Let the fault stay at the rear left wheel: its ring is cracked, not its sender."""
    work = Work(log, phone, cars.green_pickup(), "wheels", log.last_label)
    place = "wheel-rear-left"
    work.car.bad_circuits = [place]
    work.open(at, "The anti-lock lamp comes on after a few metres", "wheel-sender/wheels-4")
    _find(work)
    work.choose(lambda choice: choice["reads"] == "good", "wiring.measure")
    work.choose(lambda choice: choice["reads"] == "bad", "wiring.measure")
    work.car.bad_circuits = []
    work.repair(f"circuit:{place}", "ring")
    work.choose(lambda choice: choice["reads"] == "good", "measure.again")
    _end(work)


def doors(log: Log, phone: Phone, at: int) -> None:
    """Find the loudspeaker of the rear right door by ear, and fit a new one."""
    work = Work(log, phone, cars.black_estate(), "doors", log.last_label)
    bad = work.car.first_unit("door-rear-right")
    work.car.bad_units = [bad]
    work.open(at, "No sound from the back on the right", "door-speaker/doors-4")
    _find(work)
    _fit_new(work, "DL-0846", bad)


def _find(work: Work) -> None:
    """Test, exchange and test again, without pictures of the places."""
    work.begin()
    work.self_test()
    work.tap("photo", which="second")
    work.start_exchange()
    work.guided()
    work.self_test()


def _fit_new(work: Work, serial: str, bad: str) -> None:
    """Fit a new one, prove it, hand the bad one to the counter and close."""
    work.fit_new(serial)
    work.guided()
    _prove(work)
    step = work.step("home")
    work.scan(work.label_on(bad), step["expects"])
    work.choose(
        lambda choice: "counter" in [draft["data"].get("place") for draft in choice["events"]], "home"
    )
    _close(work)


def _end(work: Work) -> None:
    _prove(work)
    _close(work)


def _prove(work: Work) -> None:
    """Run clean tests until the app asks for the check in use, and make that."""
    work.guided()
    while work.step()["form"] == "test":
        work.self_test()
    work.guided()
    work.tap("walk")


def _close(work: Work) -> None:
    """Leave good parts where the exchange put them, and close."""
    while (step := work.step())["id"] != "done":
        if step["action"]:
            work.tap()
        else:
            work.choose(lambda choice: True)
