"""Layouts that a person drew: what a job records of them, that they come again, their file."""

import json

import pytest

from tests.core.driver import Driver
from tests.hosts import CoreError

LONG_VAN = "Long van, high roof"


def drawn(count=3, **changed):
    """Return drawn positions along the rear; `changed` goes into the second."""
    made = [{"name": f"place {n + 1}", "group": "rear", "reach_minutes": 3, "x": 200 + 60 * n, "y": 990,
             "part": "", "pins": ""} for n in range(count)]  # fmt: skip
    made[1].update(changed)
    return made


def opened(
    core, positions, model=LONG_VAN, name="White van", layout="own", vehicle="v1", job="j000000000001"
):
    driver = Driver(core, device=f"d{job[1:]}0000", job=job)
    for n in range(int(job[-1])):  # a minute later each
        spare = {
            "unit": f"u{job[2:]}{n}",
            "part": "",
            "serial": "",
            "code": "",
            "how": "tapped",
            "place": "stock",
        }
        core("add", events=[{"event": driver.envelope("unit_added", spare, job=None)}])
    driver.fact("job_opened", vehicle={"id": vehicle, "name": name, "vin": "", "model": model}, complaint="",
                layout=layout, part="PS-1", positions=positions)  # fmt: skip
    return driver


def recorded(core, positions, sort="parking-sensor"):
    return core("drawn_positions", sort=sort, positions=positions)


def kept(core):
    return [each for each in core("layouts") if each["model"]]


@pytest.mark.parametrize(
    ("x", "y", "edge"),
    [(500, 0, "front"), (500, 1000, "rear"), (0, 500, "left"), (1000, 500, "right"), (0, 0, "front")],
)
def test_a_position_lies_at_the_edge_that_is_nearest(core, x, y, edge):
    assert recorded(core, drawn(x=x, y=y))[1]["edge"] == edge


def test_a_job_on_a_drawn_layout_draws_each_where_it_was_put(core):
    job = opened(core, recorded(core, drawn(part="PS-9", pins="1 supply, 2 ground", x=40, y=500)))

    board = job.view()["board"]
    assert board["kind"] == "vehicle"
    assert [(each["x"], each["y"]) for each in board["positions"]] == [(200, 990), (40, 500), (320, 990)]
    assert [each["unit"]["part"] for each in board["positions"]] == ["PS-1", "PS-9", "PS-1"]
    assert [each["pins"] for each in board["positions"]] == ["", "1 supply, 2 ground", ""]


def test_it_is_offered_again_for_its_model_the_latest_only(core):
    opened(core, recorded(core, drawn(3)))
    opened(core, recorded(core, drawn(4)), model="LONG  van, High roof", vehicle="v2", job="j000000000002")
    coils = recorded(core, drawn(3), "ignition-coil")
    opened(core, coils, layout="ignition-coil/own", vehicle="v3", job="j000000000003")

    offered = kept(core)
    assert [(each["sort"], len(each["positions"])) for each in offered] == [
        ("ignition-coil", 3), ("parking-sensor", 4)]  # fmt: skip
    assert offered[0]["name"] == f"{LONG_VAN}, 3"
    assert recorded(core, offered[1]["drawn"]) == offered[1]["positions"]


def test_without_a_model_it_is_kept_for_its_vehicle_alone(core):
    opened(core, recorded(core, drawn()), model="")
    assert kept(core) == []
    assert core("vehicles")[0]["positions"] == recorded(core, drawn())


def test_a_whole_job_on_coils_in_a_drawn_row_speaks_of_coils(core):
    driver = opened(core, recorded(core, drawn(6), "ignition-coil"), layout="ignition-coil/own")
    driver.tap()
    driver.tap()
    driver.test("own-ignition-coil-2")
    assert driver.view()["board"]["kind"] == "engine"
    assert "coil" in json.dumps(driver.view()["reasoning"])


