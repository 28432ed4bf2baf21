"""The shares of the classes of causes: the maximum is that of SciPy's optimizer on the same likelihood."""

from math import exp
from math import log
from random import Random

import pytest
from scipy.optimize import minimize

from server.core.infer.case import RATES
from server.core.infer.variations import CLASSES
from server.lessons import composed
from server.lessons import shares
from server.lessons.composed import Composed
from server.lessons.maximum import maximum_of

REAR, BOTH = composed.layout((4, 4, 4, 1, 1)), composed.layout((8, 8, 8, 2, 1))
SUM = sum(RATES[name] for name in CLASSES)


def alone_of(kind):
    """The composition of one cause, of no class where nothing was there."""
    return composed.composition([int(name == kind) for name in CLASSES])


def proven(kind, has=BOTH, sure=1.0):
    """A job with one cause of a class, proven as sure as that; else it is the sensor."""
    alone = {each: alone_of(each) for each in CLASSES}
    other = "unit" if kind != "unit" else "circuit"
    return Composed(has, [(alone[kind], sure)] + ([(alone[other], 1.0 - sure)] if sure < 1 else []))


def weighed(jobs):
    return [composed.counted(job, 1) for job in jobs]


def maximum(jobs):
    return maximum_of(weighed(jobs)).odds


def learned(jobs):
    return shares.learned_at(maximum_of(weighed(jobs)))


def random_jobs(seed, count=60):
    dice = Random(seed)
    jobs = []
    for _ in range(count):
        weights = {}
        for _ in range(dice.randint(1, 5)):
            causes = [0] * len(CLASSES)
            for _ in range(dice.choice([0, 1, 1, 1, 2, 3])):
                causes[dice.choice([0, 0, 0, 1, 2, 2, 3, 4])] += 1
            weights[composed.composition(causes)] = dice.random() ** 3
        total = sum(weights.values())
        jobs.append(Composed(dice.choice([REAR, BOTH]), [(key, w / total) for key, w in weights.items()]))
    return jobs


def optimum(jobs):
    """The maximum by SciPy over the logarithms of five ratios: the scale of all odds is free."""

    def odds_at(ratios):
        return tuple(
            exp(each) * odds for each, odds in zip([0.0, *ratios], composed.DEFAULT_ODDS, strict=True)
        )

    found = minimize(
        lambda ratios: -composed.log_posterior(odds_at(ratios), jobs),
        [0.0] * 5,
        method="BFGS",
        options={"gtol": 1e-9, "maxiter": 10_000},
    )
    x = odds_at(found.x)
    scale = sum(n * d for n, d in zip(BOTH, composed.DEFAULT_ODDS, strict=True))
    return [each * scale / sum(n * y for n, y in zip(BOTH, x, strict=True)) for each in x]


@pytest.mark.parametrize("seed", range(5))
def test_the_maximum_is_that_of_scipys_optimizer_to_1e_6(seed):
    jobs = random_jobs(seed)

    ours, theirs = maximum(jobs), optimum(jobs)

    assert [log(a / b) for a, b in zip(ours, theirs, strict=True)] == pytest.approx([0.0] * 6, abs=1e-6)


def test_without_a_job_all_is_as_by_default():
    found = learned([])

    for name in CLASSES:
        assert found[name].value == pytest.approx(RATES[name], rel=1e-9)
        assert (found[name].low, found[name].high) == (0.0, pytest.approx(SUM))


@pytest.mark.parametrize("kind", CLASSES)
def test_the_sum_stays_and_what_was_found_gains(kind):
    found = learned([proven(kind, has) for has in (REAR, BOTH) for _ in range(20)])

    assert sum(each.value for each in found.values()) == pytest.approx(SUM, rel=1e-9)
    assert found[kind].value > RATES[kind]
    assert all(found[name].value < RATES[name] for name in CLASSES if name != kind)


def test_a_larger_layout_alone_moves_nothing():
    """Twice the positions are twice the causes: the same shares are expected of a yard of large cars."""
    for has in (REAR, BOTH):
        whole = sum(n * rate for n, rate in zip(has, composed.DEFAULT_ODDS, strict=True))
        mixed = [
            (alone_of(each), n * rate / whole)
            for each, n, rate in zip([*CLASSES, "nothing"], has, composed.DEFAULT_ODDS, strict=True)
        ]
        found = learned([Composed(has, mixed)] * 200)
        for name in CLASSES:
            assert found[name].value == pytest.approx(RATES[name], rel=1e-6)


def test_a_job_with_eight_faults_counts_as_one():
    eight = Composed(BOTH, [((0, 8, 0, 0, 0, 0), 1.0)])

    assert composed.weight_of(eight) * 8 == pytest.approx(1.0)
    assert learned([eight])["circuit"].value == pytest.approx(
        learned([proven("circuit")])["circuit"].value, rel=1e-9
    )


def test_twenty_nonsense_jobs_move_the_shares_no_more_than_their_number_allows():
    honest = [proven("unit")] * 160 + [proven("circuit")] * 16 + [proven("blocked")] * 24
    nonsense = [Composed(BOTH, [((0, 0, 0, 2, 1, 0), 1.0)])] * 20

    before, after = maximum(honest), maximum(honest + nonsense)

    def share_of_faults(x, kinds):
        parts = [n * each for n, each in zip(BOTH, x, strict=True)]
        return sum(parts[CLASSES.index(kind)] for kind in kinds) / sum(parts)

    moved = share_of_faults(after, ["feed", "control"]) - share_of_faults(before, ["feed", "control"])
    assert 0 < moved <= 20 / (len(honest) + len(nonsense))


def test_what_is_less_sure_has_wider_bounds_and_moves_less():
    sure = learned([proven("circuit")] * 10 + [proven("unit")] * 40)["circuit"]
    unsure = learned([proven("circuit", sure=0.6)] * 10 + [proven("unit")] * 40)["circuit"]

    assert unsure.value < sure.value
    assert (unsure.high - unsure.low) / unsure.value > (sure.high - sure.low) / sure.value


def test_dirt_or_nothing_is_no_surer_than_it_is_known_how_rare_all_causes_are():
    """What showed once and never again: no number of such jobs says how many of them had dirt."""
    either = Composed(BOTH, [(alone_of("blocked"), 0.83), (alone_of("nothing"), 0.17)])
    dirt = [proven("blocked")] * 100

    unsure = learned([either] * 100 + [proven("unit")] * 400)["blocked"]
    sure = learned(dirt + [proven("unit")] * 400)["blocked"]

    assert unsure.low < sure.low * 0.9
    assert learned([either] * 1000 + [proven("unit")] * 4000)["blocked"].low < sure.value * 0.9


@pytest.mark.parametrize("seed", range(3))
def test_where_tests_alarm_for_nothing_more_often_less_dirt_is_learned(seed):
    jobs = random_jobs(seed)
    usual = composed.DEFAULT_ODDS[-1]

    found = [maximum_of(weighed(jobs), alarm=usual * times).odds for times in (1, 3)]

    assert found[1][-1] > found[0][-1]
    best = composed.log_posterior(found[1], jobs, usual * 3)
    assert best > composed.log_posterior(found[0], jobs, usual * 3)


def test_no_step_lowers_the_posterior():
    jobs = random_jobs(9)
    at_default = composed.log_posterior(composed.DEFAULT_ODDS, jobs)

    assert composed.log_posterior(maximum(jobs), jobs) > at_default
