"""The parts counter: what a returned unit is, what waits, what was decided."""

from ..errors import BadInput
from ..messages import message
from ..returns import evidence
from ..returns.keys import entry
from ..views import counter
from ..views import counter_lists
from .held import Held


class CounterOperations(Held):
    """Answers a clerk."""

    def op_counter(
        self,
        now,
        text="",
        unit="",
        how="scanned",
        host="",
        read=None,
        window_days=0,
        record=None,
        register=None,
    ):
        """Propose what to do with a unit, named by its label's text or, of one that waits, by its id.

        Of a typed text that is no label, say which sensors have it as their serial number (`sensors`).
        """
        state = self.fold.state
        if unit:
            identity = state.now(unit)
            if identity not in state.units:
                raise BadInput("unit", unit, message("refusals-unit"))
            label = counter.label_of(state, state.units[identity])
        else:
            label = counter.read_label(state, text, host)
        if label["outcome"] != "unit":
            if how == "typed":
                # A serial number may look like a part of a code, or like nothing that is known.
                label["sensors"] = counter_lists.with_serial(state, text)
            return label
        asked = {
            "how": how,
            "read": read,
            "now": now,
            "window_days": window_days,
            "host": host,
            "record": record,
            "register": register,
        }
        return counter.look(state, label, asked, self._reasoned)

    def op_entered(self, unit, host):
        """Return what the register of a chain has to say of a unit; None where it is not known here."""
        state = self.fold.state
        identity = state.now(unit)
        if identity not in state.units:
            return None
        entered = entry(state, state.units[identity], host)
        entered["shown"] = counter.label_of(state, state.units[identity])["shown"]
        return entered

    def op_record_weighed(self, unit, now, window_days, agrees, pictures=None):
        """Return what the record that makes up this whole log is evidence of, for a unit of it.

        {"part", "serial", "passes", "holds", "fails"}; `agrees` tells whether it came to what was sealed,
        `pictures` names those in its file that can be seen.
        """
        state = self.fold.state
        known = state.units[state.now(unit)]
        asked = {"how": "scanned", "read": None, "now": now, "window_days": window_days}
        asked.update(host="", record=[], register=None)
        view = counter.look(state, counter.label_of(state, known), asked, self._reasoned)
        seen = pictures is None or any([photo["sha256"] in pictures for photo in view["photos"]])
        weighed = evidence.weighed(view["checks"], agrees, seen)
        weighed.update(part=known["part"], serial=known["serial"])
        return weighed

    def op_waiting(self):
        """Return the returns that wait for a decision."""
        return counter_lists.waiting(self.fold.state)

    def op_decided(self, start, end):
        """Return the decisions of the counter from `start` to before `end`, in milliseconds."""
        return counter_lists.decided(self.fold.state, start, end)

    def op_find(self, text):
        """Return the units that a text finds."""
        return counter_lists.find(self.fold.state, self._findable(), text)
