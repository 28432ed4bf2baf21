"""Operations on the log: fold entries, check drafts before they are recorded, the state as a whole."""

from .. import rules
from ..errors import BadInput
from ..facts import bounds
from ..facts.apply import apply
from ..facts.corrections import KINDS_OF_CORRECTION
from ..facts.whose import phones_of
from ..log import envelope
from ..messages import message
from .held import Held


class LogOperations(Held):
    """Takes entries and drafts in."""

    def op_reset(self, events=(), more=False, envelopes=(), phones=()):
        """Fold [{"event": envelope}, ...] from nothing; with `more`, once the rest of them is there.

        `phones` is what `phones_of` takes.
        """
        self.coming = []
        self.op_phones(phones)
        return self.op_append(events, more, envelopes)

    def op_append(self, events=(), more=False, envelopes=()):
        """Take a further part of the log that `reset` began; what was there holds until the last one.

        A phone with a long log hands over the bare `envelopes`: an object around each would stay as a hole in
        the memory of its Python, where all that is made afterwards has to look for room behind it.
        """
        self.coming.extend(_envelopes(events))
        for event in envelopes:
            envelope.check(event)
        self.coming.extend(envelopes)
        if not more:
            self.fold.reset(self.coming)
            self.coming = []
        return {"count": self.fold.count()}

    def op_phones(self, phones):
        """Take what is said of phones in place of what was, for entries that are folded after it."""
        self.fold.know_phones(phones_of(phones))

    def op_labels_out(self, codes):
        """Take the labels that the server took out of use before anything carried them, all of them."""
        self.fold.out_of_use = {code: True for code in codes}

    def op_add(self, events):
        """Fold more events behind the rest; returns the conflicts they brought."""
        before = len(self.fold.state.conflicts)
        self.fold.add(_envelopes(events))
        return self._brought(before)

    def op_insert(self, events, at):
        """Fold events in behind the first `at`; returns the conflicts that there are more of."""
        before = len(self.fold.state.conflicts)
        self.fold.insert(_envelopes(events), at)
        return self._brought(before)

    def op_check_and_add(self, events, envelopes):
        """Check drafts and, where no rule stands against them, fold them as these `envelopes`."""
        checked = self.op_check(events)
        if checked["refusal"]:
            return checked
        added = self.op_add(envelopes)
        added["refusal"] = None
        return added

    def _brought(self, before) -> dict:
        return {"count": self.fold.count(), "conflicts": self.fold.state.conflicts[before:]}

    def op_check(self, events):
        """Say whether a rule stands against recording these drafts, one after the other."""
        if len(events) == 1:
            return {"refusal": _refused(self.fold, events[0], 0)}
        trial = self.fold.trial(events)
        for index in range(len(events)):
            found = _refused(trial, events[index], index)
            if found:
                return {"refusal": found}
            if events[index]["kind"] in KINDS_OF_CORRECTION:
                trial.suppose(events[index])
            else:
                apply(trial.state, _provisional(events[index], index))
        return {"refusal": None}

    def op_outside(self, envelopes):
        """Return the first of envelopes that no host could show, {"device", "seq", "message"}, or None."""
        for event in envelopes:
            envelope.check(event)
            fault = bounds.outside(event)
            if fault:
                return {"device": event["device"], "seq": event["seq"], "message": fault.message()}
        return None

    def op_state(self):
        """Return the whole state."""
        return self.fold.state.as_dict()

    def op_conflicts(self):
        """Return what contradicts, and what was not understood."""
        state = self.fold.state
        return {"conflicts": state.conflicts, "not_understood": state.not_understood}


def _envelopes(events) -> list[dict]:
    """Return the envelopes of a list of {"event": envelope}, each checked."""
    if not isinstance(events, (list, tuple)):
        raise BadInput("events", events, message("refusals-list"))
    found = []
    for entry in events:
        envelope.check(entry["event"] if isinstance(entry, dict) and "event" in entry else None)
        found.append(entry["event"])
    return found


def _refused(fold, draft, index) -> dict | None:
    found = rules.first_refusal(fold, draft)
    if found:
        found["draft"] = index
    return found


def _provisional(draft, index) -> dict:
    """Return a draft as an envelope, to fold it on trial."""
    return {
        "device": "d0000000000000000",
        "seq": index + 1,
        "prev": "",
        "v": envelope.FORMAT_VERSION,
        "at": 0,
        "actor": draft.get("actor", ""),
        "job": draft.get("job"),
        "kind": draft["kind"],
        "data": draft["data"],
    }