def test_a_job_on_ten_that_were_drawn_goes_to_its_close(core):
    places = drawn(10)
    for place in places[8:]:
        place["y"] = 10
    positions = recorded(core, places)
    assert [each["edge"] for each in positions] == ["rear"] * 8 + ["front"] * 2
    bad, good = positions[2]["id"], positions[3]["id"]
    driver = opened(core, positions)
    driver.tap()
    driver.tap()
    driver.test(bad)
    driver.photograph()
    driver.exchange(**{bad: f"v1.{good}", good: f"v1.{bad}"})
    driver.test(good)
    driver.new_unit(good)
    driver.guided()
    while driver.step()["form"] == "test":
        driver.test()
    driver.finish()

    assert driver.view()["closed"]
    kinds = [event["kind"] for event in driver.events if event["job"]]
    assert kinds.count("job_closed") == kinds.count("unit_added") == 1


def test_a_file_brings_a_layout_to_another_phone(core):
    positions = drawn(10, pins="1 supply", part="PS-9")
    text = core("layout_file", sort="parking-sensor", model=LONG_VAN, positions=positions)["text"]

    read = core("read_layout", text=text)
    assert (read["model"], read["sort"]) == (LONG_VAN, "parking-sensor")
    assert recorded(core, read["positions"]) == recorded(core, positions)


GOOD = {"file": "swaptrail-layout", "v": 1, "model": "", "sort": "parking-sensor"}


@pytest.mark.parametrize(
    ("text", "field"),
    [
        pytest.param("", "file", id="empty"),
        pytest.param("\x89PNG", "file", id="a picture"),
        pytest.param("[1, 2]", "file", id="another form"),
        pytest.param('{"file": "swaptrail-unsent"}', "file", id="another file"),
        pytest.param(json.dumps({**GOOD, "v": 2, "positions": []}), "v", id="newer"),
        pytest.param(json.dumps({**GOOD, "sort": "pump", "positions": []}), "sort", id="unknown sort"),
        pytest.param(json.dumps({**GOOD, "sort": ["x"], "positions": []}), "sort", id="no sort"),
        pytest.param(json.dumps({**GOOD, "model": 3, "positions": []}), "model", id="model"),
        pytest.param(json.dumps({**GOOD, "model": "m" * 81, "positions": []}), "model", id="long model"),
        pytest.param(json.dumps(GOOD), "positions", id="no positions"),
        pytest.param(json.dumps({**GOOD, "positions": []}), "positions", id="none"),
        pytest.param(json.dumps({**GOOD, "positions": [3]}), "positions[0]", id="no object"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(25)}), "positions", id="too many"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(x=1001)}), "positions[1].x", id="outside"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(x=-1)}), "positions[1].x", id="negative"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(y=0.5)}), "positions[1].y", id="decimals"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(y="top")}), "positions[1].y", id="words"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(x=None)}), "positions[1].x", id="no place"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(name=" ")}), "positions[1].name", id="no name"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(name="place 1")}), "positions[1].name",
                     id="twice"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(reach_minutes=601)}),
                     "positions[1].reach_minutes", id="far"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(pins="x" * 81)}), "positions[1].pins", id="pins"),
        pytest.param(json.dumps({**GOOD, "positions": drawn(part=5)}), "positions[1].part", id="part"),
        pytest.param(" " * 100001, "file", id="too long"),
        pytest.param("[" * 50000, "file", id="too deep"),
    ],
)  # fmt: skip
def test_a_bad_file_is_refused_with_its_place(core, text, field):
    with pytest.raises(CoreError) as refused:
        core("read_layout", text=text)
    assert refused.value.field == field
    assert refused.value.wanted


def test_a_file_that_could_not_be_read_back_is_not_made(core):
    with pytest.raises(CoreError) as refused:
        core("layout_file", sort="parking-sensor", model="", positions=drawn(name=""))
    assert refused.value.field == "positions[1].name"
    with pytest.raises(CoreError):
        core("layout_file", sort="pump", model="", positions=drawn())
