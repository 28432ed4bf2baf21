"""Jobs by name, driven through the core, and each told as the app would tell it: for reading through.

`python -m tests.core.scenarios [NAME ...]` prints them, with `--moves 3` the best three moves of each. Ten
are kept in golden/; when a sentence changed on purpose, `python -m tests.core.scenarios --renew` writes
them afresh: read what git shows as changed before you commit it.
"""

import argparse
import sys
from pathlib import Path

from tests.core.driver import Driver
from tests.core.driver import home

OUTER, INNER = "rear-right-outer", "rear-right-inner"
SWAPPED = {"rear_right_outer": home(INNER), "rear_right_inner": home(OUTER)}
CHECKS = ("connector", "ground", "supply", "signal")


def first_test(job, *faulted, layout="rear-4", **how):
    """Begin a job and test it once."""
    job.begin(layout=layout)
    job.test(*faulted, **how)
    job.photograph()
    return job


def swapped(job, *faulted, before=(OUTER,), **how):
    """Test, exchange right outer with right inner, test again."""
    first_test(job, *before, **how)
    job.exchange(**SWAPPED)
    job.test(*faulted)
    return job


def single(job):
    """Give the first test, one fault."""
    first_test(job, OUTER)


def follows(job):
    """Let the fault go with its sensor."""
    swapped(job, INNER)


def stays(job):
    """Let the fault stay at its position."""
    swapped(job, OUTER)


def vanished(job):
    """Let the fault be gone once the parts were handled."""
    swapped(job)


def vanished_clear(job):
    """The same, and another clean test."""
    swapped(job)
    job.test()


def follows_twice(job):
    """Bring the sensors home again: the fault follows back."""
    follows(job)
    job.exchange(rear_right_outer=home(OUTER), rear_right_inner=home(INNER))
    job.test(OUTER)


def many_that_agree(job):
    """Let more tests than needed say the same."""
    follows(job)
    job.test(INNER)
    job.test(INNER)


def both_places(job):
    """Let the fault be at both positions after the exchange."""
    swapped(job, INNER, OUTER)


def replaced_and_proven(job):
    """Replace what the verdict names; a clean test proves it."""
    follows(job)
    job.new_unit(INNER)
    job.guided()
    job.test()


def replaced_still_faulted(job):
    """Replace what the verdict names; the fault is still there."""
    follows(job)
    job.new_unit(INNER)
    job.guided()
    job.test(INNER)


def two_faults(job):
    """Give two suspects at the first test."""
    first_test(job, "rear-left-outer", INNER, layout="both-8")


def two_faults_follow(job):
    """Exchange both in one retest; both follow."""
    two_faults(job)
    left, front = "rear-left-outer", "front-right-outer"
    job.exchange(rear_left_outer=home(OUTER), rear_right_outer=home(left),
                 rear_right_inner=home(front), front_right_outer=home(INNER))  # fmt: skip
    job.test(OUTER, front)


def neighbours(job):
    """Give three of four faulted."""
    first_test(job, "rear-left-outer", "rear-left-inner", INNER)


def all_four(job):
    """Give a bumper that is faulted as a whole."""
    first_test(job, "rear-left-outer", "rear-left-inner", INNER, OUTER)


def rear_of_eight(job):
    """Let the rear be faulted as a whole and the front be clean: what they share."""
    first_test(job, "rear-left-outer", "rear-left-inner", INNER, OUTER, layout="both-8")


def everything(job):
    """Let all of eight be faulted."""
    positions = [p + "-" + s for p in ("front", "rear") for s in
                 ("left-outer", "left-inner", "right-inner", "right-outer")]  # fmt: skip
    first_test(job, *positions, layout="both-8")


def blocked(job):
    """Clean the suspect; the next test is clean."""
    first_test(job, OUTER)
    job.fact("cleaned", position=OUTER, note="")
    job.test()


def blocked_clear(job):
    """The same, tested once more."""
    blocked(job)
    job.test()


def cleaned_still(job):
    """Clean the suspect; the fault is still there."""
    first_test(job, OUTER)
    job.fact("cleaned", position=OUTER, note="")
    job.test(OUTER)


