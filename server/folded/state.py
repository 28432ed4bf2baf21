"""The core's State over rows: an entity is read when the core first asks for it.

The core looks entities up by id, and where it goes through all units or conflicts it keeps those of
one job, of one vehicle, or the spares in stock. `focus` reads these beforehand, so going through
what is read finds the same as going through everything. `tests/server/folded/test_folded.py` holds every
answer against a fold of the whole log.
"""

from typing import Any

from sqlite_utils import Database

from server.core.facts.corrections import right
from server.core.facts.fold import apply
from server.core.facts.fold import history_entry
from server.core.facts.fold import is_newer
from server.core.state.state import State
from server.folded import corrections
from server.folded.entities import Entities
from server.folded.rows import Rows
from server.folded.rows import jobs_shown_by

_BY_ID = {"vehicles": "vehicle", "units": "unit", "codes": "code", "jobs": "job"}


class FoldedState(State):
    """The state as the rows have it, and what is folded into it on top."""

    def __init__(self, db: Database):
        """Starts with nothing read."""
        super().__init__()
        self._rows = rows = Rows(db)
        self._focused: set[str] = set()
        self._conflicts_read: set[str] = set()
        self._order: list[list[int]] = []
        self._conflict_lists = Entities(rows, "conflicts")
        self._histories = Entities(rows, "history")
        self._whole = Entities(rows, "whole")
        self.conflicts: Any
        for name, empty in super().as_dict().items():
            if name in _BY_ID:
                about = {"units": self._note_unit, "jobs": self._read_conflicts}.get(name)
                setattr(self, name, Entities(rows, _BY_ID[name], about))
            elif name not in {"conflicts", "not_understood"}:
                # Whatever else the core keeps is small: it is read and kept as one.
                setattr(self, name, self._whole.get(name, empty))

    def fold(self, n: int, event: dict, withdrawn: dict | None, righted: dict | None) -> None:
        """Folds event `n` as the core does."""
        self.focus(event["job"])
        apply(self, event, withdrawn, righted)
        self.focus(event["job"])
        self._order += [[n, place] for place in range(len(self._order), len(self.conflicts))]
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
        for link in (f"job:{job}", f"claims:{folded_job['vehicle']}"):
            for name in self._rows.linked(link):
                self.units.get(name)
        for owner in self._rows.linked(f"conflicts:{job}"):
            self._read_conflicts(owner)

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

    def save(self, bucket: int, fine_from: int) -> None:
        """Writes what has changed."""
        self._sort_conflicts_out()
        for name in self.as_dict():
            if name not in _BY_ID and name not in {"conflicts", "not_understood"}:
                self._whole[name] = getattr(self, name)
        stale: set[str] = set()
        by_id = [getattr(self, name) for name in _BY_ID]
        for entities in (*by_id, self._whole, self._histories, self._conflict_lists):
            for name, old, new in entities.changes():
                self._rows.write(entities.kind, name, old, new, bucket, fine_from)
                stale |= jobs_shown_by(entities.kind, name, old, new)
        for name in stale.intersection([*self.jobs]):
            self._rows.list_job(name, self.jobs[name])
        self._rows.stale(stale)

    def _note_unit(self, name: str) -> None:
        """Notes for `State` what a unit that was read says, and reads its conflicts."""
        self.index.add_unit(self.units[name])
        self._read_conflicts(name)

    def _read_conflicts(self, owner: str) -> None:
        """Reads the conflicts kept under a unit or, where they name none, under a job."""
        if owner in self._conflicts_read:
            return
        self._conflicts_read.add(owner)
        for place, conflict in self._conflict_lists.get(owner, []):
            self._order.append(place)
            self.add_conflict(conflict)

    def _sort_conflicts_out(self) -> None:
        """Puts each conflict into the list of whom it is about; the core may have changed even that."""
        owners = [conflict["unit"] or conflict["job"] or "" for conflict in self.conflicts]
        for owner in sorted(set(owners)):
            self._read_conflicts(owner)
        self.in_order()
        lists: dict[str, list] = {owner: [] for owner in self._conflict_lists}
        for place, conflict in zip(self._order, self.conflicts, strict=True):
            lists.setdefault(conflict["unit"] or conflict["job"] or "", []).append([place, conflict])
        self._conflict_lists.update(lists)

    def _note(self, n: int, job: dict) -> None:
        """Takes the new entry of a job's history off; the log has it."""
        entry = job["history"].pop()
        about = self._histories.get(job["id"])
        if about is None:
            about = self._histories[job["id"]] = {"since": n, "odd": []}
        if not entry["understood"]:
            about["odd"].append(n)
