"""What the planner knows about moves: rings, spares, money, doubt whether a place is watched, and why not."""

import pytest

from tests.core.test_reason_moves import FOLLOWED
from tests.core.test_reason_moves import ONE
from tests.core.test_reason_moves import STAYED
from tests.core.test_reason_moves import SWAP
from tests.core.test_reason_moves import TWO
from tests.core.test_reason_moves import VANISHED
from tests.core.test_reason_moves import fitted
from tests.core.test_reason_moves import job
from tests.core.test_reason_moves import moves
from tests.core.test_reason_moves import on_a_large_board
from tests.hosts import CoreError
from tests.said import english

THREE = {"fitted": fitted(), "faulted": ["right-outer", "right-inner", "left-inner"]}


def spare(**more):
    return {"id": "S", "part": "P1", "name": "your spare", **more}


def test_three_suspects_of_four_begin_with_what_takes_little(core):
    """A ring of four would settle few of them: each cause would lean on the rates of the others."""
    best = moves(core, job([THREE]))[0]

    assert best["minutes_x100"] <= 500
    assert best["bits_x1000"] > 900


def test_with_a_trusted_spare_at_hand_two_suspects_move_in_one_retest(core):
    """A spare for one of two suspects is offered, too."""
    case = job([TWO])
    case["units"].append(spare(prior=0.002))

    found = [m for m in moves(core, case) if "S" in m.get("fitted", {}).values()]

    assert {"right-inner": "S"} in [m["fitted"] for m in found]
    assert len(moves(core, case)[0]["fitted"]) >= 2


def spare_in(faulted=(), unit="S"):
    """A test with this unit at right outer."""
    return {"fitted": {**fitted(), "right-outer": unit}, "faulted": list(faulted)}


def hanging(tests, **prior):
    """A job with a spare, on which the unit at right outer hangs on its wire."""
    case = job(tests, now={"hanging": ["right-outer"]})
    case["units"].append(spare(**prior))
    return case


def test_a_unit_goes_back_where_the_spare_was_clean_to_be_told_whether_it_is_bad(core):
    """Left out it might be a good one that was bought anew: dirt that went with it shows the same."""
    found = moves(core, hanging([ONE, spare_in()], prior=0.01))

    assert [(move["move"], move["fitted"]) for move in found] == [("exchange", {"right-outer": "D"})]
    assert found[0]["minutes_x100"] == 170  # it is open: pull, plug in, the test
    assert english(found[0]["reason"]).startswith("All is clean with your spare.")


WIPED = {"fitted": fitted(), "faulted": ["right-outer"], "cleaned": ["right-outer"]}


def test_what_lies_outside_is_wiped_before_a_spare_goes_in_and_no_unit_has_to_go_back(core):
    """Nothing is opened for it: two minutes with the test, where the unit goes back for 1.7 and out again."""
    first = moves(core, hanging([ONE], prior=0.01) | {"now": {}})[0]
    second = moves(core, hanging([ONE, WIPED], prior=0.01) | {"now": {}})[0]
    done = core("reason", case=hanging([ONE, WIPED, spare_in()], prior=0.01))

    assert (first["move"], first["position"], first["minutes_x100"]) == ("clean", "right-outer", 200)
    assert second["fitted"] == {"right-outer": "S"}
    assert (done["verdict"]["causes"], done["next"]) == (["unit:D"], [])


def test_where_two_are_known_to_be_bad_the_spare_goes_in_beside_a_new_one_and_one_test_proves_both(core):
    followed = {"right-outer": "B", "left-inner": "D", "right-inner": "A", "left-outer": "C"}
    case = job([TWO, {"fitted": followed, "faulted": ["left-inner", "left-outer"]}])
    case["units"].append(spare(prior=0.01))
    answer = core("reason", case=case)

    assert answer["verdict"]["causes"] == ["unit:C", "unit:D"]
    assert answer["next"][0]["move"] == "replace"
    assert sorted(answer["next"][0]["fitted"].values()) == ["S", "new"]


