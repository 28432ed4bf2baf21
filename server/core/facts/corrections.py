"""Entries about entries: one takes an earlier entry back, the other says what it should have said.

Both count from the start: what hangs together with their target is folded again, without it or with the
right data in its place. The target keeps its number and its place in the order, and the log keeps what it
said first. An entry that was taken back counts for nothing, also where somebody put it right; of several
that put one entry right, the last in the log stands. A correction says of which others of its entry it knew
(`over`); one that comes in after another which knew of it counts for nothing. Where phones off line
corrected one entry in different ways, what puts it right has both as `rivals`, until a correction names them
all. Such a one lifts a take-back that it names.
"""

from ..errors import BadInput
from ..log import envelope
from ..messages import message
from ..state.stories import device_of
from .amounts import Count
from .fields import Field
from .fields import Name
from .fields import Names
from .fields import Reason
from .fields import check_object
from .kind import MAY_HAVE_JOB
from .kind import RECORDED
from .kind import Kind

TAKEN_BACK, PUT_RIGHT = "corrected", "put_right"
KINDS_OF_CORRECTION = (TAKEN_BACK, PUT_RIGHT)


class Entry(Field):
    """What an entry should have said: {"kind", "data"}, the kind being that of the entry."""

    def __init__(self, name: str):
        """Name the field; `kinds`, all there are by their names, is known once all are declared."""
        super().__init__(name)
        self.kinds = {}

    def check(self, path, value):
        """Refuse what no entry can say, and a correction."""
        check_object(path, value, ("kind", "data"))
        check_object(path + ".data", value["data"], ())
        name = value["kind"] if isinstance(value["kind"], str) else ""
        if name not in self.kinds or name in KINDS_OF_CORRECTION:
            raise BadInput(path + ".kind", value["kind"], message("refusals-kind-known"))
        fault = self.kinds[name].problem(value["data"])
        if fault:
            raise BadInput(path + "." + fault.field, (fault.found,), fault.wanted)

    def bound(self, path, value):
        """Refuse what is out of bounds in the data of the entry."""
        fault = self.kinds[value["kind"]].out_of_bounds(value["data"])
        if fault:
            raise BadInput(path + "." + fault.field, (fault.found,), fault.wanted)

    def fault(self, value) -> BadInput | None:
        """Return what is wrong with the form of a value, or None."""
        try:
            self.check(self.name, value)
        except BadInput as error:
            return error
        return None

    def told(self, value, names):
        """Return its sentence."""
        return self.kinds[value["kind"]].sentence(names, value["data"])


