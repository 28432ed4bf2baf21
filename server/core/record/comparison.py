"""A record from another installation: folded by itself, and held against what was concluded there.

A record holds whole jobs, and of sensors that came into them from other work only what they were
when they came. Where that other work would have counted too, the answers can differ; then both are
told.
"""

from .. import phrases
from ..codes.labels import shown
from ..log.envelope import FORMAT_VERSION

_DEVICE = "d0000000000000000"

# What a unit's view says that has to come out alike, and what it is called.
_UNIT = (
    ("shown", "its label"),
    ("part", "its part number"),
    ("serial", "its serial"),
    ("place", "where it is"),
    ("disputed", "whether two places are on record"),
    ("tests", "its tests"),
    ("lost", "whether it got mixed up"),
)
_OF_A_TEST = ("job", "n", "at", "mark")

# Why it may read otherwise, by whether the same core concluded.
_WHY = {
    True: "Other work that is not in this file counted there.",
    False: "There, another version of this app was used, or other work that is not in this file counted.",
}


def stand_ins(elsewhere: list) -> list[dict]:
    """Return an entry for each {"unit", "code", "part", "serial", "place"} that came from other work.

    Nobody recorded these: they only introduce the sensor before the record names it.
    """
    made = []
    for unit in elsewhere:
        data = {name: unit[name] for name in ("unit", "code", "part", "serial", "place")}
        data["how"] = "tapped"
        made.append(
            {
                "device": _DEVICE,
                "seq": len(made) + 1,
                "prev": "" if not made else "0" * 64,
                "v": FORMAT_VERSION,
                "at": 0,
                "actor": "",
                "job": None,
                "kind": "unit_added",
                "data": data,
            }
        )
    return made


def told(unit: dict | None, jobs: list) -> dict:
    """Return what an installation concludes, to stand in a record; `unit` and `jobs` are views."""
    of_unit = None
    if unit:
        of_unit = {name: unit[name] for name, _ in _UNIT}
        of_unit["tests"] = [_without_words(test) for test in unit["tests"]]
        of_unit["elsewhere"] = unit["history"]["sentence"]
    of_jobs = {}
    for job in jobs:
        reasoning = job["reasoning"]
        of_jobs[job["id"]] = {
            "sentence": reasoning["sentence"] if reasoning else "",
            "probability": reasoning["probability"] if reasoning else None,
            "clear": reasoning["clear"] if reasoning else None,
        }
    return {"unit": of_unit, "jobs": of_jobs}


def where(unit: dict) -> str:
    """Return where a unit is, for those who read it elsewhere: what is theirs there is not yours here."""
    return "By this record it is {}.".format(unit["where"].replace("your", "their"))


def compared(there: dict, unit: dict | None, jobs: list, elsewhere: list, same_core: bool) -> dict:
    """Return what this core makes of a record beside what was concluded `there`, in sentences.

    `same_core`: it was concluded there by the very core that runs here.
    """
    here = told(unit, jobs)
    differs = []
    if unit and isinstance(there.get("unit"), dict):
        for name, what in _UNIT + (("elsewhere", "what it did elsewhere"),):
            if name in there["unit"] and _codes(there["unit"][name]) != _codes(here["unit"][name]):
                differs.append(phrases.sentence_case(what) + ".")
    for job in jobs:
        other = there["jobs"].get(job["id"])
        if other is not None and other != here["jobs"][job["id"]]:
            differs.append(_reads(job["title"], other, here["jobs"][job["id"]]))
    if not differs:
        said = "Worked out again here from these entries alone, it comes to the same."
    else:
        said = "Worked out again here from these entries alone, something reads otherwise. " + _WHY[same_core]
    return {
        "same": not differs,
        "sentence": said,
        "differs": differs,
        "elsewhere": _elsewhere(elsewhere),
    }


def _without_words(test: dict) -> dict:
    """Return what a test read, in ids and figures."""
    return {name: test[name] for name in _OF_A_TEST}


def _codes(value):
    """Return a value to be compared; tests in records from before had their words beside the codes."""
    if not isinstance(value, list):
        return value
    return [_without_words(each) if _is_test(each) else each for each in value]


def _is_test(value) -> bool:
    return isinstance(value, dict) and all([name in value for name in _OF_A_TEST])


def _reads(title: str, there: dict, here: dict) -> str:
    return "{}: there it said: {} Here it says: {}".format(title, _standing(there), _standing(here))


def _standing(job: dict) -> str:
    if not job["sentence"] or job["clear"] is None:
        return "No test."
    figures = "nothing is left to fix: {} sure".format(phrases.percent(job["clear"]))
    if job["probability"] is not None:
        figures = "{} sure; {}".format(phrases.percent(job["probability"]), figures)
    return "{} ({}).".format(job["sentence"].rstrip("."), figures)


def _elsewhere(units: list) -> str:
    if not units:
        return ""
    names = phrases.listed([shown(unit["code"]) or "a sensor without a label" for unit in units])
    return "{} came from other work, which is not in this file.".format(phrases.sentence_case(names))