def test_a_fault_that_comes_again_once_after_wiping_is_seen_twice_before_the_spare_goes_in(core):
    """The first may have been dirt, the last a false alarm: clean with the spare a good one would be bad."""
    tests = [ONE, {**WIPED, "faulted": []}, ONE]
    once = moves(core, hanging(tests, prior=0.01) | {"now": {}})
    twice = moves(core, hanging([*tests, ONE], prior=0.01) | {"now": {}})

    assert [move["move"] for move in once].count("retest") == 1
    assert english(once[0]["reason"]).startswith("Once more before the spare goes in")
    assert once[1]["fitted"] == twice[0]["fitted"] == {"right-outer": "S"}


@pytest.mark.parametrize(("sort", "minutes"), [("parking-sensor", 200), ("wheel-sender", 500)])
def test_what_is_cleaned_behind_a_cover_is_reached_first(core, sort, minutes):
    found = moves(core, job([ONE], sort=sort, minutes={"clean": 1, "test": 1}))

    assert [move["minutes_x100"] for move in found if move["move"] == "clean"] == [minutes]


def test_a_unit_that_faults_again_in_its_place_makes_way_for_the_spare(core):
    found = moves(core, hanging([ONE, spare_in(), ONE], prior=0.01))

    assert found[0]["fitted"] == {"right-outer": "S"}


def test_where_a_fault_stays_with_a_spare_in_the_circuit_is_repaired_before_the_spare_is_doubted(core):
    """Nine in ten it is the circuit: a repair in vain loses less than what two tests more would take."""
    case = hanging([ONE, spare_in(["right-outer"])], prior=0.01)
    answer = core("reason", case=case)
    doubted = moves(core, hanging([ONE, spare_in(["right-outer"])], prior=0.05))[0]

    assert answer["verdict"] is None
    assert answer["next"][0]["move"] == "repair"
    assert answer["next"][0]["cause"] == "circuit:right-outer"
    assert doubted["move"] == "exchange"


def new_in(faulted):
    """A test after the exchange was followed by a new unit at right inner."""
    return {"fitted": {**fitted(SWAP), "right-inner": "N"}, "faulted": faulted}


def test_a_new_unit_that_faults_is_tried_elsewhere_before_another_is_bought(core):
    """The circuit of its place may have been missed in the first test; the same test again can't tell."""
    bought = new_in(["right-inner"])
    case = job([ONE, FOLLOWED, bought, bought], now={"hanging": ["right-outer"]})
    case["units"].append({"id": "N", "part": "P1", "available": False})

    found = moves(core, case)

    # With the one that hangs: its position is open.
    assert (found[0]["move"], found[0]["fitted"]) == ("exchange", {"right-inner": "C", "right-outer": "N"})
    assert found[0]["reason"].startswith("Before you buy another part")
    assert [move["move"] for move in found[1:]] == ["replace", "retest"]

    elsewhere = {**fitted(SWAP), "right-inner": "C", "right-outer": "N"}
    case["now"]["hanging"].append("right-inner")
    for faulted, then in (("right-outer", "replace"), ("right-inner", "repair")):
        case["tests"] = [ONE, FOLLOWED, bought, bought, {"fitted": elsewhere, "faulted": [faulted]}]
        assert moves(core, case)[0]["move"] == then


def test_before_a_part_is_bought_its_unit_leaves_a_place_whose_circuit_is_not_cleared(core):
    """Both suspects faulted where a spare was clean once: a circuit that was missed looks the same."""
    places = [f"rear-{n}" for n in range(4)] + [f"front-{n}" for n in range(4)]
    in_turn = [
        ("ABCDEFGH", ["rear-2", "rear-3", "front-1", "front-2"]),
        ("FBACEDGH", ["front-1", "front-2"]),
        ("FBACESGH", ["front-2"]),
        ("FBACEGSH", ["front-1"]),
    ]
    tests = [{"fitted": dict(zip(places, sat, strict=True)), "faulted": bad} for sat, bad in in_turn]
    reach = dict(zip(places, [2, 3, 3, 2] * 2, strict=True))
    case = {
        "positions": [
            {"id": place, "group": place.partition("-")[0], "reach_minutes": reach[place]} for place in places
        ],
        "units": [{"id": unit, "part": "P1"} for unit in "ABCDEFGH"] + [spare(prior=0.01)],
        "tests": tests,
        "now": {"hanging": ["front-1", "front-2", "rear-0", "rear-2", "rear-3"]},
    }

    first, *others = moves(core, case)

    assert (first["move"], first["fitted"]) == ("exchange", {"front-1": "S", "front-2": "G"})
    assert first["reason"].startswith("Before you buy another part")
    assert "replace" in [move["move"] for move in others]


