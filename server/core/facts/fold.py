"""state = fold(events): the one place where facts become state, on the phone and on the server.

Nothing is refused here. A fact that does not go with the rest is kept and flagged; an event of a
kind or form that is not understood is kept and listed. A correction counts from the start, so what hangs
together with its target is folded again: without it, or with what it should have said (`corrections`).
"""

from ..errors import NotLoaded
from ..log import envelope
from ..messages import message
from ..state import stories
from ..state.state import State
from . import partial
from .connected import Connected
from .connected import names
from .corrections import KINDS_OF_CORRECTION
from .corrections import TAKEN_BACK
from .corrections import Corrections
from .corrections import right
from .corrections import supposed
from .corrections import target_of
from .kind import REOPENS
from .kind import Kind
from .kinds import KINDS
from .pausing import ends_pause
from .pausing import takes_over
from .whose import flag_role


class Fold:
    """An ordered log of envelopes and the state that follows from it."""

    def __init__(self):
        """Start with an empty log."""
        self.events = []
        self.before = 0  # how many more came before these: folded, and no longer in memory
        self.corrections = Corrections()
        self.state = State()
        self.connected = Connected()
        self.out_of_use = {}  # no state: printed labels that a server took out of use, by their code

    def count(self) -> int:
        """Return how many entries are folded."""
        return self.before + len(self.events)

    def reset(self, events: list) -> None:
        """Fold `events` (envelopes in their agreed order) from nothing."""
        self.events, self.before = list(events), 0
        self.connected = Connected()
        self.corrections = Corrections()
        self.corrections.note(self.events)
        self.state = self._folded(self.events, self.corrections)

    def know_phones(self, phones: dict) -> None:
        """Judge entries that are folded from now on by what is said of their phones, as `whose` has it."""
        self.state.phones, self.state.recorded = phones, self._recorded

    def add(self, events: list) -> None:
        """Fold `events` behind those already there; raises NotLoaded before anything is folded."""
        for event in events:
            self.state.jobs.get(event["job"])
        if [event for event in events if event["kind"] in KINDS_OF_CORRECTION]:
            at = len(self.whole())
            self.events.extend(events)
            self.connected.catch_up(self.events)
            self._fold_again(self._places(self.corrections.note(events)), at)
        else:
            self.events.extend(events)
        for event in events:
            apply(self.state, event, *self.corrections.of(envelope.identity(event)))

    def insert(self, events: list, at: int) -> None:
        """Fold `events` in behind the first `at` entries: before what this phone has not sent yet."""
        before = self.whole()
        self.connected.catch_up(before)
        self.connected.go_back(before, at)
        self.events = before[:at] + events + before[at:]
        self.connected.catch_up(self.events)
        self.corrections = Corrections()
        self.corrections.note(self.events)
        places = list(range(at, at + len(events))) + self._places(Corrections().note(events))
        self._fold_again(places, len(self.events))

    def whole(self) -> list:
        """Return all entries; raises NotLoaded where some are not in memory."""
        if self.before:
            raise NotLoaded([])
        return self.events

    def trial(self, drafts: list) -> "Fold":
        """Return a fold on which these drafts can be tried one after the other; this one stays as it is."""
        trial = Fold()
        trial.events, trial.before, trial.corrections = self.events, self.before, self.corrections
        trial.connected, trial.out_of_use = self.connected, self.out_of_use
        named = {}
        for draft in drafts:
            for name in names(draft):
                named[name] = True
        trial.state = self.state.scratch(sorted(named))
        return trial

    def suppose(self, draft: dict) -> None:
        """Let what is tried next be tried with this correction; only in a trial."""
        self.corrections, target = self.corrections.copy(), target_of(draft["data"])
        if draft["kind"] == TAKEN_BACK:
            self.corrections.withdrawn[target] = {"actor": "", "reason": ""}
        else:
            if self.corrections.settles(draft["data"]):
                self.corrections.withdrawn.pop(target, None)
            self.corrections.righted[target] = supposed(draft["data"]["entry"])

    def without(self, identity: str) -> State:
        """Return the state as it would be without one event, as far as it hangs together with that."""
        corrections = self.corrections.copy()
        corrections.withdrawn[identity] = {"actor": "", "reason": ""}
        return self._supposing(identity, corrections, [])

    def with_right(self, identity: str, entry: dict) -> State:
        """Return the state as it would be if an event said `entry`, {"kind", "data"}.

        In it is what hangs together with the event.
        """
        corrections = self.corrections.copy()
        corrections.righted[identity] = supposed(entry)
        return self._supposing(identity, corrections, names(entry))

    def as_of(self, identity: str, entry: dict) -> "Fold":
        """Return a fold of what came before an event, as far as it hangs together with that or `entry`."""
        self.connected.catch_up(self.whole())
        place = self.connected.place(identity)
        places, _ = self.connected.around(self.events, [place], names(entry))
        if self.connected.twice:
            places = range(len(self.events))
        earlier = Fold()
        earlier.events = [self.events[each] for each in places if each < place]
        earlier.corrections, earlier.out_of_use = self.corrections, self.out_of_use
        earlier.state = self._folded(earlier.events, self.corrections)
        return earlier

    def find(self, identity: str) -> dict | None:
        """Return the event with this identity, or None."""
        self.connected.catch_up(self.events)
        place = self.connected.place(identity)
        if place is not None:
            return self.events[place]
        if self.before:
            raise NotLoaded([])
        return None

    def beside(self, unit: str) -> list[dict]:
        """Return what was recorded of a unit outside any job, in order and as a job's history has it."""
        self.connected.catch_up(self.whole())
        names_unit, found = {unit: True}, []
        names_unit.update({each: True for each in self.state.aliases if self.state.now(each) == unit})
        places, _ = self.connected.around(self.events, [], sorted(names_unit))
        for place in places:
            event = self.events[place]
            kind = KINDS.get(event["kind"])
            if event["job"] or not kind or kind.name in KINDS_OF_CORRECTION:
                continue
            withdrawn, righted = self.corrections.of(envelope.identity(event))
            now = right(event, righted)
            if _not_understood(kind, now, None):
                continue
            if [each for each in kind.names(now["data"])[1] if each in names_unit]:
                found.append(history_entry(now, event["data"], withdrawn, righted, True, False))
        return found

    def _supposing(self, identity: str, corrections: Corrections, named: list) -> State:
        """Return the state under other corrections of one event, which then may name what is `named`."""
        self.connected.catch_up(self.whole())
        place = self.connected.place(identity)
        if place is None or self.connected.twice:
            return self._folded(self.events, corrections)
        places, _ = self.connected.around(self.events, [place], named)
        return self._folded([self.events[each] for each in places], corrections)

    def _recorded(self, device: str, seq: int, before: dict) -> str | None:
        """Return the kind of an entry, None where none is before another one; raises NotLoaded."""
        self.connected.catch_up(self.whole())
        place = self.connected.place("{}:{}".format(device, seq))
        end = self.connected.place(envelope.identity(before))
        if place is None or end is None or place > end:
            return None
        return self.events[place]["kind"]

    def _folded(self, events: list, corrections: Corrections) -> State:
        of, none, neither = corrections.by_device(), {}, (None, None)
        state = State()
        state.phones, state.recorded = self.state.phones, self.state.recorded
        for event in events:
            apply(state, event, *of.get(event["device"], none).get(event["seq"], neither))
        return state

    def _places(self, identities: list) -> list[int]:
        """Return the places of those entries that are there."""
        places = [self.connected.place(identity) for identity in identities]
        return [place for place in places if place is not None]

    def _fold_again(self, places: list, count: int) -> None:
        """Fold afresh what hangs together with the entries at `places`; the rest stays as it is.

        The state is one of the first `count` entries, and stays so.
        """
        together, named = self.connected.around(self.events, places)
        together = [place for place in together if place < count]
        if self.connected.twice or len(together) * 2 > count:
            self.state = self._folded(self.events[:count], self.corrections)
            return
        part = self._folded([self.events[place] for place in together], self.corrections)
        partial.replace(self.state, part, together, named, self.connected.place)


