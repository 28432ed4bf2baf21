"""The next move: what is proposed, in which order, and in which words."""

import random

import pytest

from tests.core.brute_force import DEFAULTS

REAR = {"left outer": "A", "left inner": "B", "right inner": "C", "right outer": "D"}


def job(tests=(), **more):
    """A rear bumper with four sensors of one part, named as a person would."""
    case = {
        "positions": [
            {"id": name.replace(" ", "-"), "name": name, "group": "rear", "reach_minutes": minutes}
            for name, minutes in zip(REAR, [3, 2, 2, 3], strict=True)
        ],
        "units": [{"id": unit, "name": f"K7F-3{unit}", "part": "P1"} for unit in REAR.values()],
        "tests": [dict(test) for test in tests],
    }
    return case | more


def fitted(*exchanged):
    """What is where after pairs of positions were exchanged."""
    here = {name.replace(" ", "-"): unit for name, unit in REAR.items()}
    for one, other in exchanged:
        here[one], here[other] = here[other], here[one]
    return here


ONE = {"fitted": fitted(), "faulted": ["right-outer"]}
TWO = {"fitted": fitted(), "faulted": ["right-outer", "right-inner"]}
SWAP = ("right-outer", "right-inner")
FOLLOWED = {"fitted": fitted(SWAP), "faulted": ["right-inner"]}
STAYED = {"fitted": fitted(SWAP), "faulted": ["right-outer"]}
VANISHED = {"fitted": fitted(SWAP), "faulted": []}


def moves(core, case):
    return core("reason", case=case)["next"]


def test_exchanges_a_suspect_with_the_easiest_cleared_position(core):
    best = moves(core, job([ONE]))[0]

    assert best["move"] == "exchange"
    assert best["fitted"] == {"right-outer": "C", "right-inner": "D"}
    assert best["minutes_x100"] == 740  # reach 3 and 2, twice pull and plug in, the test
    assert best["reason"] == ("Same part, and the easiest to reach. About 7 minutes with the retest.")


def test_says_what_each_result_would_mean_before_it_is_known(core):
    best = moves(core, job([ONE]))[0]

    said = {tuple(outcome["faulted"]): outcome["then"] for outcome in best["outlook"]}
    assert said["right-inner",] == "it is sensor K7F-3D, 98.8 %"
    assert said["right-outer",] == "it is the wiring at right outer, 97.1 %"
    assert "dirt, ice, paint or aim at right outer" in said[()]


def test_never_exchanges_different_parts(core):
    case = job([ONE])
    case["units"][3]["part"] = "P2"

    for move in moves(core, case):
        assert move["move"] != "exchange"


def test_unknown_parts_may_be_exchanged_but_are_not_called_the_same(core):
    case = job([ONE])
    for unit in case["units"]:
        del unit["part"]

    best = moves(core, case)[0]

    assert best["move"] == "exchange"
    assert "Same part" not in best["reason"]


def on_a_large_board(test):
    """The same job with two positions in front, which tested clean: too many to look ahead to the end."""
    front = {"front-left": "E", "front-right": "F"}
    case = job([{**test, "fitted": {**test["fitted"], **front}}])
    for place, unit in front.items():
        case["positions"].append({"id": place, "group": "front", "reach_minutes": 4})
        case["units"].append({"id": unit, "part": "P1"})
    return case


def test_two_faults_are_settled_by_a_ring_of_three_in_one_retest(core):
    """Three positions taken apart where two pairs would take four."""
    best = moves(core, on_a_large_board(TWO))[0]

    assert len(best["fitted"]) == 3
    assert set(SWAP) < set(best["fitted"])
    assert {unit for unit in best["fitted"].values() if unit in "CD"} == {"C", "D"}
    assert best["fitted"]["right-outer"] != "D"
    assert best["fitted"]["right-inner"] != "C"


def test_two_suspects_with_each_other_come_behind_a_cleared_one(core):
    found = [move.get("fitted") for move in moves(core, on_a_large_board(TWO))]

    assert {"right-outer": "C", "right-inner": "D"} not in found[:3]


def test_a_spare_at_hand_spares_one_position(core):
    """Once dirt is ruled out: what is left then is the sensor or its circuit, and it may stay."""
    cleaned = {"fitted": fitted(), "faulted": ["right-outer"], "cleaned": ["right-outer"]}
    case = job([ONE, cleaned])
    case["units"].append({"id": "S", "part": "P1"})

    best = moves(core, case)[0]

    assert best["fitted"] == {"right-outer": "S"}


def test_a_unit_out_of_reach_is_no_spare(core):
    case = job([ONE])
    case["units"].append({"id": "S", "part": "P1", "available": False})

    for move in moves(core, case):
        assert "S" not in move.get("fitted", {}).values()


def test_a_verdict_on_a_sensor_is_followed_by_a_new_one(core):
    best = moves(core, job([ONE, FOLLOWED]))[0]

    assert best["move"] == "replace"
    assert best["fitted"] == {"right-inner": "new"}
    assert best["reason"].startswith("Replace sensor K7F-3D, then prove it with a clean test.")


def test_a_new_sensor_gets_a_name_that_is_free(core):
    case = job([ONE, FOLLOWED])
    case["units"].append({"id": "new", "part": "P2"})

    assert moves(core, case)[0]["fitted"] == {"right-inner": "new-2"}


def test_a_verdict_on_the_wiring_is_followed_by_its_repair(core):
    repair = moves(core, job([ONE, STAYED]))[0]

    assert (repair["move"], repair["cause"]) == ("repair", "circuit:right-outer")
    assert repair["minutes_x100"] == 2100  # twenty minutes, and the test
    assert repair["reason"].startswith("Find and repair the wiring at right outer")
    assert repair["outlook"][0]["faulted"] == []