def test_a_part_is_bought_at_once_where_its_unit_faulted_in_two_places(core):
    case = job([ONE, FOLLOWED], now={"hanging": ["right-outer", "right-inner"]})

    assert [move["move"] for move in moves(core, case)] == ["replace", "retest"]


@pytest.mark.parametrize(
    ("minutes", "first", "taken"),
    [({}, "meter", 500), ({"meter": 47, "meter_found": 12}, "exchange", None), ({"meter": 2}, "meter", 300)],
)
def test_checks_of_the_wiring_that_take_long_do_not_come_before_an_exchange(core, minutes, first, taken):
    """After wiping, where the partner is dear to reach: their minutes end where they find the fault."""
    wiped = ONE | {"cleaned": ["right-outer"]}
    case = job([ONE, wiped], minutes=minutes)
    for place, reach in zip(case["positions"], (6, 6, 6, 1), strict=True):
        place["reach_minutes"] = reach

    best = moves(core, case)[0]

    assert best["move"] == first
    assert taken is None or best["minutes_x100"] == taken


def test_checks_take_what_they_do_where_they_find_the_fault_as_often_as_they_would(core):
    said = core("reason", case=job([STAYED], minutes={"meter": 30, "meter_found": 10}))
    chance = {each["cause"]: each["probability"] / 1e9 for each in said["causes"]}["circuit:right-outer"]
    checks = next(move for move in said["next"] if move["move"] == "meter")

    assert checks["minutes_x100"] == pytest.approx(100 * (3 + 30 - 20 * chance), abs=1)


def test_a_unit_known_to_be_bad_stays_out(core):
    proven = [ONE, spare_in(), ONE, spare_in()]

    assert moves(core, hanging(proven, prior=0.01)) == []


def test_where_a_part_weighs_little_nothing_goes_back(core):
    case = hanging([ONE, spare_in()], prior=0.01)
    case["minutes"] = {"part": 5}

    assert moves(core, case) == []


def test_a_good_unit_at_hand_goes_in_before_one_is_bought(core):
    case = job([ONE, FOLLOWED])
    case["units"].append(spare(prior=0.01))

    found = moves(core, case)

    assert [move["move"] for move in found[:2]] == ["exchange", "replace"]
    assert found[0]["fitted"] == {"right-inner": "S"}


def test_four_suspects_of_four_do_not_end_in_the_same_test_for_ever(core):
    """Feed and control unit were repaired in vain: one new part tells, where no good one is left."""
    every = sorted(fitted())
    tests = [{"fitted": fitted(), "faulted": every}]
    for cause in ("feed:rear", "control"):
        tests.append({"fitted": fitted(), "faulted": every, "repaired": [cause]})
    seen = []
    for _ in range(12):
        best = moves(core, job(tests))[0]
        assert best["move"] != "retest"
        seen.append(best["move"])
        if best["move"] == "listen":
            tests[-1].setdefault("listen", {})[best["position"]] = "silent"
            continue
        here = dict(tests[-1]["fitted"]) | best.get("fitted", {})
        if best["move"] == "replace":
            break
        assert best["move"] in ("clean", "exchange", "repair")
        cleaned = (best.get("positions") or [best["position"]]) if best["move"] == "clean" else []
        repaired = [best["cause"].partition("#")[0]] if best["move"] == "repair" else []
        tests.append({"fitted": here, "faulted": every, "cleaned": cleaned, "repaired": repaired})
    assert "replace" in seen


def test_front_is_exchanged_with_rear_when_the_part_is_the_same(core):
    case = job([{"fitted": {**fitted(), "f": "F"}, "faulted": ["right-outer"]}])
    case["positions"].append({"id": "f", "group": "front", "reach_minutes": 1})
    case["units"].append({"id": "F", "part": "P1"})

    assert moves(core, case)[0]["fitted"] == {"right-outer": "F", "f": "D"}


def test_two_suspects_with_each_other_are_listed_with_what_they_lack(core):
    found = moves(core, on_a_large_board(TWO))
    plain = [move for move in found if move.get("fitted") == {"right-outer": "C", "right-inner": "D"}]

    assert plain[0]["why_not"].startswith("Suspects only change places")
    assert "why_not" not in found[0]


