"""state = fold(events): the one place where facts become state, on the phone and on the server.

`apply` takes in one entry after the other. A correction counts from the start, so what hangs together with
its target is folded again: without it, or with what it should have said (`corrections`).
"""

from ..errors import NotLoaded
from ..log import envelope
from ..state.state import State
from . import partial
from .apply import apply
from .apply import history_entry
from .apply import why_not_understood
from .connected import Connected
from .connected import names
from .corrections import KINDS_OF_CORRECTION
from .corrections import TAKEN_BACK
from .corrections import Corrections
from .corrections import right
from .corrections import supposed
from .corrections import target_of
from .kinds import KINDS


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
        lifts = self.corrections.settles(draft["data"]) or self.corrections.lifts(draft["data"])
        self.corrections, target = self.corrections.copy(), target_of(draft["data"])
        if draft["kind"] == TAKEN_BACK:
            self.corrections.withdrawn[target] = {"actor": "", "reason": ""}
        else:
            if lifts:
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
        corrections.withdrawn.pop(identity, None)
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
            if why_not_understood(kind, now, None):
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
