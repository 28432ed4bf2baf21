"""state = fold(events): the one place where facts become state, on the phone and on the server.

Nothing is refused here. A fact that does not go with the rest is kept and flagged; an event of a
kind or form that is not understood is kept and listed. A `corrected` event makes its target count
for nothing from the start, so what hangs together with its target is folded again without it.
"""

from ..errors import NotLoaded
from ..log import envelope
from ..messages import message
from ..state.state import State
from . import partial
from .connected import Connected
from .connected import names
from .kind import REOPENS
from .kind import Kind
from .kinds import KINDS
from .pausing import ends_pause


class Fold:
    """An ordered log of envelopes and the state that follows from it."""

    def __init__(self):
        """Start with an empty log."""
        self.events = []
        self.before = 0  # how many more came before these: folded, and no longer in memory
        self.withdrawn = {}
        self.state = State()
        self.connected = Connected()

    def count(self) -> int:
        """Return how many entries are folded."""
        return self.before + len(self.events)

    def reset(self, events: list) -> None:
        """Fold `events` (envelopes in their agreed order) from nothing."""
        self.events, self.before = list(events), 0
        self.connected = Connected()
        self.withdrawn = _withdrawn(self.events)
        self.state = _folded(self.events, self.withdrawn)

    def add(self, events: list) -> None:
        """Fold `events` behind those already there; raises NotLoaded before anything is folded."""
        for event in events:
            self.state.jobs.get(event["job"])
        withdrawn = _withdrawn(events)
        if withdrawn:
            self._withdraw(withdrawn)
        self.events.extend(events)
        for event in events:
            apply(self.state, event, self.withdrawn.get(envelope.identity(event)))

    def insert(self, events: list, at: int) -> None:
        """Fold `events` in behind the first `at` entries: before what this phone has not sent yet."""
        before = self.whole()
        self.connected.catch_up(before)
        self.connected.go_back(before, at)
        self.events = before[:at] + events + before[at:]
        self.connected.catch_up(self.events)
        self.withdrawn = _withdrawn(self.events)
        self._fold_again(list(range(at, at + len(events))) + self._places(_withdrawn(events)))

    def whole(self) -> list:
        """Return all entries; raises NotLoaded where some are not in memory."""
        if self.before:
            raise NotLoaded([])
        return self.events

    def trial(self, drafts: list) -> "Fold":
        """Return a fold on which these drafts can be tried one after the other; this one stays as it is."""
        trial = Fold()
        trial.events, trial.before, trial.withdrawn = self.events, self.before, self.withdrawn
        trial.connected = self.connected
        named = {}
        for draft in drafts:
            for name in names(draft):
                named[name] = True
        trial.state = self.state.scratch(sorted(named))
        return trial

    def without(self, identity: str) -> State:
        """Return the state as it would be without one event, as far as it hangs together with that."""
        withdrawn = dict(self.withdrawn)
        withdrawn[identity] = {"actor": "", "reason": ""}
        self.connected.catch_up(self.whole())
        place = self.connected.place(identity)
        if place is None or self.connected.twice:
            return _folded(self.events, withdrawn)
        places, _ = self.connected.around(self.events, [place])
        return _folded([self.events[each] for each in places], withdrawn)

    def find(self, identity: str) -> dict | None:
        """Return the event with this identity, or None."""
        self.connected.catch_up(self.events)
        place = self.connected.place(identity)
        if place is not None:
            return self.events[place]
        if self.before:
            raise NotLoaded([])
        return None

    def _withdraw(self, withdrawn: dict) -> None:
        """Take back what these corrections name; history keeps both."""
        self.connected.catch_up(self.whole())
        self.withdrawn.update(withdrawn)
        self._fold_again(self._places(withdrawn))

    def _places(self, identities: dict) -> list[int]:
        """Return the places of those entries that are there."""
        places = [self.connected.place(identity) for identity in sorted(identities)]
        return [place for place in places if place is not None]

    def _fold_again(self, places: list) -> None:
        """Fold afresh what hangs together with the entries at `places`; the rest stays as it is."""
        together, named = self.connected.around(self.events, places)
        if self.connected.twice or len(together) * 2 > len(self.events):
            self.state = _folded(self.events, self.withdrawn)
            return
        part = _folded([self.events[place] for place in together], self.withdrawn)
        partial.replace(self.state, part, together, named, self.connected.place)


def apply(state: State, event: dict, withdrawn: dict | None = None) -> None:
    """Fold one envelope into `state`; `withdrawn` says who took it back and why, or None."""
    data, job = event["data"], state.jobs.get(event["job"])
    kind = KINDS.get(event["kind"])
    why = _not_understood(kind, event, job)
    if why:
        entry = {"event": envelope.identity(event), "kind": event["kind"], "why": why}
        state.not_understood.append(entry)
    elif kind and not withdrawn:
        kind.does(state, known_by(state, event), job)
        if job and job["closed"] and kind.after_closing == REOPENS:
            _reopen(state, event, job)
        if job and "paused" in job and ends_pause(kind, data):
            del job["paused"]
        job = state.jobs.get(event["job"])
    if job:
        job["history"].append(
            {
                "device": event["device"],
                "seq": event["seq"],
                "at": event["at"],
                "actor": event["actor"],
                "kind": event["kind"],
                "data": data,
                "withdrawn": withdrawn,
                "understood": why is None,
                "newer": kind is None or envelope.is_newer(event),
            }
        )


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


def _reopen(state: State, event: dict, job: dict) -> None:
    """Open a closed job again: another phone, not knowing of the closing, has worked on."""
    job["closed"] = None
    job["reopened"] = envelope.identity(event)


def _folded(events: list, withdrawn: dict) -> State:
    # By device and seq: to make each entry's identity first would take as long as the rest on the phone.
    taken_back = {}
    for identity in withdrawn:
        device, _, seq = identity.rpartition(":")
        taken_back.setdefault(device, {})[int(seq)] = withdrawn[identity]
    none = {}
    state = State()
    for event in events:
        apply(state, event, taken_back.get(event["device"], none).get(event["seq"]))
    return state


def _withdrawn(events: list) -> dict:
    """Return what the corrections among these events take back: identity -> {"actor", "reason"}."""
    withdrawn = {}
    for event in events:
        if event["kind"] != "corrected" or envelope.is_newer(event):
            continue
        data = event["data"]
        if not KINDS["corrected"].problem(data):
            target = "{}:{}".format(data["device"], data["seq"])
            withdrawn[target] = {"actor": event["actor"], "reason": data["reason"]}
    return withdrawn