def test_two_suspects_with_each_other_come_first_where_that_takes_least_to_the_end(core):
    """On four positions with no rate doubted, by the optimum too (test_planner_outside.py)."""
    best = moves(core, job([TWO], doubt=1))[0]

    assert best["fitted"] == {"right-outer": "C", "right-inner": "D"}
    assert best["reason"].startswith("Fewest to take apart.")
    said = {tuple(outcome["faulted"]): outcome["then"] for outcome in best["outlook"]}
    assert said["right-inner", "right-outer"].startswith("the causes are sensors")


def test_two_suspects_are_not_settled_among_themselves_where_the_rates_are_doubted(core):
    """Two bad circuits would look the same."""
    best = moves(core, job([TWO]))[0]

    assert best["move"] == "exchange"
    assert not {"A", "B"}.isdisjoint(best["fitted"].values())


# What a yard may have learned of its cars, and how far it trusts that.
LEARNED = {
    "rates": {"unit": 0.049, "circuit": 0.008, "blocked": 0.0066, "feed": 0.0014, "shows": 0.961},
    "doubt": {"unit": 1.5, "circuit": 1.5, "blocked": 1.8, "miss": 1.5, "false_alarm": 1.9},
}


def test_two_suspects_are_not_exchanged_to_and_fro_where_a_doubt_leaves_as_much_as_it_has_to(core):
    """Both are bad at 94.1 %, and 90.3 % where circuits fail 1.5 times as often: what lacks is confidence."""
    both = ["right-inner", "right-outer"]
    hanging = {"now": {"hanging": both}}
    tests = [TWO, {"fitted": fitted(SWAP), "faulted": both}]

    best = moves(core, job(tests, **LEARNED, **hanging))[0]

    assert best.get("fitted", {}).keys() != set(both)
    assert best["bits_x1000"] > 100


def test_several_positions_are_cleaned_before_one_retest(core):
    """After a drive through slush, say."""
    found = moves(core, job([TWO], rates={"blocked": 0.3}, minutes={"clean": 0.2, "pull": 3}))
    best = found[0]

    assert best["move"] == "clean"
    assert best["positions"] == ["right-inner", "right-outer"]
    assert "position" not in best
    assert best["minutes_x100"] == 140  # twelve seconds each to wipe from outside, the test
    cleanings = [move for move in found if move["move"] == "clean"]
    assert all(("position" in move) != ("positions" in move) for move in cleanings)


def test_retests_that_tell_nothing_more_come_to_an_end(core):
    """Four faults that come and go on twelve positions: tests alone never settled them before."""
    places = [f"p{n:02}" for n in range(12)]
    here = {place: f"u{n:02}" for n, place in enumerate(places)}
    shown = [[0, 4], [4, 10], [0, 3, 4], [3, 10], [0, 3], [0, 3, 4, 10], [4], [3, 10], [0, 4, 10], [0, 3]]
    case = {
        "positions": [{"id": place, "group": f"g{n // 4}"} for n, place in enumerate(places)],
        "units": [{"id": unit, "part": "P1"} for unit in here.values()],
        "tests": [{"fitted": here, "faulted": [places[n] for n in each]} for each in shown],
        "rates": {"shows": 0.5},
    }

    assert moves(core, case)[0]["move"] != "retest"


@pytest.mark.parametrize(("prior", "said"), [(None, True), (0.2, None), (0.03, False), (0.01, False)])
def test_a_spare_that_nobody_has_tested_is_said_to_be_one(core, prior, said):
    case = job([ONE])
    case["units"].append(spare() if prior is None else spare(prior=prior))
    found = [m for m in moves(core, case) if "S" in m.get("fitted", {}).values()]

    if said is None:
        assert found == []  # too doubtful to be proposed at all
        return
    # A good one right beside it is the better move, so that something speaks against the spare.
    case["positions"][2]["reach_minutes"] = 0
    case["minutes"] = {"pull": 0, "fit": 0}
    found = [m for m in moves(core, case) if "S" in m.get("fitted", {}).values()]
    assert found
    assert all(("Nobody has tested this spare" in move.get("why_not", "")) == said for move in found)


def test_a_test_that_would_look_the_same_either_way_says_so(core):
    stable = [ONE, ONE, ONE, ONE]
    retest = [move for move in moves(core, job(stable)) if move["move"] == "retest"]

    assert retest[0]["bits_x1000"] < 100
    assert retest[0]["why_not"] == "The test would most likely look the same either way."


