"""A record from another installation: folded by itself, and held against what was concluded there.

A record holds whole jobs, and of sensors that came into them from other work only what they were
when they came. Where the answers differ, that is said with what differs, and no reason is made up for it.

What is compared is what was decided: codes, ids and figures. The sentence of a job is compared only where
the very core that runs here said it, in the same form: another version may say the same otherwise. Records
of version 1 hold sentences as text, and of a job no causes; that text is shown as it is and says nothing of
a difference, the figures beside it do.
"""

from ..codes.labels import shown
from ..log.envelope import FORMAT_VERSION
from ..messages import all_of
from ..messages import message
from ..messages import percent
from ..words import words

_DEVICE = "d0000000000000000"

# What a unit's view says that has to come out alike, and the message that names it.
_UNIT = (
    ("shown", "record-what-label"),
    ("part", "record-what-part"),
    ("serial", "record-what-serial"),
    ("place", "record-what-place"),
    ("disputed", "record-what-disputed"),
    ("tests", "record-what-tests"),
    ("lost", "record-what-lost"),
)
# What of a list is codes and figures, by its name; older records have words beside them, or less.
_CODES = {"tests": ("job", "n", "at", "mark"), "lost": ("at", "count", "settled")}
_ELSEWHERE = ("tests", "passed", "faulted", "explained", "vehicles", "condemned", "chance")
_FIGURES = ("probability", "clear", "causes")


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
        for name in sorted(_CODES):
            of_unit[name] = [_only(_CODES[name], each) for each in unit[name]]
        of_unit["elsewhere"] = _only(_ELSEWHERE, unit["history"])
    of_jobs = {}
    for job in jobs:
        reasoning = job["reasoning"]
        of_jobs[job["id"]] = {
            "sentence": reasoning["sentence"] if reasoning else "",
            "probability": reasoning["probability"] if reasoning else None,
            "clear": reasoning["clear"] if reasoning else None,
            "causes": _causes(reasoning),
        }
    return {"unit": of_unit, "jobs": of_jobs}


def where(unit: dict) -> dict:
    """Return where a unit is, for those who read it elsewhere: what is theirs there is not yours here."""
    place = unit["where"]
    args = dict(place["args"])
    if "whose" in args:
        args["whose"] = words.THEIRS
    return message("record-where", place=message(place["msg"], **args))


def compared(there: dict, unit: dict | None, jobs: list, elsewhere: list, same_core: bool) -> dict:
    """Return what this core makes of a record beside what was concluded `there`, in messages.

    `same_core`: it was concluded there by the very core that runs here.
    """
    here = told(unit, jobs)
    differs = []
    if unit and isinstance(there.get("unit"), dict):
        for name, what in _UNIT + (("elsewhere", "record-what-elsewhere"),):
            if name in there["unit"] and not _alike(there["unit"][name], here["unit"][name]):
                differs.append(_unlike_values(what, there["unit"][name], here["unit"][name]))
    for job in jobs:
        other = there["jobs"].get(job["id"])
        if other is not None and _unlike(other, here["jobs"][job["id"]], same_core):
            differs.append(_reads(job["title"], other, here["jobs"][job["id"]]))
    if not differs:
        said = message("record-same")
    else:
        said = message("record-otherwise")
    return {
        "same": not differs,
        "sentence": said,
        "differs": differs,
        "elsewhere": _elsewhere(elsewhere),
    }


def concluded(jobs: list) -> list[dict]:
    """Return what the jobs of a record come to, a message each; `jobs` are views."""
    said = told(None, jobs)["jobs"]
    return [
        message("record-concludes", title=job["title"], standing=_standing(said[job["id"]])) for job in jobs
    ]


def _unlike_values(what: str, there, here) -> dict:
    """Return what differs, with both readings where these are texts."""
    if isinstance(there, str) and isinstance(here, str):
        none = message("record-nothing")
        return message("record-value", what=message(what), there=there or none, here=here or none)
    return message(what)


def _only(names: tuple, view: dict) -> dict:
    return {name: view[name] for name in names}


def _causes(reasoning: dict | None) -> list[str]:
    """Return the ids of the causes that a verdict names."""
    return [each["cause"] for each in reasoning["verdict"] or []] if reasoning else []


def _alike(there, here) -> bool:
    """Tell whether two values agree; of codes those that both have, and text never differs from codes."""
    if isinstance(here, list) and isinstance(there, list):
        return len(here) == len(there) and all([_alike(there[n], here[n]) for n in range(len(here))])
    if isinstance(here, dict) and isinstance(there, dict):
        return all([there[name] == here[name] for name in here if name in there])
    return there == here or (isinstance(here, dict) and isinstance(there, str))


def _unlike(there: dict, here: dict, same_core: bool) -> bool:
    """Tell whether two conclusions on a job differ; its sentence counts only in the form of this core."""
    names = [name for name in _FIGURES if name in there]
    if same_core and isinstance(there["sentence"], str) == isinstance(here["sentence"], str):
        names.append("sentence")
    return [there[name] for name in names] != [here[name] for name in names]


def _reads(title: str, there: dict, here: dict) -> dict:
    return message("record-reads", title=title, there=_standing(there), here=_standing(here))


def _standing(job: dict) -> dict:
    if not job["sentence"] or job["clear"] is None:
        return message("record-no-test")
    if job["probability"] is None:
        return message("record-standing", sentence=job["sentence"], clear=percent(job["clear"]))
    return message(
        "record-standing-sure",
        sentence=job["sentence"],
        sure=percent(job["probability"]),
        clear=percent(job["clear"]),
    )


def _elsewhere(units: list):
    if not units:
        return ""
    names = all_of([shown(unit["code"]) or message("record-no-label") for unit in units])
    return message("record-elsewhere", units=names)
