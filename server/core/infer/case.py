"""A case as the reasoning works on it: numbers in place of ids, complete and free of contradictions.

Beside it what is assumed where a case says nothing else. case_form.py makes one of what was handed in.
"""

from collections import namedtuple

# Common practice, no source; every one can be adjusted per case.
RATES = {
    "unit": 0.05,
    "circuit": 0.005,
    "blocked": 0.01,
    "feed": 0.001,
    "control": 0.001,
    "shows": 0.95,
    "again": 0.3,
    "false_alarm": 0.002,
    "meter_sees": 0.95,
    "meter_false": 0.02,
    # How surely each cause keeps a unit from ticking, and how often one that works goes unheard.
    "tick_unit": 0.7,
    "tick_circuit": 0.5,
    "tick_feed": 0.95,
    "tick_control": 0.95,
    "tick_false": 0.03,
}
# Minutes of work, common practice, no source. `part` is no time anybody spends: it is what buying
# a part that was not needed weighs, in minutes of work. `fit` is all of it, `plug` the first part of it:
# plugged in and locked a unit may hang on its wire, which does for a test. `meter` is a round of checks of a
# circuit in which nothing is found, `meter_found` one that ends where a fault is, like `meter` if left out.
MINUTES = {
    "reach": 3.0,
    "pull": 0.5,
    "plug": 0.2,
    "fit": 0.5,
    "test": 1.0,
    "clean": 1.0,
    "meter": 4.0,
    "meter_found": 4.0,
    "listen": 0.5,
    "repair": 20.0,
    "part": 60.0,
}
CONFIDENCE = 0.95
# How many times wrong each class of rates may be before a conclusion that leans on it is none; a case may
# say it class by class.
DOUBT = 3.0
NOBODY = -1

Position = namedtuple("Position", ("id", "group", "reach", "name"))
Unit = namedtuple("Unit", ("id", "prior", "name", "part", "available"))
# `fitted` has one entry a position: the number of the unit there, or NOBODY.
# `at_once`: run straight after the one before, with nothing done to bring the fault out. `waits`: it is not
# settled what sat where, or whether it is a test of its own. `listened` has (position, whether it ticked) of
# the positions that somebody listened at with these units in them.
Test = namedtuple(
    "Test",
    (
        "fitted", "faulted", "silent", "unplugged", "cleaned", "repaired", "heard", "at_once", "waits",
        "listened",
    ),
)  # fmt: skip
Meter = namedtuple("Meter", ("position", "bad", "generation"))
Now = namedtuple("Now", ("fitted", "cleaned", "repaired", "loose", "hanging"))
Case = namedtuple(
    "Case",
    (
        "positions", "groups", "units", "tests", "meter", "now", "rates", "minutes", "confidence",
        "doubt", "likelihoods", "priors", "money", "sort",
    ),
)  # fmt: skip
# What a test came after; left out, it is not known, and the test counts in full.
AT_ONCE, AFTER = "at_once", ("at_once", "provoked", "another_day")