class Corrections:
    """What the corrections in a log come to: identity of an entry -> what was said of it."""

    def __init__(self):
        """Start with none."""
        self.withdrawn = {}  # -> {"actor", "reason"}
        self.righted = {}  # -> {"by", "actor", "reason", "kind", "data"}, and "rivals" where they differ
        self._standing = {}  # -> the corrections that no other one of the entry knew of, in order
        self._known = {}  # -> those that another one of the entry knew of, as keys

    def note(self, events: list) -> list[str]:
        """Note the corrections among these events, which come after all noted; return what they name."""
        named = {}
        for event in events:
            if event["kind"] not in KINDS_OF_CORRECTION or envelope.is_newer(event):
                continue
            data = event["data"]
            if _BY_NAME[event["kind"]].problem(data):
                continue
            target = target_of(data)
            named[target] = True
            if not self._stands(target, event):
                continue
            if event["kind"] == TAKEN_BACK:
                self.withdrawn[target] = {"actor": event["actor"], "reason": data["reason"]}
            else:
                self.righted[target] = righted(event)
                if "over" in data and not [each for each in self._standing[target] if each["data"] is None]:
                    self.withdrawn.pop(target, None)
            self._tell_rivals(target)
        return sorted(named)

    def _stands(self, target: str, event: dict) -> bool:
        """Let a correction stand, and with it those of which it did not know; an older one knew of all.

        False where one that came before it knew of it: it came late, by a file, and is settled.
        """
        over, found = event["data"].get("over"), []
        known = self._known.setdefault(target, {})
        known.update({each: True for each in over or []})
        if envelope.identity(event) in known:
            return False
        if over is not None:
            for each in self._standing.get(target, []):
                if each["by"] not in over and device_of(each["by"]) != event["device"]:
                    found.append(each)
        found.append(_rival(event))
        self._standing[target] = found
        return True

    def _tell_rivals(self, target: str) -> None:
        """Put the corrections that stand to what puts an entry right, as long as they do not say the same."""
        if target in self.righted:
            self.righted[target].pop("rivals", None)
            standing = self._standing[target]
            if [each for each in standing if each["data"] != standing[0]["data"]]:
                self.righted[target]["rivals"] = standing

    def copy(self) -> "Corrections":
        """Return them, to suppose something beside."""
        other = Corrections()
        other.withdrawn, other.righted = self.withdrawn.copy(), self.righted.copy()
        return other

    def settles(self, data: dict) -> bool:
        """Tell whether a correction knows of all that stand of its entry and do not say the same."""
        rivals = self.righted.get(target_of(data), {}).get("rivals", [])
        return bool(rivals) and not [each for each in rivals if each["by"] not in data.get("over", [])]

    def standing(self, entry: dict) -> list[str]:
        """Return the corrections of an entry of a history that stand."""
        identity = "{}:{}".format(entry["device"], entry["seq"])
        return [each["by"] for each in self._standing.get(identity, [])]

    def lifts(self, data: dict) -> bool:
        """Tell whether a correction knows of all that stand of its entry, one of which takes it back."""
        standing = self._standing.get(target_of(data), [])
        unknown = [each for each in standing if each["by"] not in data.get("over", [])]
        return bool([each for each in standing if each["data"] is None]) and not unknown

    def by_device(self) -> dict:
        """Return device -> {seq: (who took it back or None, what puts it right or None)}."""
        # By device and seq: to make each entry's identity first would take as long as the rest on the phone.
        found = {}
        for identity in list(self.withdrawn) + list(self.righted):
            device, _, seq = identity.rpartition(":")
            found.setdefault(device, {})[int(seq)] = self.of(identity)
        return found

    def of(self, identity: str) -> tuple:
        """Return (who took an entry back or None, what puts it right or None)."""
        return self.withdrawn.get(identity), self.righted.get(identity)


def target_of(data: dict) -> str:
    """Return the identity of the entry that a well-formed correction names."""
    return "{}:{}".format(data["device"], data["seq"])


def _rival(event: dict) -> dict:
    """Return a correction as one of several that stand; "data" is None where it takes its entry back."""
    entry = event["data"]["entry"] if event["kind"] == PUT_RIGHT else {"kind": "", "data": None}
    return {
        "by": envelope.identity(event),
        "at": event["at"],
        "actor": event["actor"],
        "kind": entry["kind"],
        "data": entry["data"],
    }


def righted(event: dict) -> dict:
    """Return what a well-formed `put_right` says of its target."""
    data = event["data"]
    return {
        "by": envelope.identity(event),
        "actor": event["actor"],
        "reason": data["reason"],
        "kind": data["entry"]["kind"],
        "data": data["entry"]["data"],
    }


def supposed(entry: dict) -> dict:
    """Return, in the form of `righted`, what is only supposed of an entry."""
    return {"by": "", "actor": "", "reason": "", "kind": entry["kind"], "data": entry["data"]}


def right(event: dict, righted: dict | None) -> dict:
    """Return an entry as it should have been; one that nobody put right, or as another kind, as it is."""
    if not righted or righted["kind"] != event["kind"] or envelope.is_newer(event):
        return event
    other = dict(event)
    other["data"] = righted["data"]
    return other


def _corrected(state, event, job) -> None:
    """Do nothing: a correction has done its work before the fold began."""


ENTRY = Entry("entry")
KINDS = (
    Kind(
        TAKEN_BACK,
        Name("device"),
        Count("seq"),
        Reason("reason"),
        # The corrections of the same entry that this one knew of and that stood.
        Names("over", later=True),
        does=_corrected,
        tells=("facts-taken-back", "seq", "reason"),
        job=MAY_HAVE_JOB,
        after_closing=RECORDED,
    ),
    Kind(
        PUT_RIGHT,
        Name("device"),
        Count("seq"),
        ENTRY,
        Reason("reason"),
        Names("over", later=True),
        does=_corrected,
        tells=("facts-put-right", "seq", "entry"),
        job=MAY_HAVE_JOB,
        after_closing=RECORDED,
    ),
)
_BY_NAME = {kind.name: kind for kind in KINDS}
