"""Finding: what a text finds among jobs, vehicles and sensors; the order of the list, what it leaves out."""

import random

import pytest

from server.core.views.folding import _LETTERS
from server.core.views.search import Asked
from server.core.views.search import fold_all
from server.core.views.search import raw
from server.core.views.search import tokens
from tests.core.driver import Driver
from tests.core.driver import Refused
from tests.core.driver import home
from tests.core.random_logs import CODES
from tests.core.random_logs import random_log
from tests.hosts import Core
from tests.many_jobs import DAY_MS
from tests.many_jobs import OPEN
from tests.many_jobs import WAITING
from tests.many_jobs import Yard

NOW = 1_800_000_000_000
DEVICE = "d00000000000000aa"
VIN = "1M8GDM9AXKP042788"


def found(core, text, **more):
    return [row["id"] for row in core("job_list", text=text, **more)["jobs"]]


@pytest.fixture(scope="module")
def yard():
    return Yard(DEVICE, 60, NOW)


@pytest.fixture
def full(core, yard):
    """A core that holds the yard's log."""
    core("reset", events=[{"event": entry["event"]} for entry in yard.entries])
    return core


def opened(core, **vehicle):
    """Open a job on a vehicle with these facts, test it with a code, label the sensor."""
    job = Driver(core)
    layout = next(each for each in core("layouts") if each["id"] == "rear-4")
    told = {"id": "v1", "name": "Škoda-grauer Kombi", "vin": VIN, **vehicle}
    job.fact("job_opened", vehicle=told, complaint="Piept an der Straße", layout="rear-4", part="PS-1",
             positions=layout["positions"])  # fmt: skip
    code = {"position": "rear-right-outer", "code": "C1A2B", "failure_type": "13"}
    job.test("rear-right-outer", codes=[code])
    job.fact("unit_labelled", unit=home("rear-right-outer"), code=job.codes[0], how="scanned")
    job.fact("part_noted", unit=home("rear-right-outer"), part="PS-1", serial="SN 00-417")
    return job


@pytest.mark.parametrize(
    "text",
    [
        "kombi", "GRAUER", "skoda", "ŠKODA", "grauer kombi",
        "straße", "STRASSE", "strasse piept",
        "AB-CD 123", "ab cd123", "abcd123", "abcd-123", "ABCD1", "cd 123", "123",
        VIN, "1m8gdm", "1M8 GDM 9AX", "2788", "KP042788", "p042788 kombi",
        "C1A2B", "c1a2b kombi", "C1A2B-13", "c1a2b13",
        "PS-1", "ps1", "SN00417", "sn 00-417", "00 417", "Mara",
    ],
)  # fmt: skip
def test_a_job_is_found_by_what_is_on_record_of_it(core, text):
    job = opened(core, plate="AB-CD 123")
    assert found(core, text) == [job.job]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("komni", "Vehicle Škoda-grauer Kombi"),  # one is wrong
        ("kobmi", "Vehicle Škoda-grauer Kombi"),  # two are swapped
        ("kmobi", "Vehicle Škoda-grauer Kombi"),  # and in the middle, where the halves meet
        ("ombi", "Vehicle Škoda-grauer Kombi"),  # one is missing, the first
        ("komb1i", "Vehicle Škoda-grauer Kombi"),  # one is too many
        ("SKODE grauer", "Vehicle Škoda-grauer Kombi"),
        ("strase", "Complaint: Piept an der Straße"),  # ß is ss
        ("ab-cd 124", "Plate AB-CD 123"),
        ("BA CD 123", "Plate AB-CD 123"),
        ("SN O0417", "Serial SN 00-417"),
        ("sn0417", "Serial SN 00-417"),
        ("C1A2C", "Code C1A2B-13"),
        ("KP042798", f"VIN {VIN}"),
        ("mrra", "Worked on by Mara"),
    ],
)  # fmt: skip
def test_one_slip_is_forgiven_and_the_row_says_what_comes_close(core, text, said):
    job = opened(core, plate="AB-CD 123")
    answer = core("job_list", text=text)
    assert answer["near"]
    ((identity, found_by),) = [(row["id"], row["found_by"]) for row in answer["jobs"]]
    assert identity == job.job
    assert said in found_by


