"""What the figures offer to go by: enough jobs, both values said, taken by an entry of the yard, and back."""

from demo_db.yard import Truth
from tests.made_up_yard import Yard
from tests.made_up_yard import receive
from tests.server.phone import entry_after

WIRING = Truth(circuit=0.05)


def fill(db, count, truth=None):
    yard = Yard("offer", count, truth)
    receive(db, yard.entries)
    return yard


def record(db, phone, choice):
    """Takes an offer as a phone does."""
    for draft in choice["events"]:
        entry = entry_after(phone.entries, phone.device, draft["kind"], draft["data"], draft["job"])
        phone.entries.append(entry)
    phone.synced()


def test_nothing_is_offered_before_there_are_ten_jobs(phone, db):
    fill(db, 9)

    told = phone.get("/api/lessons/offer").get_json()

    assert told["choices"] == []


def test_what_differs_is_said_and_both_values_stand_with_the_number_of_jobs(new_phone, db):
    fill(db, 40, WIRING)
    phone = new_phone("d00000000000000bb")

    told = phone.get("/api/lessons/offer").get_json()

    assert told["says"].startswith("Your jobs say something else than the default of:")
    assert "wiring faults" in told["says"]
    wiring = told["rows"][1]
    assert "Default 0.5 %" in wiring["note"]
    assert wiring["band"]["mark"] == 5000
    rates = told["choices"][0]["events"][0]
    assert (rates["kind"], rates["job"], rates["data"]["jobs"]) == ("rates_learned", None, 40)
    assert rates["data"]["rates_ppm"]["circuit"] > 10_000
    assert set(rates["data"]["doubts_x100"].values()) >= {300}
    assert all(150 <= each <= 300 for each in rates["data"]["doubts_x100"].values())


def test_that_faults_show_more_often_than_the_default_is_taken_as_it_is(new_phone, db):
    fill(db, 40, Truth(shows=1.0))

    told = new_phone("d00000000000000bb").get("/api/lessons/offer").get_json()

    assert 950_000 < told["choices"][0]["events"][0]["data"]["rates_ppm"]["shows"] < 1_000_000
    assert "how often a fault shows" in str(told["says"])


def test_what_was_taken_is_recorded_offered_no_more_and_can_be_taken_back(new_phone, db):
    fill(db, 40, WIRING)
    phone = new_phone("d00000000000000bb")
    before = phone.get("/api/lessons/offer").get_json()
    assert [each["events"][0]["kind"] for each in before["choices"]] == ["rates_learned", "minutes_learned"]

    for choice in before["choices"]:
        record(db, phone, choice)
    taken = phone.get("/api/lessons/offer").get_json()
    record(db, phone, taken["taken"][0])
    back = phone.get("/api/lessons/offer").get_json()

    assert taken["choices"] == []
    assert [each["says"] for each in taken["taken"]] == [
        "Rates taken from 40 own jobs.",
        "Minutes taken from 40 own jobs.",
    ]
    assert [each["events"][0]["kind"] for each in back["choices"]] == ["rates_learned"]
    assert len(back["taken"]) == 1


def test_more_jobs_leave_less_doubt(phone, db):
    known = []
    for start, count in ((0, 30), (30, 150)):
        yard = Yard(f"doubt {count}", count - start, WIRING, device=f"d0000000000000{count:03}")
        receive(db, yard.entries)
        choice = phone.get("/api/lessons/offer").get_json()["choices"][0]
        known.append(choice["events"][0]["data"]["doubts_x100"])

    few, many = known
    assert 150 <= many["circuit"] < few["circuit"] < 300
    assert many["feed"] == 300  # of which there is hardly ever one