def unheard(job):
    """Forget the sounder at the first test."""
    first_test(job, OUTER, heard=False)


def unheard_second(job):
    """Forget the sounder after the exchange."""
    first_test(job, OUTER)
    job.exchange(**SWAPPED)
    job.test(INNER, heard=False)


def unplugged_clean(job):
    """Unplug the suspect; the test does not notice."""
    first_test(job, OUTER)
    job.fact("move_started", move="unplug", fitted={}, position=OUTER, reason="")
    job.test(unplugged=[OUTER])


def unplugged_seen(job):
    """Unplug the suspect; the test notices."""
    first_test(job, OUTER)
    job.fact("move_started", move="unplug", fitted={}, position=OUTER, reason="")
    job.test(OUTER, unplugged=[OUTER])


def silent(job):
    """Let the test after the exchange not report on one position."""
    first_test(job, OUTER)
    job.exchange(**SWAPPED)
    job.test(OUTER, silent=[INNER])


def meter_good(job):
    """Measure the suspect's circuit: every check is good."""
    first_test(job, OUTER)
    measure(job, OUTER)


def meter_bad(job):
    """Measure the circuit where the fault stayed: one check is bad."""
    stays(job)
    job.fact("circuit_measured", position=OUTER, check="ground", value="12", reads="bad")


def measured_well_where_it_stayed(job):
    """Measure the circuit where the fault stayed: every check is good."""
    stays(job)
    measure(job, OUTER)


def wiring_repaired(job):
    """Repair the circuit where the fault stayed."""
    meter_bad(job)
    job.fact("circuit_repaired", cause="circuit:" + OUTER, what="plug cleaned")
    job.test()


def comes_and_goes(job):
    """Give a fault that comes and goes, first seen."""
    first_test(job, OUTER, came_and_went=True)


def comes_and_goes_follows(job):
    """Let a fault that comes and goes follow its sensor."""
    swapped(job, INNER, came_and_went=True)


def comes_and_goes_proof(job):
    """Prove a replacement of a fault that comes and goes."""
    comes_and_goes_follows(job)
    job.test(INNER)
    job.test(INNER)
    job.new_unit(INNER)
    job.guided()
    job.test()


def comes_and_goes_vanished(job):
    """Count clean tests of a fault that was handled and comes and goes."""
    swapped(job, came_and_went=True)
    job.test()


def no_fault(job):
    """Show no fault at all."""
    first_test(job)


def spare_used(job):
    """Fit a spare for the suspect; the fault is gone with it."""
    job.begin()
    job.labels["u0000000spare"] = job.codes[-1]
    job.fact("unit_added", unit="u0000000spare", part="PS-1", serial="", code=job.codes[-1],
             how="scanned", place="stock")  # fmt: skip
    job.test(OUTER)
    job.photograph()
    job.exchange(rear_right_outer="u0000000spare")
    job.test()


def spare_at_hand(job):
    """Have a spare in stock when the fault is first seen."""
    job.begin()
    job.labels["u0000000spare"] = job.codes[-1]
    job.fact("unit_added", unit="u0000000spare", part="PS-1", serial="", code=job.codes[-1],
             how="scanned", place="stock")  # fmt: skip
    job.test(OUTER)
    job.photograph()


def twelve(job):
    """Give three suspects of twelve."""
    first_test(job, "front-left-outer", "rear-right-inner", "rear-left-middle", layout="both-12")


def drawn(job, *names):
    """Return positions drawn along the rear, from left to right."""
    return job.core("drawn_positions", sort="parking-sensor", positions=[
        {"name": name, "group": "rear", "reach_minutes": 3, "x": 300 + 200 * n, "y": 980}
        for n, name in enumerate(names)
    ])  # fmt: skip


def own_names(job):
    """Name the positions as somebody would."""
    faulted_as_drawn(job, drawn(job, "driver side", "tow bar", "passenger side"), 1)


def lone(job):
    """Have one position only."""
    faulted_as_drawn(job, drawn(job, "middle"), 0)


def faulted_as_drawn(job, positions, bad):
    """Come to a baseline fault at the position `bad`, by its place among those that were drawn."""
    job.fact("job_opened", vehicle={"id": "v1", "name": "Old van", "vin": ""}, complaint="beeps",
             layout="own", part="", positions=positions)  # fmt: skip
    job.tap()
    job.tap()
    job.test(positions[bad]["id"])
    job.photograph()


