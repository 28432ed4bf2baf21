"""A circuit as a chain: how its faults are weighed, and which check comes next."""

import random
from fractions import Fraction
from functools import cache

import pytest

from server.core.harness import order
from server.core.harness.chain import NAMED
from server.core.harness.chain import WARM
from server.core.harness.chain import Chain
from server.core.harness.chain import Probe
from server.core.harness.chain import Segment
from server.core.parts.parking_wiring import HARNESS
from server.core.parts.sorts import SORTS
from tests.bench.harness import CHAIN
from tests.bench.harness import in_order
from tests.bench.harness import measured
from tests.bench.harness import ours
from tests.bench.harness import unread

KINDS = ("open", "high", "short", "loose")


def a_segment(rng, name):
    kinds = rng.sample(KINDS, rng.randint(1, 3))
    return Segment(name, {kind: rng.choice((1, 2, 3, 5, 8)) for kind in kinds}, False)


def a_probe(rng, name, segments):
    if rng.random() < 0.4:
        seen, kinds = (rng.choice(segments),), ()
    else:
        low, high = sorted(rng.sample(range(len(segments) + 1), 2))
        seen, kinds = tuple(segments[low:high]), tuple(rng.sample(KINDS, rng.randint(1, 3)))
    places = rng.choice(((), ("near",), ("far",), ("far",)))
    return Probe(name, seen, kinds, rng.choice((0.8, 0.9, 0.95)), 0.02, rng.choice((1, 2, 3, 5)), places, "")


def a_chain(rng):
    """Return a chain of three to seven segments, its checks, and the minutes to their places."""
    segments = tuple(a_segment(rng, f"s{n}") for n in range(rng.randint(3, 7)))
    names = [each.id for each in segments]
    checks = rng.randint(len(names) - 1, min(len(names) + 1, 7))
    chain = Chain(segments, tuple(a_probe(rng, f"c{n}", names) for n in range(checks)))
    return chain, {"near": rng.choice((0, 1, 3)), "far": rng.choice((2, 5, 10))}


def assert_chances_are_enumerated(chain, reads, sees):
    """Hold the chance of each segment to that of all its faults; `sees(probe, segment, kind)` as declared."""
    sums, total = {}, Fraction(0)
    for segment in chain.segments:
        for kind, share in segment.faults.items():
            weight = Fraction(share)
            for probe in chain.probes:
                bad = Fraction(probe.sees if sees(probe, segment, kind) else probe.false)
                weight *= {"bad": bad, "good": 1 - bad}.get(reads.get(probe.id), 1)
            sums[segment.id] = sums.get(segment.id, 0) + weight
            total += weight

    found = chain.chances(chain.read(chain.shares(), reads))

    for segment, chance in zip(chain.segments, found, strict=True):
        assert chance == pytest.approx(float(sums[segment.id] / total), abs=1e-9)


def seen(probe, segment, kind):
    return segment.id in probe.segments and (kind in probe.kinds or not probe.kinds)


@pytest.mark.parametrize("seed", range(60))
def test_the_chance_of_a_segment_is_that_of_all_its_faults_enumerated(seed):
    rng = random.Random(seed)
    chain, _ = a_chain(rng)
    reads = {probe.id: rng.choice(("good", "bad", "unclear")) for probe in chain.probes if rng.random() < 0.7}

    assert_chances_are_enumerated(chain, reads, seen)


def told_of_exchanged_channels(dead: bool, shows: float, false_alarm: float, amiss: float) -> tuple:
    """Return the chances that a fault is said to have moved, and to have stayed, with two channels exchanged.

    By every self-test there may be: each of the two positions faulted or clean, by the noisy-OR. One faulted
    alone is told, now and then as the other one; both, and neither, are "can't tell". `dead`: the channel is
    at fault, so it stays; else a wire is.
    """
    faulted = [1 - (1 - false_alarm) * (1 - shows) ** here for here in (dead, not dead)]
    stayed, moved = faulted[0] * (1 - faulted[1]), faulted[1] * (1 - faulted[0])
    return moved * (1 - amiss) + stayed * amiss, stayed * (1 - amiss) + moved * amiss


