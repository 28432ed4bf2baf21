"""Which entries hang together: by the job, vehicle, sensor or label that both name.

What an entry does to the state, it does to what it names or to what hangs together with that, and it looks at
nothing else. So entries that do not hang together can be folded apart from each other. All mix-ups hang
together, all printings, and all that the yard learned: their order among themselves is part of the state.
"""

from ..log import envelope
from ..state.state import EMPTY
from .corrections import ENTRY
from .corrections import PUT_RIGHT
from .job import first_units
from .kinds import ALL
from .learned import MINUTES
from .learned import RATES
from .mixups import body_ids
from .naming import LabelCode

MIXED, PRINTED, LEARNED = "units_mixed", "labels_printed", "learned"
_OF_PRINTING = (PRINTED, "labels_spoiled")
# The fields that name units, or the label on one, in whatever kind. What was held up by mistake is only kept.
FIELDS = sorted(
    {field.name for kind in ALL for field in kind.fields if field.names_units or isinstance(field, LabelCode)}
)


class Connected:
    """The groups of a log that grows; each entry is in one of them."""

    def __init__(self):
        """Start with no entries."""
        self.read = 0  # how many entries are in their groups
        self.twice = False  # two entries have one identity: then places say nothing
        self._groups = {}  # name -> its group
        self._places = {}  # device -> {seq: place in the log}
        self._righted = {}  # device -> {seq: a name in each entry that puts that one right}

    def catch_up(self, events: list) -> None:
        """Read what the log has grown by."""
        for place in range(self.read, len(events)):
            self._add(events, place)
        self.read = len(events)

    def go_back(self, events: list, count: int) -> None:
        """Forget the places of all entries but the first `count`; what hung together goes on doing so."""
        for place in range(count, self.read):
            event = events[place]
            group = self._groups[(names(event) or [""])[0]]
            group.places = [each for each in group.places if each < count]
            self._places[event["device"]].pop(event["seq"], None)
        self.read = min(self.read, count)

    def place(self, identity: str) -> int | None:
        """Return the place in the log of the entry with this identity, or None."""
        device, _, seq = identity.rpartition(":")
        return self._places.get(device, {}).get(int(seq) if seq.isdigit() else None)

    def around(self, events: list, places: list, named=()) -> tuple:
        """Return (places, names) of all that hangs together with the entries at `places` or with these names.

        Places are in order.
        """
        groups = []
        for place in places:
            group = self._groups[(names(events[place]) or [""])[0]]
            if group not in groups:
                groups.append(group)
        for name in named:
            group = self._groups.get(name)
            if group and group not in groups:
                groups.append(group)
        together, known = [], []
        for group in groups:
            together.extend(group.places)
            known.extend(group.names)
        return sorted(together), known

    def _add(self, events: list, place: int) -> None:
        event = events[place]
        seqs = self._places.get(event["device"])
        if seqs is None:
            seqs = self._places[event["device"]] = {}
        if event["seq"] in seqs:
            self.twice = True
        seqs[event["seq"]] = place
        named = names(event) or [""]
        if event["kind"] == MIXED:
            named.extend(body_ids(envelope.identity(event), len(named)))
        if event["kind"] == PUT_RIGHT:
            named.extend(self._names_of_target(events, event["data"], named))
        if self._righted:
            named.extend(self._righted.get(event["device"], {}).get(event["seq"], ()))
        group = self._groups.get(named[0])
        if group is None:
            group = _Group()
        for name in named:
            other = self._groups.get(name)
            if other is None:
                group.names.append(name)
                self._groups[name] = group
            elif other is not group:
                group = self._joined(group, other)
        group.places.append(place)

    def _names_of_target(self, events: list, data: dict, named: list) -> list:
        """Return by what an entry hangs together with the one it puts right, which may be still to come."""
        device, seq = data.get("device"), data.get("seq")
        if not isinstance(device, str) or not isinstance(seq, int):
            return []
        self._righted.setdefault(device, {}).setdefault(seq, []).append(named[0])
        bodies = body_ids("{}:{}".format(device, seq), len(named)) if MIXED in named else []
        place = self._places.get(device, {}).get(seq)
        return bodies if place is None else bodies + [(names(events[place]) or [""])[0]]

    def _joined(self, one: "_Group", other: "_Group") -> "_Group":
        """Put the smaller group into the larger one."""
        small, large = (one, other) if len(one.names) < len(other.names) else (other, one)
        for name in small.names:
            self._groups[name] = large
        large.names.extend(small.names)
        large.places.extend(small.places)
        return large


class _Group:
    """Entries that hang together, by their places in the log, and all that they name."""

    def __init__(self):
        self.places = []
        self.names = []


def names(event: dict) -> list[str]:
    """Return what an entry or draft names: jobs, vehicles, units and labels alike, whatever its data is."""
    kind, data = event["kind"], event["data"]
    named = [event.get("job")]
    if kind == PUT_RIGHT and isinstance(data, dict) and not ENTRY.fault(data.get(ENTRY.name)):
        named.extend(names(data[ENTRY.name]))
    if isinstance(data, dict):
        for field in FIELDS:
            value = data.get(field)
            if isinstance(value, dict):
                named.extend(value.values())
            elif isinstance(value, list):
                named.extend(value)
            elif value != EMPTY:  # what many jobs say, and which is no unit
                named.append(value)
        if kind == "job_opened" and isinstance(data.get("vehicle"), dict):
            named.append(data["vehicle"].get("id"))
            named.extend(first_units(data))
    if kind == MIXED:
        named.append(MIXED)
    if kind in _OF_PRINTING:
        named.append(PRINTED)
    if kind in (RATES, MINUTES) and not event.get("job"):
        named.append(LEARNED)
    return [name for name in named if name and isinstance(name, str)]