def disputed(job):
    """Let two phones fit one sensor at two positions before the retest."""
    first_test(job, OUTER)
    job.exchange(**SWAPPED)
    other = Driver(job.core, device="dfedcba9876543210")
    other.force("unit_fitted", unit=home(OUTER), position="rear-left-outer", how="tapped", override="")
    job.events += other.events
    job.force("test_run", heard=True, faulted=[INNER], silent=[], unplugged=[], codes=[],
              came_and_went=False, note="")  # fmt: skip


def another_one_shows(job):
    """Let a fault show where none was, beside the one that follows."""
    swapped(job, INNER, "rear-left-outer")


def measure(job, position):
    """Go through all checks of a circuit, each good."""
    for check in CHECKS:
        job.fact("circuit_measured", position=position, check=check, value="", reads="good")


SCENARIOS = {
    scenario.__name__: scenario
    for scenario in (
        single, follows, stays, vanished, vanished_clear, follows_twice, many_that_agree, both_places,
        replaced_and_proven, replaced_still_faulted, two_faults, two_faults_follow, neighbours, all_four,
        rear_of_eight, everything, blocked, blocked_clear, cleaned_still, unheard, unheard_second,
        unplugged_clean, unplugged_seen, silent, meter_good, meter_bad, measured_well_where_it_stayed,
        wiring_repaired, comes_and_goes, comes_and_goes_follows, comes_and_goes_proof,
        comes_and_goes_vanished, no_fault, spare_used, spare_at_hand, twelve, own_names, lone, disputed,
        another_one_shows,
    )
}  # fmt: skip


def told(core, name: str, moves: int = 1, step: bool = False) -> str:
    """Return a scenario as a person would read it on the phone: the conclusion and its best moves.

    With `step` what is to be done now comes first; the golden files leave that to the tests of the flow.
    """
    core("reset", events=[])
    job = Driver(core)
    SCENARIOS[name](job)
    view = job.view()
    evidence = core("evidence", job=job.job)
    lines = [(SCENARIOS[name].__doc__ or "").strip(), ""]
    if step:
        lines += ["NOW  " + view["step"]["title"], "     " + view["step"]["text"]]
    reasoning = view["reasoning"]
    lines += ["SAYS " + reasoning["sentence"], "     " + reasoning["detail"]]
    lines += ["NOTE " + note for note in reasoning["aside"]]
    lines += ["WHY  " + line for line in evidence["carries"]]
    lines += ["ELSE " + line for line in (evidence["runner_up"], reasoning["else_words"]) if line][:1]
    if evidence["apart"]:
        lines.append("TELL " + evidence["apart"]["sentence"])
        lines += ["     - {result}: {then}".format(**row) for row in evidence["apart"]["results"]]
    for key in ("sentence", "run_words"):
        if view["proof"][key]:
            lines.append("PROOF " + view["proof"][key])
    for move in view["moves"][:moves]:
        lines += ["", "MOVE " + move["title"], "     " + move["reason"]]
        if move["why_not"]:
            lines.append("     Why not: " + move["why_not"])
        lines += ["     - {chance_words}: {result}: {then}".format(**row) for row in move["outlook"]]
    return "\n".join(line.rstrip() for line in lines) + "\n"


GOLDEN = Path(__file__).parent / "golden"


def main() -> None:
    """Print scenarios, or renew the golden files."""
    from tests.hosts import Core

    asked = argparse.ArgumentParser(description="Jobs told as the app tells them.")
    asked.add_argument("names", nargs="*", default=list(SCENARIOS))
    asked.add_argument("--moves", type=int, default=1)
    asked.add_argument("--renew", action="store_true", help="write the golden files afresh")
    options = asked.parse_args()
    if options.renew:
        for file in sorted(GOLDEN.glob("*.txt")):
            file.write_text(told(Core(), file.stem), "utf-8")
        return
    for name in options.names:
        sys.stdout.write(f"=== {name}: {told(Core(), name, options.moves, step=True)}\n")


if __name__ == "__main__":
    main()
