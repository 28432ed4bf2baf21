"""The core's State over rows: an entity is read when the core first asks for it.

The core looks entities up by id, and where it goes through all units or conflicts it keeps those of
one job, of one vehicle, or the spares in stock. `focus` reads these beforehand, so going through
what is read finds the same as going through everything. `tests/server/folded/test_folded.py` holds every
answer against a fold of the whole log.
"""

from collections.abc import Iterator
from typing import Any

from sqlite_utils import Database

from server.core.codes.numbers import by_eye
from server.core.facts.apply import apply
from server.core.facts.apply import history_entry
from server.core.facts.apply import is_newer
from server.core.facts.connected import names
from server.core.facts.corrections import right
from server.core.facts.labelling import carried
from server.core.state.state import State
from server.folded import corrections
from server.folded.entities import Entities
from server.folded.phones import Phones
from server.folded.rows import WHOLE
from server.folded.rows import Change
from server.folded.rows import Rows

_BY_ID = {"vehicles": "vehicle", "units": "unit", "codes": "code", "jobs": "job"}


class FoldedState(State):
    """The state as the rows have it, and what is folded into it on top."""

    def __init__(self, db: Database, rows: Rows | None = None):
        """Starts with nothing read; `rows` where it is to start from others than the newest."""
        super().__init__()
        self._rows = rows = rows or Rows(db)
        self._focused: set[str] = set()
        self._conflicts_read: set[str] = set()
        self._order: list[list[int]] = []
        self._now = [0, 0]  # the event being folded, and how many conflicts of it have their place
        self.phones, self.recorded = Phones(db), self._kind_before
        self._conflict_lists = Entities(rows, "conflicts")
        self._histories = Entities(rows, "history")
        self._whole = Entities(rows, WHOLE)
        self.conflicts: Any
        on_read = {"units": self._note_unit, "jobs": self._read_conflicts, "codes": self._read_sharing}
        for name, empty in super().as_dict().items():
            if name in _BY_ID:
                setattr(self, name, Entities(rows, _BY_ID[name], on_read.get(name)))
            elif name not in {"conflicts", "not_understood"}:
                # Whatever else the core keeps is small: it is read and kept as one, see `__getattr__`.
                self._whole[name] = self._whole.get(name, empty)
                delattr(self, name)

    def __getattr__(self, name: str) -> Any:
        """Gives out what is kept as one, and notes that it was asked for."""
        whole = self.__dict__.get("_whole", {})
        if not dict.__contains__(whole, name):
            raise AttributeError(name)
        self._rows.asked.add(name)
        return whole[name]

    def __setattr__(self, name: str, value: Any) -> None:
        """Lets what is kept as one be replaced as a whole."""
        whole = self.__dict__.get("_whole", {})
        if dict.__contains__(whole, name):
            whole[name] = value
        else:
            super().__setattr__(name, value)

    def fold(self, n: int, event: dict, withdrawn: dict | None, righted: dict | None) -> None:
        """Folds event `n` as the core does."""
        self._now = [n, 0]
        for name in names(right(event, righted)):
            self._rows.asked.update((name, self.now(name)))
        self.focus(event["job"])
        apply(self, event, withdrawn, righted)
        self.focus(event["job"])
        self._place_new_conflicts()
        self.not_understood.clear()  # the history of its job has it
        job = self.jobs.get(event["job"])
        if job and job["history"]:
            self._note(n, job)

    def focus(self, job: str | None) -> None:
        """Reads what the core goes through when it folds or is asked about a job."""
        folded_job = self.jobs.get(job)
        if job is None or folded_job is None or job in self._focused:
            return
        self._focused.add(job)
        vehicle = folded_job["vehicle"]
        for link in (f"job:{job}", f"claims:{vehicle}", f"on:{vehicle}"):
            for name in self._rows.linked(link):
                self.units.get(name)
        for owner in self._rows.linked(f"conflicts:{job}"):
            self._read_conflicts(owner)

    def with_serial_by_eye(self, serial: str) -> list[str]:
        """Returns the units that such a serial number was read off, which are read first."""
        self.add_linked(f"serial:{by_eye(serial)}")
        return super().with_serial_by_eye(serial)

    def disputed(self, job: str) -> list[str]:
        """Returns the disputed units of a job, which are read first: any job may be asked about."""
        self.focus(job)
        return super().disputed(job)

    def add_linked(self, *links: str) -> None:
        """Reads the units under links, such as the spares in stock, which a job's next move may use."""
        for link in links:
            for name in self._rows.linked(link):
                self.units.get(name)

    def in_order(self) -> None:
        """Puts the conflicts that were read into the order in which they arose."""
        both = sorted(zip(self._order, self.conflicts, strict=True), key=lambda pair: pair[0])
        self._order = [place for place, _ in both]
        self.conflicts = [conflict for _, conflict in both]

    def add_history(self, job: str) -> None:
        """Puts a job's history back from the log; its row goes without."""
        folded_job, about = self.jobs.get(job), self._histories.get(job)
        if folded_job is None or about is None:
            return
        entries = corrections.entries(self._rows.conn, "job = ? AND n >= ?", [job, about["since"]])
        for n, event, withdrawn, righted in entries:
            folded_job["history"].append(
                history_entry(
                    right(event, righted),
                    event["data"],
                    withdrawn,
                    righted,
                    n not in about["odd"],
                    is_newer(event),
                )
            )

    def changes(self) -> Iterator[Change]:
        """Yields what has changed since it was read."""
        self._sort_conflicts_out()
        by_id = [getattr(self, name) for name in _BY_ID]
        for entities in (*by_id, self._whole, self._histories, self._conflict_lists):
            for name, old, new in entities.changes():
                yield Change(entities.kind, name, old, new)

    def _kind_before(self, device: str, seq: int, before: dict) -> str | None:
        """Returns which kind an entry before another one is, None where there is none."""
        row = self._rows.conn.execute(
            "SELECT kind FROM events WHERE device = ? AND seq = ? "
            "AND n < (SELECT n FROM events WHERE device = ? AND seq = ?)",
            [device, seq, before["device"], before["seq"]],
        ).fetchone()
        return row[0] if row else None

    def _note_unit(self, name: str) -> None:
        """Notes for `State` what a unit that was read says, and reads its conflicts."""
        unit = self.units[name]
        self.index.add_unit(unit)
        self._read_conflicts(name)
        for code in carried(unit):
            self.codes.get(code)

    def _read_sharing(self, code: str) -> None:
        """Reads the conflicts about a label that is on two units, whichever of them was read."""
        for owner in self._rows.linked(f"label:{code}"):
            self._read_conflicts(owner)

    def _read_conflicts(self, owner: str) -> None:
        """Reads the conflicts kept under a unit or, where they name none, under a job."""
        if owner in self._conflicts_read:
            return
        self._conflicts_read.add(owner)
        self._place_new_conflicts()
        for place, conflict in self._conflict_lists.get(owner, []):
            self._order.append(place)
            self.add_conflict(conflict)

    def _place_new_conflicts(self) -> None:
        """Gives the conflicts that the event being folded has raised their places in the order."""
        while len(self._order) < len(self.conflicts):
            self._order.append(list(self._now))
            self._now[1] += 1

    def _sort_conflicts_out(self) -> None:
        """Puts each conflict into the list of whom it is about; the core may have changed even that."""
        owners = [conflict["unit"] or conflict["job"] or "" for conflict in self.conflicts]
        for owner in sorted(set(owners)):
            self._read_conflicts(owner)
        self.in_order()
        lists: dict[str, list] = {owner: [] for owner in self._conflict_lists}
        for place, conflict in zip(self._order, self.conflicts, strict=True):
            lists.setdefault(conflict["unit"] or conflict["job"] or "", []).append([place, conflict])
        for owner, conflicts in lists.items():
            if conflicts:
                self._conflict_lists[owner] = conflicts
            else:
                del self._conflict_lists[owner]

    def _note(self, n: int, job: dict) -> None:
        """Takes the new entry of a job's history off; the log has it."""
        entry = job["history"].pop()
        about = self._histories.get(job["id"])
        if about is None:
            about = self._histories[job["id"]] = {"since": n, "odd": []}
        if not entry["understood"]:
            about["odd"].append(n)