def test_nothing_that_only_comes_close_stands_beside_what_is_there(core):
    job = opened(core, plate="AB-CD 123")
    other = {**job.events[0]["data"], "vehicle": {"id": "v2", "name": "Kompakt", "vin": ""}}
    Driver(core, device="d00000000000000bb", job="j000000000009").force("job_opened", **other)
    answer = core("job_list", text="komb")
    assert (answer["near"], [row["id"] for row in answer["jobs"]]) == (False, [job.job])
    assert not core("job_list")["near"]


def test_every_single_slip_in_a_serial_number_is_forgiven(core):
    typed = "sn00417"
    slips = [typed[:at] + typed[at + 1 :] for at in range(len(typed))]
    slips += [typed[:at] + "x" + typed[at + 1 :] for at in range(len(typed))]
    slips += [typed[:at] + "x" + typed[at:] for at in range(len(typed))]
    slips += [typed[:at] + typed[at + 1] + typed[at] + typed[at + 2 :] for at in range(len(typed) - 1)]
    job = opened(core)
    assert [text for text in slips if found(core, text) != [job.job]] == []


@pytest.mark.parametrize("text", ["mbi", "ABE", "komni beep", "1234", "88 kombi", "komxx", "kxmxi"])
def test_a_text_that_is_not_on_record_finds_nothing(core, text):
    opened(core, plate="AB-CD 123")
    answer = core("job_list", text=text)
    assert (answer["jobs"], answer["units"], answer["vehicles"]) == ([], [], [])
    assert answer["counts"] == {"open": 0, "waiting": 0, "closed": 0}


def test_a_label_finds_its_job_and_the_sensor(core):
    job = opened(core)
    code = job.codes[0]
    for text in (code, code.lower(), f"{code[:3]}-{code[3:]}", f"{code[:3]} {code[3:]}", code[:3]):
        answer = core("job_list", text=text)
        assert [row["id"] for row in answer["jobs"]] == [job.job]
        assert [unit["id"] for unit in answer["units"]] == [home("rear-right-outer")]


@pytest.mark.parametrize("text", ["kombi", "ab-cd", "2788"])
def test_a_vehicle_is_found_beside_its_jobs_by_its_own_words(core, text):
    opened(core, plate="AB-CD 123")
    (vehicle,) = core("job_list", text=text)["vehicles"]
    assert (vehicle["plate"], vehicle["vin"], vehicle["jobs"]) == ("AB-CD 123", VIN, 1)
    assert core("job_list", text="mara")["vehicles"] == core("job_list")["vehicles"] == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("2788", [f"VIN {VIN}"]),
        ("c1a2b", ["Code C1A2B-13"]),
        ("sn 00", ["Serial SN 00-417"]),
        ("mara", ["Worked on by Mara"]),
        ("kombi ps-1", ["Part PS-1"]),
        ("kombi", []),
        ("ab-cd", []),
    ],
)
def test_a_row_says_what_was_found_in_it_and_is_not_to_be_read_there(core, text, said):
    opened(core, plate="AB-CD 123")
    (row,) = core("job_list", text=text)["jobs"]
    assert row["found_by"] == said
    assert row["plate"] == "AB-CD 123"


def test_letters_fold_the_same_in_both_hosts(core):
    names = ["ÅNGSTRÖM Œuvre", "Ελληνικά ΆΛΦΑ", "Ёлка Йод", "Z\u030coe\u0301", "İstanbul ılık", "Աբգ ԱԲԳ"]
    place = {"id": "a", "name": "a", "group": "a", "edge": "rear", "reach_minutes": 3}
    for number, name in enumerate(names):
        vehicle = {"id": f"v{number}", "name": name, "vin": ""}
        told = {"complaint": "", "layout": "own", "part": "", "positions": [place]}
        Driver(core, job=f"j{number}").force("job_opened", vehicle=vehicle, **told)
    texts = {
        "angstrom": 0,
        "OEUVRE": 0,
        "ελληνικα": 1,
        "αλφα": 1,
        "елка": 2,
        "ЙОД": 2,
        "zoe": 3,
        "ISTANBUL": 4,
        "ilik": 4,
    }
    for text, number in texts.items():
        assert found(core, text) == [f"j{number}"]


def test_no_letter_is_folded_twice():
    assert not [letter for letter in "".join(_LETTERS.values()) if letter in _LETTERS]
    assert tokens("K7F-3M, Part:PS_1 “Ærø–x”") == ["k7f", "3m", "part", "ps", "1", "aero", "x"]


