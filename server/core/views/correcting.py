"""An entry as it can be put right: what of it can be entered anew, and what that changes in the job."""

from ..codes import labels
from ..codes import troublecode
from ..evidence import verdict
from ..facts.draft import draft
from ..facts.kinds import KINDS
from ..facts.mixups import is_body
from ..messages import message
from ..messages import sentences as joined
from ..parts.layouts import OWN
from ..rules.correction import troubles
from ..state.job import Job
from ..state.job import known_job
from ..state.unit import Unit
from ..words import sentences
from ..words import words
from . import correcting_options
from . import correcting_seen
from .correctable import FIELDS
from .correcting_options import MANY
from .correcting_options import option

_OF_A_JOB = ("unit", "position") + MANY
# Asked for only where the entry has it: a reading may compare with nothing, a job end repaired.
_WHERE_SAID = {"circuit_measured": ("compared",), "job_closed": ("why",)}
# Fields that are asked for in other words than those of the same name elsewhere.
_WORDS = {("listened", "silent"): "unheard"}


def fields(job: Job | None, entry: dict, then) -> list[dict]:
    """Return {"name", "words", "form", "value", "options"} of each field of an entry of the history.

    `then()` is the job as it stood before the entry. "vehicle.plate" is the `plate` of
    `vehicle`. Outside a job positions and units are not asked for. "codes.POSITION" is the code that a test
    showed there, with its failure type behind a hyphen, "means.CODE" what somebody said that a code means,
    "called.POSITION" what a drawn position is called, "seen.POSITION" what was seen at it.
    """
    found = []
    for name in FIELDS.get(entry["kind"], ()):
        if job is None and name in _OF_A_JOB:
            continue
        outer, _, inner = name.partition(".")
        if outer in _WHERE_SAID.get(entry["kind"], ()) and outer not in entry["data"]:
            continue
        if name == "unit" and "settles" in entry["data"]:
            continue  # the stories that are true are of the sensor whose label was read
        value = entry["data"].get(outer, "")
        if inner == "model" and inner not in value:  # only a drawn layout is kept for one
            continue
        if name == "units":
            options = correcting_options.in_hand(then(), entry["data"])
        else:
            options = correcting_options.options(job, name, entry["data"])
        if name == "what" and value == "repaired":
            value = ""  # nobody said more
        if name == "segment" and value and value not in [each["value"] for each in options]:
            options.append(option(value, value))  # in somebody's own words
        found.append(
            {
                "name": name,
                "words": message(
                    "views-correct-field", field=_WORDS.get((entry["kind"], name), inner or name)
                ),
                "form": "many" if name in MANY else "one" if options else "text",
                "value": labels.shown(value) if name == "code" else value.get(inner, "") if inner else value,
                "options": options,
            }
        )
    if entry["kind"] == "unit_seen":
        found.append(correcting_seen.place_field(job, entry["data"], then))
    at_positions = _AT_POSITIONS.get(entry["kind"])
    return found + at_positions(job, entry["data"]) if job and at_positions else found


def _codes(job: Job, data: dict) -> list[dict]:
    """Return a field for each code of a test, for each faulted position without one, and for each meaning."""
    codes = {code["position"]: troublecode.in_one(code) for code in data["codes"]}
    places = [each["id"] for each in job.positions if each["id"] in data["faulted"] or each["id"] in codes]
    found = []
    for place in (places if job.sort.codes else []) + ([""] if "" in codes else []):
        where = words.position_name(job, place) if place else "none"
        asked = message("views-correct-code", position=where)
        found.append(_text("codes." + place, asked, codes.get(place, "")))
    for said in data.get("means", []):
        found.append(
            _text("means." + said["code"], message("views-correct-means", code=said["code"]), said["means"])
        )
    return found


def _called(job: Job, data: dict) -> list[dict]:
    """Return a field for the name of each position that a person named."""
    return [
        _text("called." + each["id"], message("views-correct-called", position=each["name"]), each["name"])
        for each in data["positions"]
        if each["id"].startswith(OWN)
    ]


def _seen(job: Job, data: dict) -> list[dict]:
    """Return a field for what was seen at each position."""
    options = [option(identity, words) for identity, words in job.sort.look.found]
    found = []
    for each in job.positions:
        seen = [item["found"] for item in data["positions"] if item["position"] == each["id"]]
        asked = message("views-correct-seen", position=words.called(job, each))
        value = [identity for identity in seen if identity != "nothing"]
        found.append(
            {"name": "seen." + each["id"], "words": asked, "form": "many", "value": value, "options": options}
        )
    return found


_AT_POSITIONS = {"job_opened": _called, "looked": _seen, "test_run": _codes}


def _text(name: str, asked: dict, value: str) -> dict:
    return {"name": name, "words": asked, "form": "text", "value": value, "options": []}


def of_history(job: Job, device: str, seq: int) -> dict | None:
    """Return an entry of the history of a job, or None."""
    for entry in job.history:
        if entry["device"] == device and entry["seq"] == seq:
            return entry
    return None


def changes(before: Job, after: Job, result_before, result_after, find) -> dict:
    """Return {"sentence", "unfit"}: what it makes of the verdict, and which entries no longer fit.

    `find(identity)` is the event with an identity.
    """
    sentence = verdict_changes(before, after, result_before, result_after)
    return {"sentence": sentence, "unfit": unfit(before.state, after.state, find, after)}


def besides(before: Job, after: Job, identity: str, find) -> list[dict]:
    """Return the drafts that go with a correction: fresh labels of what did not get mixed up are taken back.

    `identity` is that of the entry that is put right; left alone, such a label would stand for one more unit.
    """
    found = {entry: True for entry, _, _ in troubles(before.state, after.state)}
    drafts = []
    for entry in sorted(found):
        event = find(entry)
        if event["kind"] == "unit_labelled" and is_body(event["data"]["unit"], identity):
            of = {"device": event["device"], "seq": event["seq"], "reason": "not-mixed"}
            drafts.append(draft("corrected", **of))
    return drafts


def unfit(before, after, find, job: Job | None = None) -> list[dict]:
    """Return the entries that fit in one state and no longer in another, as {"seq", "at", "sentence"}.

    Each is told as its own job tells it; one outside any job as `job` does, else of the unit that it names.
    """
    found = {identity: True for identity, _, _ in troubles(before, after)}
    return [_told(after, find(identity), job) for identity in sorted(found)]


def verdict_changes(before: Job, after: Job, result_before, result_after) -> dict:
    """Return in a sentence what the verdict of a job was and is, from what was concluded of either."""
    was, now = _verdict(before, result_before), _verdict(after, result_after)
    if was == now:
        return message("views-correct-stays", verdict=now)
    return message("views-correct-verdict", before=was, after=now)


def _verdict(job: Job, result):
    if result is None:
        return message("views-correct-untested")
    told = verdict.reasoning(job, result)
    return joined([told["sentence"], told["detail"]]) if result["verdict"] is None else told["sentence"]


def _told(state, event: dict, job: Job | None) -> dict:
    entry = event
    if event["job"] in state.jobs:
        job = known_job(state, event["job"])
        entry = of_history(job, event["device"], event["seq"]) or event
    if job:
        sentence = sentences.sentence(job, entry["kind"], entry["data"])
    else:
        unit = Unit(state, KINDS[entry["kind"]].names(entry["data"])[1][0])
        sentence = sentences.sentence_beside(unit, entry["kind"], entry["data"])
    return {"seq": event["seq"], "at": event["at"], "sentence": sentence}
