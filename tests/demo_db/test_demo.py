"""The demo: built through the real core and storage, the same each time, showing what it promises."""

import hashlib
import io
import json
import time
from contextlib import closing

import pytest
import zxingcpp
from PIL import Image

import demo_db
from demo_db import other_parts
from demo_db import screen
from demo_db import stories
from demo_db.cars import black_estate
from demo_db.cars import blue_estate
from demo_db.cars import grey_saloon
from demo_db.dice import identity
from server.core.host import Host
from server.core.log import envelope
from server.log import events
from server.photos import jpeg
from server.photos.store import whole
from server.storage import DataFolder
from tests.said import english

BASE = "http://localhost:8765"
JOBS = {
    "closed": stories.CLOSED,
    "comes and goes": stories.COMES_AND_GOES,
    "stays": stories.STAYS,
    "two faults": stories.TWO_FAULTS,
    "follows": stories.FOLLOWS,
}
OTHER_PARTS = {"coils": other_parts.COILS, "doors": other_parts.DOORS, "wheels": other_parts.WHEELS}


class Demo:
    """A folder with the demo in it, and the core's answers about it."""

    def __init__(self, root):
        self.on_screens = []  # (position, code) of each line of a control unit's screen
        draw = screen.self_test

        def keep(lines, *heading, **more):
            self.on_screens.extend(lines)
            return draw(lines, *heading, **more)

        started = time.perf_counter()
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(screen, "self_test", keep)
            self.hints = demo_db.build(root, BASE)
        self.seconds = time.perf_counter() - started
        self.folder = DataFolder(root)
        self.entries = log_of(root)
        self._host = Host()
        self.ask("reset", events=self.entries)

    def ask(self, op, **arguments):
        answer = json.loads(self._host.call(json.dumps({**arguments, "op": op})))
        assert answer["ok"], answer
        return english(answer["value"])

    def job(self, name):
        return self.ask("job", job=JOBS[name])

    def of_kind(self, kind):
        return [entry["event"] for entry in self.entries if entry["event"]["kind"] == kind]


def log_of(root):
    with closing(DataFolder(root).open()) as db:
        return events.after(db, 0, 10_000, 2**30)


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    demo = Demo(tmp_path_factory.mktemp("demo"))
    print(f"\nthe demo was built in {demo.seconds:.1f} s")
    return demo


def test_eight_jobs_on_six_vehicles(demo):
    jobs = demo.ask("jobs")

    assert {job["id"] for job in jobs} == {*JOBS.values(), *OTHER_PARTS.values()}
    assert len({job["vehicle"] for job in jobs}) == 6
    assert {job["id"] for job in jobs if job["closed"]} == {stories.CLOSED, *OTHER_PARTS.values()}


@pytest.mark.parametrize(
    ("name", "sort", "cause"),
    [
        ("coils", "ignition-coil", f"unit:{grey_saloon().first_unit('cylinder-2')}"),
        ("doors", "door-speaker", f"unit:{black_estate().first_unit('door-rear-right')}"),
        ("wheels", "wheel-sender", "circuit:wheel-rear-left"),
    ],
)
def test_each_other_sort_of_part_has_a_job_from_open_to_close(demo, name, sort, cause):
    job = demo.ask("job", job=OTHER_PARTS[name])

    assert (job["sort"], job["closed"]) == (sort, True)
    assert [each["cause"] for each in job["reasoning"]["verdict"]] == [cause]
    assert demo.ask("report", job=job["id"])["headline"]


def test_nothing_contradicts_and_everything_is_understood(demo):
    assert demo.ask("conflicts") == {"conflicts": [], "not_understood": []}


def test_both_phones_have_whole_chains_and_clocks_that_run_forwards(demo):
    for device in (stories.MARAS_PHONE, stories.OLD_PHONE):
        chain = [entry["event"] for entry in demo.entries if entry["event"]["device"] == device]

        assert len(chain) > 10
        assert demo.ask("chain", events=chain) == {"fault": None}
        assert [event["at"] for event in chain] == sorted(event["at"] for event in chain)


def test_every_photo_is_on_disk_under_its_hash_without_added_data(demo):
    named = [event["data"] for event in demo.of_kind("photo_taken")]

    assert len({photo["sha256"] for photo in named}) == len(named) > 30
    for photo in named:
        data = whole(demo.folder.photos, photo["sha256"])
        assert data is not None
        assert len(data) == photo["bytes"] < 150_000
        read = jpeg.read(data)
        assert (read.width, read.height, read.extras) == (photo["width"], photo["height"], [])
        with Image.open(io.BytesIO(data)) as image:
            assert not image.getexif()
            assert "exif" not in image.info


def test_a_control_units_screen_names_each_position_in_words(demo):
    assert {"left outer", "right outer"} <= {position for position, _ in demo.on_screens}
    assert {type(position) for position, _ in demo.on_screens} == {str}