def test_the_list_has_open_ones_first_then_what_waits_then_the_closed_ones(full, yard):
    answer = full("job_list", most=200)
    stands = [row["stands"] for row in answer["jobs"]]
    assert stands == ["open"] * OPEN + ["waiting"] * WAITING + ["closed"] * (60 - OPEN - WAITING)
    assert answer["counts"] == {"open": OPEN, "waiting": WAITING, "closed": 60 - OPEN - WAITING}
    for which in ("open", "waiting", "closed"):
        newest = [row["opened_at"] for row in answer["jobs"] if row["stands"] == which]
        assert newest == sorted(newest, reverse=True)
    waiting = full("job_list", stands="waiting")
    assert [row["id"] for row in waiting["jobs"]] == [
        job["id"] for job in reversed(yard.jobs) if job["paused"]
    ]
    assert waiting["counts"] == answer["counts"]


def test_rows_come_by_the_page_and_the_rest_is_counted(full):
    whole = full("job_list", most=200)["jobs"]
    first = full("job_list", most=20)
    assert (first["jobs"], first["more"]) == (whole[:20], 40)
    assert full("job_list", most=60)["more"] == 0


def test_what_was_closed_long_ago_is_left_out_counted_and_found(full, yard):
    since = NOW - 25 * DAY_MS
    answer = full("job_list", most=200, since=since)
    closed = [row for row in answer["jobs"] if row["closed"]]
    assert closed
    assert min(row["closed_at"] for row in closed) >= since
    assert answer["older"] == 60 - OPEN - WAITING - len(closed)
    assert full("job_list", most=200, since=2 * NOW)["older"] == 60 - OPEN - WAITING - 5  # the latest stay

    old = yard.jobs[0]
    assert found(full, old["vehicle"]["plate"], since=since) == [old["id"]]
    assert found(full, "", stands="closed", most=200, since=since)[-1] == old["id"]


def test_each_job_of_a_yard_is_found_by_its_plate_number_label_and_serial(full, yard):
    for job in yard.jobs[::9]:
        vehicle = job["vehicle"]
        for text in (vehicle["plate"], vehicle["vin"], vehicle["vin"][-6:], *job["codes"], job["serial"]):
            assert found(full, text) == [job["id"]]
        assert job["id"] in found(full, job["actor"], most=200)
        assert job["id"] in found(full, job["complaint"], most=200)


def test_vehicles_are_found_by_name_plate_and_number(full, yard):
    job = yard.jobs[7]
    for text in (job["vehicle"]["name"], job["vehicle"]["plate"].lower(), job["vehicle"]["vin"][-8:]):
        assert [each["id"] for each in full("vehicles", text=text, most=5)] == [job["vehicle"]["id"]]
    latest = [job["vehicle"]["id"] for job in reversed(yard.jobs)]
    assert [each["id"] for each in full("vehicles", most=5)] == latest[:5]
    assert [each["id"] for each in full("vehicles")] == latest
    assert full("vehicles", text="no such vehicle", most=5) == []


def test_a_plate_stays_until_another_is_given(core):
    job = opened(core, plate="AB-CD 123")
    again = Driver(core, job="j2")
    again.codes = again.codes[5:]
    data = {**job.events[0]["data"], "vehicle": {"id": "v1", "name": "Grey", "vin": ""}}
    again.force("job_opened", **data)
    assert core("vehicles")[0]["plate"] == "AB-CD 123"
    assert sorted(found(core, "abcd123")) == sorted(["j2", job.job])
    again.job = "j3"
    again.force("job_opened", **{**data, "vehicle": {**data["vehicle"], "plate": "XY 9"}})
    assert found(core, "abcd123") == []
    assert len(found(core, "xy9")) == 3


def test_a_plate_that_is_no_text_is_refused(core):
    with pytest.raises(Refused, match=r"data\.vehicle\.plate"):
        opened(core, plate=12)