@pytest.mark.parametrize("shows", [0.95, 0.5])
def test_two_exchanged_channels_say_which_side_has_the_fault_however_often_a_test_shows_it(shows):
    """A fault that moved was weighed like a meter that missed it: the channel kept 1 in 20."""
    [probe] = [each for each in CHAIN.probes if each.id == "channels"]
    moved, stayed = told_of_exchanged_channels(True, shows, 0.002, amiss=0.005)
    assert 1 - probe.sees == pytest.approx(moved / (moved + stayed), abs=0.002)
    moved, stayed = told_of_exchanged_channels(False, shows, 0.002, amiss=0.02)
    assert probe.false == pytest.approx(stayed / (moved + stayed), abs=0.002)


def test_all_good_with_a_fault_that_moved_is_weighed_as_by_all_self_tests_enumerated():
    reads = {probe.id: "good" for probe in CHAIN.probes if probe.minutes}
    sums = {}
    for segment in CHAIN.segments:
        for kind, share in segment.faults.items():
            weight = share
            for probe in CHAIN.probes:
                if probe.id == "channels":
                    dead = segment.id == "channel"
                    moved, stayed = told_of_exchanged_channels(dead, 0.95, 0.002, 0.005 if dead else 0.02)
                    weight *= moved / (moved + stayed)
                elif probe.id in reads:
                    weight *= 1 - (probe.sees if seen(probe, segment, kind) else probe.false)
            sums[segment.id] = sums.get(segment.id, 0) + weight

    found = CHAIN.chances(CHAIN.read(CHAIN.shares(), reads))

    for segment, chance in zip(CHAIN.segments, found, strict=True):
        assert chance == pytest.approx(sums[segment.id] / sum(sums.values()), abs=0.01)
    assert dict(zip([each.id for each in CHAIN.segments], found, strict=True))["channel"] < 0.12


WARM_CHAIN = HARNESS.warm
WARM_KINDS = {"warm", "warm-supply", "warm-ground"}


@pytest.mark.parametrize("seed", range(40))
def test_what_shows_only_warm_is_weighed_as_enumerated_from_cold_and_warm_readings(seed):
    rng = random.Random(seed)
    reads = {
        probe.id: rng.choice(("good", "bad", "unclear")) for probe in WARM_CHAIN.probes if rng.random() < 0.5
    }
    cold = {probe.id: probe for probe in CHAIN.probes}

    def seen_cold_or_warm(probe, segment, kind):
        if kind in WARM_KINDS and not probe.id.endswith(WARM):
            return False
        if kind not in WARM_KINDS and probe.id in cold:
            return segment.id in probe.segments and kind in (cold[probe.id].kinds or (kind,))
        return seen(probe, segment, kind)

    assert_chances_are_enumerated(WARM_CHAIN, reads, seen_cold_or_warm)


def test_without_a_warm_reading_both_chains_tell_of_the_cold_faults_alike():
    """Nothing that was concluded from cold readings changes: the shares of what shows cold are the same."""
    for one, other in zip(CHAIN.segments, WARM_CHAIN.segments, strict=True):
        assert one.faults == {kind: share for kind, share in other.faults.items() if kind not in WARM_KINDS}


def test_a_round_is_all_warm_or_all_cold():
    cold, warm = ([WARM_CHAIN.probes[n].id for n in unread(WARM_CHAIN, WARM_CHAIN.shares(), {}, each)]
                  for each in (False, True))  # fmt: skip
    assert not [each for each in cold if each.endswith(WARM)]
    assert [each for each in warm if not each.endswith(WARM)] == []
    assert {"continuity" + WARM, "warm-splice" + WARM} <= set(warm)


def expected_minutes(chain, reach, choose=None):
    """Return the expected minutes until a segment is named or no check is left, by every way of going on.

    `choose(weights, unmade, opened)` takes one check; without it the cheapest of all is taken, everywhere.
    """

    @cache
    def to_the_end(reads):
        read = dict(reads)
        weights = chain.read(chain.shares(), read)
        left = [] if max(chain.chances(weights)) >= NAMED else unread(chain, weights, read)
        opened = tuple(place for probe in chain.probes if probe.id in read for place in probe.places)
        costs = []
        for n in [choose(weights, chain.unmade(read), opened)] if choose and left else left:
            probe = chain.probes[n]
            cost = probe.minutes + sum(reach[place] for place in probe.places if place not in opened)
            for reading in ("good", "bad"):
                share = sum(chain.after(weights, n, reading == "bad")) / sum(weights)
                cost += share * to_the_end(tuple(sorted([*reads, (probe.id, reading)])))
            costs.append(cost)
        return min(costs, default=0)

    return to_the_end(())