def test_follows_waits_for_the_new_sensor(demo):
    job = demo.job("follows")
    bad = blue_estate().first_unit("rear-left-inner")

    assert job["step"]["id"] == "replace"
    assert [cause["cause"] for cause in job["reasoning"]["verdict"]] == [f"unit:{bad}"]
    assert job["reasoning"]["sentence"].startswith("The fault followed")
    assert job["step"]["choices"], "a spare of the same part is in stock"


def test_stays_is_in_the_wiring_checks(demo):
    job = demo.job("stays")

    assert job["step"]["id"] == "wiring.measure"
    assert job["step"]["progress"]["now"] == 3
    assert [cause["cause"] for cause in job["reasoning"]["verdict"]] == ["circuit:front-left-inner"]
    assert job["reasoning"]["sentence"].startswith("The fault stayed")


def test_two_faults_wait_for_the_next_move(demo):
    job = demo.job("two faults")
    marks = [position["mark"] for position in job["board"]["positions"]]

    assert len(marks) == 8
    assert marks.count("fault") == 2
    assert job["step"]["id"] == "move"
    assert len(job["moves"]) > 1
    assert job["reasoning"]["verdict"] is None


def test_comes_and_goes_counts_its_clean_tests(demo):
    job = demo.job("comes and goes")

    assert job["comes_and_goes"]
    assert job["stage"] == "prove"
    assert job["proof"]["clean_in_a_row"] > 3
    assert not job["proof"]["settled"]
    assert job["moves"][0]["move"] == "retest"


def test_a_test_without_its_sounder_is_set_aside(demo):
    tests = demo.job("comes and goes")["trail"]["tests"]

    aside = [test for test in tests if not test["counted"]]
    assert len(aside) == 1
    assert aside[0]["why"]


def test_closed_left_the_bad_unit_at_the_counter(demo):
    job = demo.job("closed")
    unit = demo.ask("unit", unit=blue_estate().first_unit("rear-right-outer"))

    assert job["closed"]
    assert job["step"]["id"] == "done"
    assert unit["where"] == "at the parts counter"
    assert unit["shown"]
    assert {test["mark"] for test in unit["tests"]} == {"fault"}


def test_the_closed_job_stopped_a_mix_up_and_took_an_entry_back(demo):
    job = demo.job("closed")
    undone = [entry for entry in job["history"] if entry["undone"]]

    assert [event["job"] for event in demo.of_kind("mixup_stopped")] == [stories.CLOSED]
    assert len(undone) == 1
    assert undone[0]["kind"] == "test_run"
    assert undone[0]["undone"]["reason"]


def test_spares_with_labels_are_in_stock(demo):
    stock = [unit for unit in demo.ask("units") if unit["where"] == "in your stock"]

    assert len(stock) >= 2
    assert all(unit["shown"] and unit["part"] for unit in stock)


def test_a_second_build_has_the_same_events(demo, tmp_path):
    demo_db.build(tmp_path, BASE)

    assert [entry["hash"] for entry in log_of(tmp_path)] == [entry["hash"] for entry in demo.entries]


def test_building_again_leaves_the_folder_as_it_is(demo):
    assert demo_db.build(demo.folder.root, BASE) == demo.hints
    assert log_of(demo.folder.root) == demo.entries


def test_a_folder_with_other_events_is_left_alone(tmp_path):
    folder = DataFolder(tmp_path)
    folder.prepare()
    event = {
        "device": "d00000000000000aa",
        "seq": 1,
        "prev": "",
        "v": 1,
        "at": 0,
        "actor": "Mara",
        "job": None,
        "kind": "unit_moved",
        "data": {},
    }
    with closing(folder.open()) as db:
        events.receive(db, [{"event": event, "hash": envelope.hash_of(event)}], None, 0)

    with pytest.raises(demo_db.FolderInUse):
        demo_db.build(tmp_path, BASE)

    assert len(log_of(tmp_path)) == 1


def test_what_to_try_fits_a_terminal(demo):
    assert 4 <= len(demo.hints) <= 8
    assert all(0 < len(line) <= 100 for line in demo.hints)


def test_ids_come_from_names():
    digest = hashlib.sha256(b"closed").hexdigest()

    assert identity("j", "closed") == "j" + digest[:12]


def test_the_label_in_a_picture_reads_as_the_unit_it_is_on(demo):
    pulled = [event["data"] for event in demo.of_kind("photo_taken") if event["data"]["shows"] == "unit"]

    assert len(pulled) == 2
    for photo in pulled:
        with Image.open(io.BytesIO(whole(demo.folder.photos, photo["sha256"]))) as image:
            text = zxingcpp.read_barcode(image).text
        read = demo.ask("scan", text=text, how="scanned", host="localhost:8765")
        assert read["unit"] == photo["unit"]