@pytest.mark.parametrize("seed", range(12))
def test_a_search_after_each_entry_finds_what_a_search_of_the_whole_log_finds(seed):
    """What is kept between searches never shows: corrections, mix-ups and late entries included."""
    texts = (*CODES, "Mara", "v1", "a", "PS")
    log = random_log(seed, 50)
    grown = Core()
    for at, event in enumerate(log):
        grown("add", events=[{"event": event}])
        if at % 7 == 0 or at == len(log) - 1:
            fresh = Core()
            fresh("reset", events=[{"event": each} for each in log[: at + 1]])
            for text in texts:
                assert grown("job_list", text=text) == fresh("job_list", text=text)
                assert grown("find", text=text) == fresh("find", text=text)


@pytest.mark.parametrize("seed", range(6))
def test_a_search_after_late_entries_finds_what_a_search_of_the_whole_log_finds(seed):
    log = random_log(seed, 40)
    late = [event for event in log if event["device"] == log[0]["device"]]
    rest = [event for event in log if event["device"] != log[0]["device"]]
    grown = Core()
    grown("reset", events=[{"event": each} for each in rest])
    grown("job_list", text="Mara")
    grown("insert", events=[{"event": each} for each in late], at=len(rest) // 2)
    fresh = Core()
    whole = rest[: len(rest) // 2] + late + rest[len(rest) // 2 :]
    fresh("reset", events=[{"event": each} for each in whole])
    for text in (*CODES, "Mara", "Jo"):
        assert grown("job_list", text=text) == fresh("job_list", text=text)


def test_the_words_can_be_made_bit_by_bit_before_they_are_asked_for():
    yard, core = Yard(DEVICE, 250, NOW), Core()
    core("reset", events=[{"event": entry["event"]} for entry in yard.entries])
    rounds = 1
    while not core("make_findable"):
        rounds += 1
    assert rounds == 5  # a hundred jobs at once, then four hundred sensors
    assert found(core, yard.jobs[3]["vehicle"]["plate"]) == [yard.jobs[3]["id"]]


def test_jobs_out_of_memory_are_listed_and_found_as_before(yard):
    host = Core()
    host("reset", events=[{"event": entry["event"]} for entry in yard.entries])
    asked = [{"most": 200}, {"text": "mara"}, {"text": yard.jobs[2]["codes"][0]}, {"stands": "closed"}]
    before = [host("job_list", **each) for each in asked]
    host("unload_jobs", jobs=host("closed_jobs")["jobs"], count=len(yard.entries))
    assert [host("job_list", **each) for each in asked] == before


@pytest.mark.parametrize("seed", range(20))
def test_passing_over_most_of_what_is_on_record_finds_no_less_and_no_more(yard, seed):
    dice = random.Random(seed)
    told = [(job, job["vehicle"]) for job in yard.jobs]
    pairs = [raw([on["name"], job["complaint"]], [on["plate"], on["vin"], job["serial"]]) for job, on in told]
    words = dict(enumerate(fold_all(pairs)))
    exact = near = 0
    for text in (slipped(dice, words[dice.randrange(len(words))]) for _ in range(60)):
        asked = Asked(text)
        whole = [n for n in words if has_all(words[n], asked)]
        comes_near = [n for n in words if asked.is_near(words[n])]
        assert sorted(asked.among(words)) == whole, text
        assert sorted(asked.nearly_among(words)) == comes_near, text
        exact, near = exact + bool(whole), near + bool(comes_near and not whole)
    assert exact
    assert near


def has_all(words, asked) -> bool:
    """Tell by looking at each piece by itself whether all that is asked for begins words of a text."""

    def begins(*parts):
        return all(f" {part}" in words for part in parts)

    by_pieces = all(begins(*parts) or begins("".join(parts)) for parts in asked.pieces)
    return by_pieces or (len(asked.pieces) > 1 and begins(asked.whole))


def slipped(dice, words) -> str:
    """Return some words as somebody types them: cut short, joined by a sign, with a slip here and there."""
    typed = []
    for word in dice.sample(words.split(), dice.randrange(1, 4)):
        letters = list(word[: dice.randrange(1, len(word) + 1)])
        at = dice.randrange(len(letters))
        slip = dice.choice(["none", "none", "wrong", "missing", "many", "swapped"])
        if slip == "wrong":
            letters[at] = dice.choice("abc019")
        elif slip == "missing":
            del letters[at]
        elif slip == "many":
            letters.insert(at, dice.choice("abc019"))
        elif slip == "swapped" and at:
            letters[at - 1 : at + 1] = letters[at], letters[at - 1]
        typed.append("".join(letters))
    return dice.choice([" ", "-"]).join(typed)
