"""How one entry changes the state; nothing is refused here.

A fact that does not go with the rest is kept and flagged; an entry of a kind or form that is not understood
is kept and listed.
"""

from ..log import envelope
from ..messages import message
from ..state import stories
from ..state.state import State
from .corrections import KINDS_OF_CORRECTION
from .corrections import right
from .kind import REOPENS
from .kind import Kind
from .kinds import KINDS
from .pausing import ends_pause
from .pausing import takes_over
from .whose import flag_role


def apply(state: State, event: dict, withdrawn: dict | None = None, righted: dict | None = None) -> None:
    """Fold one envelope into `state`; who took it back and why, and what puts it right, or None of each."""
    said, event = event["data"], right(event, righted)
    data, job = event["data"], state.jobs.get(event["job"])
    kind = KINDS.get(event["kind"])
    why = why_not_understood(kind, event, job)
    if why:
        entry = {"event": envelope.identity(event), "kind": event["kind"], "why": why}
        state.not_understood.append(entry)
    elif kind and not withdrawn:
        kind.does(state, known_by(state, event), job)
        if job and job["closed"] and kind.after_closing == REOPENS:
            _reopen(job, _work(event, job))
        if job and kind.name == "job_closed":
            if event["device"] in state.phones:  # by which it is known whose phone that is
                job["closed"]["event"] = envelope.identity(event)
            _reopen_unaware(job, event)
        if job and "paused" in job and ends_pause(kind, data):
            del job["paused"]
        if job and takes_over(kind, data, job, event["actor"]):
            del job["handed"]
        job = state.jobs.get(event["job"])
        if job and kind.name not in KINDS_OF_CORRECTION:
            note_entry(job, event, kind)
        if event["device"] in state.phones:
            flag_role(state, event, kind, job)
    if why is None and righted and "rivals" in righted:
        _note_rivals(state, job, event, said, righted["rivals"])
    if job:
        newer = is_newer(event)
        job["history"].append(history_entry(event, said, withdrawn, righted, why is None, newer))


def _note_rivals(state: State, job: dict | None, event: dict, said: dict, rivals: list) -> None:
    """Keep with the job that phones corrected one of its entries apart; `n` is how many it had by then.

    What was recorded outside any job is kept with the first unit that it names.
    """
    rivals = [each for each in rivals if each["data"] is None or _could_say(event, each, job)]
    if not [each for each in rivals if each["data"] != rivals[0]["data"]]:
        return
    entry = {name: event[name] for name in ("kind", "at", "actor")}
    entry.update({"event": envelope.identity(event), "said": said, "rivals": rivals})
    if job:
        entry["n"] = job["entries"]
        job.setdefault("corrected_apart", []).append(entry)
        return
    for identity in KINDS[event["kind"]].names(said)[1]:
        if state.now(identity) in state.units:
            state.units[state.now(identity)].setdefault("corrected_apart", []).append(entry)
            return


def _could_say(event: dict, rival: dict, job: dict | None) -> bool:
    """Tell whether what a correction says can be understood in the place of an entry."""
    other = dict(event)
    other["data"] = rival["data"]
    return rival["kind"] == event["kind"] and why_not_understood(KINDS[event["kind"]], other, job) is None


def history_entry(event, said: dict, withdrawn, righted, understood: bool, newer: bool) -> dict:
    """Return what a job's history keeps of an entry; `event` is as it should have been, `said` its data."""
    entry = {
        "device": event["device"],
        "seq": event["seq"],
        "at": event["at"],
        "actor": event["actor"],
        "kind": event["kind"],
        "data": event["data"],
        "withdrawn": withdrawn,
        "understood": understood,
        "newer": newer,
    }
    if event["data"] is not said:  # else it is, byte for byte, what it always was
        entry["righted"] = {name: righted[name] for name in ("by", "actor", "reason")}
        entry["said"] = said
    return entry


def why_not_understood(kind: Kind | None, event: dict, job: dict | None) -> dict | None:
    """Return why an event cannot be folded, as a message; None where it can."""
    if kind is None or envelope.is_newer(event):
        return message("refusals-newer")
    fault = kind.problem(event["data"])
    return fault.message() if fault else kind.misfit(event["data"], event["job"], job)


def is_newer(event: dict) -> bool:
    """Tell whether a later version of the app recorded this: it says more than is understood here."""
    return envelope.is_newer(event) or event["kind"] not in KINDS


def known_by(state: State, event: dict) -> dict:
    """Return an event, well-formed, with the units it names under the ids that they are on record by now.

    What got mixed up and was told apart again may still be named by the id that its body had.
    """
    if not state.aliases:
        return event
    copy = dict(event)
    copy["data"] = KINDS[event["kind"]].under_present_ids(event["data"], state.now)
    return copy


def note_entry(job: dict, event: dict, kind: Kind) -> None:
    """Count an entry of a job, and keep it as the last of its phone: {"seq", "work"}.

    `work` is the last one that is not expected after the closing, None before any. Corrections and what they
    take back are as if they had never been: they leave no trace here.
    """
    last = job["phones"].get(event["device"])
    if last is None:
        last = job["phones"][event["device"]] = {"seq": 0, "work": None}
    last["seq"] = event["seq"]
    if kind.after_closing == REOPENS:
        last["work"] = _work(event, job)
    job["entries"] += 1


def _work(event: dict, job: dict) -> dict:
    """Return what is kept of an entry that goes on with a job; `n` says as which entry of it."""
    work = {name: event[name] for name in ("at", "actor", "kind", "data")}
    work["event"] = envelope.identity(event)
    work["n"] = job["entries"]
    return work


def _reopen(job: dict, went_on: dict) -> None:
    """Open a closed job again: another phone, not knowing of the closing, has worked on."""
    closed = {name: job["closed"][name] for name in ("at", "actor", "event") if name in job["closed"]}
    job["closed"] = None
    job["reopened"] = {"closed": closed, "went_on": went_on}


def _reopen_unaware(job: dict, event: dict) -> None:
    """Open a job again that was closed by a phone which did not know of the last that another one did."""
    works = [job["phones"][device]["work"] for device in job["phones"]]
    unknown = [(work["n"], work) for work in works if work and stories.is_unknown(work["event"], event)]
    if unknown:
        _reopen(job, max(unknown, key=lambda each: each[0])[1])