def by_order(chain, reach):
    return lambda weights, unmade, opened: order.best(chain, weights, unmade, opened, reach)


def test_the_order_of_checks_is_within_two_per_cent_of_the_best_of_all():
    rng, best, taken, worst = random.Random(7), 0, 0, 1
    for _ in range(40):
        chain, reach = a_chain(rng)
        least, here = expected_minutes(chain, reach), expected_minutes(chain, reach, by_order(chain, reach))
        best, taken, worst = best + least, taken + here, max(worst, here / least if least else 1)
    assert best * 0.999999 <= taken <= 1.001 * best
    assert worst <= 1.02


def test_a_fault_is_named_rightly_and_with_fewer_checks_than_one_after_the_other():
    """The whole of it is tests/bench/harness.py, with 1,000 harnesses."""
    by_our_order, from_the_sensor = [measured(150, 3, choose, 2) for choose in (ours(), in_order)]
    assert by_our_order["named"] >= 0.85 * 150
    assert by_our_order["right"] >= 0.95
    assert by_our_order["checks"] < 0.85 * from_the_sensor["checks"]
    assert by_our_order["minutes"] < 0.9 * from_the_sensor["minutes"]


def test_what_is_asked_for_no_more_is_read_all_the_same():
    of_old = [n for n in range(len(CHAIN.probes)) if not CHAIN.probes[n].minutes]
    assert [CHAIN.probes[n].id for n in of_old] == ["connector", "ground", "signal"]
    assert not set(of_old) & set(unread(CHAIN, CHAIN.shares(), {}))
    after = CHAIN.chances(CHAIN.read(CHAIN.shares(), {"connector": "bad"}))
    assert after[0] + after[1] > 0.9


WITH_A_CHAIN = [sort for sort in SORTS if sort.harness]


def rounds_of(chain, reach):
    """Yield (chance, minutes, whether a check read bad or a segment was named) of the rounds there may be,
    where one segment has a fault; what is rarer than one in five thousand is left out.
    """
    choose, first = by_order(chain, reach), chain.shares()
    begun = [(first, {}, (), 0.0)]
    while begun:
        weights, reads, opened, minutes = begun.pop()
        share = sum(weights) / sum(first)
        is_named = bool(reads) and len(chain.suspects(weights)) == 1
        if is_named or not unread(chain, weights, reads):
            yield share, minutes, is_named or "bad" in reads.values()
            continue
        n = choose(weights, chain.unmade(reads), opened)
        taken = minutes + order.minutes(chain, n, opened, reach)
        for reading in ("good", "bad") if share >= 0.0002 else ():
            after = chain.after(weights, n, reading == "bad")
            read = {**reads, chain.probes[n].id: reading}
            begun.append((after, read, opened + chain.probes[n].places, taken))


@pytest.mark.parametrize("sort", WITH_A_CHAIN, ids=lambda sort: sort.identity)
def test_a_round_of_checks_is_said_to_take_what_its_chain_takes(sort):
    harness = sort.harness
    rounds = list(rounds_of(harness.chain, harness.reach))
    assert sum(share for share, _, _ in rounds) > 0.999
    found = [(share, minutes) for share, minutes, is_found in rounds if is_found]
    mean = sum(share * minutes for share, minutes in found) / sum(share for share, _ in found)
    assert harness.found == pytest.approx(mean, abs=0.5)
    assert {minutes for _, minutes, is_found in rounds if not is_found} == {harness.all_good}


@pytest.mark.parametrize("sort", WITH_A_CHAIN, ids=lambda sort: sort.identity)
def test_each_check_of_a_chain_is_declared_once_in_both_ways(sort):
    chain, warm = sort.harness.chain, sort.harness.warm
    made = {each.id for each in chain.probes}
    again = {each.id.replace(WARM, "") for each in warm.probes if each.id.endswith(WARM)}
    assert len(made) == len(chain.probes)
    assert sorted(each["id"] for each in sort.circuit_checks) == sorted(made | again)
    assert {each["id"] for each in sort.circuit_checks if "warms" in each} == again - made
    assert [each.id for each in warm.segments] == [each.id for each in chain.segments]
    segments = {each.id for each in sort.harness.chain.segments}
    assert set(sort.harness.names) == set(sort.harness.mends) == segments
    for probe in chain.probes + warm.probes:
        assert set(probe.segments) <= segments
        assert set(probe.places) <= set(sort.harness.reach)
        assert probe.to in segments | {"", "ground", "neighbour"}