def test_unplugging_says_nothing_about_the_cause_unless_a_place_is_in_doubt(core):
    """A suspect came to a place that never showed a fault, and all is clean: is the place watched?"""
    known = [move for move in moves(core, job([ONE])) if move["move"] == "unplug"]
    doubted = moves(core, job([ONE, VANISHED]))

    assert [move["why_not"] for move in known] == ["It says nothing about the cause."]
    unplug = next(move for move in doubted if move["move"] == "unplug")
    assert doubted.index(unplug) == 1
    assert unplug["position"] == "right-inner"
    assert "why_not" not in unplug
    assert unplug["reason"].startswith("No test has ever shown a fault at right inner")


@pytest.mark.parametrize("price", [300, 8000])
def test_no_part_is_bought_before_the_old_one_is_known_to_be_bad(core, price):
    """However cheap it is: each move says what it costs, no more."""
    found = moves(core, job([ONE], money={"labour_per_hour": 9000, "part_price": price}))

    assert "replace" not in [move["move"] for move in found]
    assert (found[0]["move"], found[0]["cost"]) == ("exchange", 740 * 150 // 100)


def test_a_part_for_one_that_is_known_to_be_bad_costs_labour_and_price(core):
    found = moves(core, job([ONE, FOLLOWED], money={"labour_per_hour": 9000, "part_price": 300}))

    assert (found[0]["move"], found[0]["cost"]) == ("replace", 4 * 150 + 300)


def test_without_a_rate_of_labour_money_says_nothing(core):
    priced = job([ONE], money={"labour_per_hour": 0, "part_price": 300})

    assert core("reason", case=priced) == core("reason", case=job([ONE]))


def test_a_proven_cause_is_not_argued_against(core):
    found = moves(core, job([ONE, FOLLOWED]))

    assert all("why_not" not in move for move in found if move["move"] == "replace")


@pytest.mark.parametrize(
    ("money", "field"),
    [
        ([], "money"),
        ({"labour": 1}, "money.labour"),
        ({"labour_per_hour": -1}, "money.labour_per_hour"),
        ({"labour_per_hour": 1.5}, "money.labour_per_hour"),
        ({"labour_per_hour": True}, "money.labour_per_hour"),
        ({"labour_per_hour": 1, "part_price": "3"}, "money.part_price"),
        ({"labour_per_hour": 1, "wrong_purchase": 10**12}, "money.wrong_purchase"),
    ],
    ids=str,
)
def test_money_that_is_none_is_refused_by_its_field(core, money, field):
    with pytest.raises(CoreError) as caught:
        core("reason", case=job([ONE], money=money))

    assert caught.value.field == field


def test_a_fault_that_comes_and_goes_is_waited_for_where_it_would_be_proof(core):
    """Exchanged and clean: with one showing in two, the same test again is cheaper than any work."""
    case = job([ONE, VANISHED], rates={"shows": 0.5})

    assert moves(core, case)[0]["move"] == "retest"


def test_a_meter_that_read_bad_before_any_test_leads_on_with_spares_at_hand(core):
    """Nothing was tested yet, so no unit is known to have come with the vehicle but those that sit there."""
    case = {
        "positions": [{"id": "p"}, {"id": "q"}],
        "units": [{"id": "A"}, {"id": "B"}, {"id": "C"}],
        "now": {"fitted": {"p": "A"}},
        "meter": [{"position": "p", "reads": "bad"}],
    }

    moves = core("reason", case=case)["next"]
    assert moves[0]["move"] == "retest"
    assert "meter" in [move["move"] for move in moves]


def test_a_circuit_that_only_its_prior_makes_likely_is_not_repaired(core):
    """A code that speaks of wiring at q stands on record, and the one fault showed at p."""
    case = {
        "positions": [{"id": "p"}, {"id": "q"}],
        "units": [{"id": "A"}, {"id": "B"}],
        "tests": [{"fitted": {"p": "A", "q": "B"}, "faulted": ["p"], "silent": ["q"]}],
        "likelihoods": [{"cause": "circuit:q", "factor": 1000}],
    }

    answer = core("reason", case=case)

    assert answer["causes"][0] == {"cause": "circuit:q", "probability": 834028357}
    assert "circuit:q" not in [move.get("cause") for move in answer["next"]]
