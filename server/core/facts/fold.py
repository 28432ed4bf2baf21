"""state = fold(events): the one place where facts become state, on the phone and on the server.

Nothing is refused here. A fact that does not go with the rest is kept and flagged; an event of a
kind or form that is not understood is kept and listed. A `corrected` event makes its target count
for nothing from the start, so it is folded by folding again without the target.
"""

from ..errors import NotLoaded
from ..log import envelope
from ..state.state import State
from .connected import names
from .kind import REOPENS
from .kind import Kind
from .kinds import KINDS


class Fold:
    """An ordered log of envelopes and the state that follows from it."""

    def __init__(self):
        """Start with an empty log."""
        self.events = []
        self.before = 0  # how many more came before these: folded, and no longer in memory
        self.withdrawn = {}
        self.state = State()

    def count(self) -> int:
        """Return how many entries are folded."""
        return self.before + len(self.events)

    def reset(self, events: list) -> None:
        """Fold `events` (envelopes in their agreed order) from nothing."""
        self.events, self.before = list(events), 0
        self._replay()

    def add(self, events: list) -> None:
        """Fold `events` behind those already there; raises NotLoaded before anything is folded."""
        for event in events:
            self.state.jobs.get(event["job"])
            if _target(event):
                self.whole()
        self.events.extend(events)
        for event in events:
            if _target(event):
                self._replay()
                return
        for event in events:
            apply(self.state, event, self.withdrawn.get(envelope.identity(event)))

    def insert(self, events: list, at: int) -> None:
        """Fold `events` in behind the first `at` entries: before what this phone has not sent yet."""
        whole = self.whole()
        self.reset(whole[:at] + events + whole[at:])

    def whole(self) -> list:
        """Return all entries; raises NotLoaded where some are not in memory."""
        if self.before:
            raise NotLoaded([])
        return self.events

    def trial(self, drafts: list) -> "Fold":
        """Return a fold on which these drafts can be tried one after the other; this one stays as it is."""
        trial = Fold()
        trial.events, trial.before, trial.withdrawn = self.events, self.before, self.withdrawn
        named = {}
        for draft in drafts:
            for name in names(draft):
                named[name] = True
        trial.state = self.state.scratch(sorted(named))
        return trial

    def without(self, identity: str) -> State:
        """Return the state as it would be without one event, to see what a correction would do."""
        withdrawn = dict(self.withdrawn)
        withdrawn[identity] = {"actor": "", "reason": ""}
        return _folded(self.whole(), withdrawn)

    def find(self, identity: str) -> dict | None:
        """Return the event with this identity, or None."""
        for event in self.events:
            if envelope.identity(event) == identity:
                return event
        if self.before:
            raise NotLoaded([])
        return None

    def _replay(self) -> None:
        """Fold the whole log again, leaving out what was corrected; history keeps both."""
        self.withdrawn = {}
        for event in self.events:
            target = _target(event)
            if target:
                self.withdrawn[target] = {
                    "actor": event["actor"],
                    "reason": event["data"]["reason"],
                }
        self.state = _folded(self.events, self.withdrawn)


def apply(state: State, event: dict, withdrawn: dict | None = None) -> None:
    """Fold one envelope into `state`; `withdrawn` says who took it back and why, or None."""
    identity = envelope.identity(event)
    data, job = event["data"], state.jobs.get(event["job"])
    kind = KINDS.get(event["kind"])
    why = _not_understood(kind, event, job)
    if why:
        state.not_understood.append({"event": identity, "kind": event["kind"], "why": why})
    elif kind and not withdrawn:
        kind.does(state, known_by(state, event), job)
        if job and job["closed"] and kind.after_closing == REOPENS:
            _reopen(state, event, job)
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
                "newer": is_newer(event),
            }
        )


def _not_understood(kind: Kind | None, event: dict, job: dict | None) -> str | None:
    """Return why an event cannot be folded, or None."""
    if kind is None or envelope.is_newer(event):
        return "A newer version of the app recorded it."
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
    state = State()
    for event in events:
        identity = envelope.identity(event)
        apply(state, event, withdrawn.get(identity, None))
    return state


def _target(event: dict) -> str | None:
    """Return the identity that a well-formed `corrected` event takes back, or None."""
    if event["kind"] != "corrected" or envelope.is_newer(event):
        return None
    if KINDS["corrected"].problem(event["data"]):
        return None
    return "{}:{}".format(event["data"]["device"], event["data"]["seq"])