def apply(state: State, event: dict, withdrawn: dict | None = None, righted: dict | None = None) -> None:
    """Fold one envelope into `state`; who took it back and why, and what puts it right, or None of each."""
    said, event = event["data"], right(event, righted)
    data, job = event["data"], state.jobs.get(event["job"])
    kind = KINDS.get(event["kind"])
    why = _not_understood(kind, event, job)
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
    if job:
        if why is None and righted and "rivals" in righted:
            _note_rivals(job, event, said, righted["rivals"])
        newer = is_newer(event)
        job["history"].append(history_entry(event, said, withdrawn, righted, why is None, newer))


def _note_rivals(job: dict, event: dict, said: dict, rivals: list) -> None:
    """Keep with the job that phones corrected one of its entries apart; `n` is how many it had by then."""
    rivals = [each for each in rivals if each["data"] is None or _could_say(event, each, job)]
    if not [each for each in rivals if each["data"] != rivals[0]["data"]]:
        return
    entry = {name: event[name] for name in ("kind", "at", "actor")}
    entry.update({"event": envelope.identity(event), "n": job["entries"], "said": said, "rivals": rivals})
    job.setdefault("corrected_apart", []).append(entry)


def _could_say(event: dict, rival: dict, job: dict) -> bool:
    """Tell whether what a correction says can be understood in the place of an entry."""
    other = dict(event)
    other["data"] = rival["data"]
    return rival["kind"] == event["kind"] and _not_understood(KINDS[event["kind"]], other, job) is None


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


def _not_understood(kind: Kind | None, event: dict, job: dict | None):
    """Return why an event cannot be folded, or None."""
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