def test_the_minutes_of_a_repair_can_be_set(core):
    repair = moves(core, job([ONE, STAYED], minutes={"repair": 5}))[0]

    assert repair["minutes_x100"] == 600


def test_a_circuit_repaired_in_vain_is_repaired_as_the_next_one(core):
    again = {"fitted": fitted(SWAP), "faulted": ["right-outer"], "repaired": ["circuit:right-outer"]}
    found = moves(core, job([ONE, STAYED, again, {"fitted": fitted(SWAP), "faulted": ["right-outer"]}]))

    assert {move["cause"] for move in found if move["move"] == "repair"} <= {"circuit:right-outer#2"}


def test_all_at_once_points_to_what_they_share(core):
    found = moves(core, job([{"fitted": fitted(), "faulted": sorted(fitted())}]))

    assert [move["move"] for move in found[:3]] == ["repair", "repair", "retest"]
    assert {move["cause"] for move in found[:2]} == {"feed:rear", "control"}
    assert "the supply or ground of the rear sensors or the control unit" in found[2]["reason"]


def test_a_fault_that_vanished_is_tested_again_and_then_nothing_is_left(core):
    again = moves(core, job([ONE, VANISHED]))[0]
    settled = core("reason", case=job([ONE, VANISHED, VANISHED]))

    assert again["move"] == "retest"
    assert settled["clear"] >= 950_000_000
    assert settled["next"] == []


def test_what_was_changed_has_to_be_tested_even_if_nothing_suspect_is_left(core):
    case = job([ONE, FOLLOWED], now={"fitted": {"right-inner": "N"}})

    found = moves(core, case)

    assert [move["move"] for move in found] == ["retest"]
    assert found[0]["reason"].startswith("Something was changed since the last test.")


def test_a_full_list_of_what_is_fitted_is_no_change(core):
    case = job([ONE], now={"fitted": fitted()})

    assert core("reason", case=case) == core("reason", case=job([ONE]))


def test_a_test_that_was_not_heard_is_run_again(core):
    answer = core("reason", case=job([ONE | {"heard": False}]))

    assert answer["ignored"][0]["test"] == 0
    assert "sounder" in answer["ignored"][0]["reason"]
    assert answer["next"][0]["move"] == "retest"


def test_an_unplugged_position_that_tests_clean_sets_the_test_aside_by_name(core):
    unplugged = {"fitted": fitted(), "faulted": [], "unplugged": ["right-outer"]}

    ignored = core("reason", case=job([ONE, unplugged]))["ignored"]

    assert ignored[0]["test"] == 1
    assert ignored[0]["reason"].startswith("Right outer was unplugged")


def test_the_order_of_the_keys_changes_nothing(core):
    case = job([TWO, ONE])
    turned = {key: case[key] for key in sorted(case, reverse=True)}
    turned["tests"] = [
        {"faulted": test["faulted"], "fitted": dict(reversed(test["fitted"].items()))}
        for test in case["tests"]
    ]

    assert core("reason", case=turned) == core("reason", case=case)


def simulate(core, case, present, choose):
    """Follow the advice against a car with these faults; return (minutes, what is known)."""
    here = fitted()
    present = set(present)
    minutes = 0
    case["tests"].append(read(here, present, choose))
    for step in range(20):
        answer = core("reason", case=case)
        if answer["verdict"] or answer["clear"] >= 950_000_000:
            return minutes, answer
        best = answer["next"][0]
        if best["reason"].startswith(("It is", "Find and repair")):
            return minutes, answer
        minutes += best["minutes_x100"] / 100
        if best["move"] == "meter":
            bad = "circuit:" + best["position"] in present
            reading = {"position": best["position"], "reads": "bad" if bad else "good"}
            case.setdefault("meter", []).append(reading)
            continue
        if best["move"] == "listen":
            place = best["position"]
            silent = {f"unit:{here[place]}", f"circuit:{place}"} & present
            case["tests"][-1].setdefault("listen", {})[place] = "silent" if silent else "ticks"
            continue
        for place, unit in best.get("fitted", {}).items():
            here[place] = f"N{step}{place}" if unit.startswith("new") else unit
            present.discard("blocked:" + place)
        if best["move"] == "clean":
            present.discard("blocked:" + best["position"])
        cleaned = [best["position"]] if best["move"] == "clean" else []
        case["tests"].append(read(here, present, choose) | {"cleaned": cleaned})
    return None, answer


def read(here, present, choose):
    faulted = []
    for place, unit in here.items():
        causes = {f"unit:{unit}", f"circuit:{place}", f"blocked:{place}"} & present
        clean = (1 - DEFAULTS["false_alarm"]) * (1 - DEFAULTS["shows"]) ** len(causes)
        if choose.random() > clean:
            faulted.append(place)
    return {"fitted": dict(here), "faulted": faulted}


@pytest.mark.parametrize(
    "present",
    [
        ["unit:D"],
        ["unit:B"],
        ["circuit:left-outer"],
        ["blocked:right-inner"],
        ["unit:A", "unit:C"],
        ["unit:A", "circuit:right-inner"],
        ["unit:D", "blocked:left-inner"],
        ["unit:A", "unit:B", "unit:C"],
    ],
    ids=" and ".join,
)
def test_following_the_advice_settles_every_car(core, present):
    minutes, answer = simulate(core, job(), present, random.Random(7))

    assert minutes is not None, answer["next"][0]
    assert minutes <= 45
