"""What a phone keeps from one start to the next: snapshots, and closed jobs in and out of memory."""

from ..evidence.conclusions import Conclusions
from ..facts.fold import Fold
from ..state import snapshot
from .held import Held


class KeptOperations(Held):
    """Hands the state out in pieces and takes it back; only the phone asks."""

    def op_closed_jobs(self):
        """Return the closed jobs that are in memory."""
        return {"jobs": snapshot.closed_in_memory(self.fold.state)}

    def op_job_pieces(self, jobs):
        """Return jobs as a snapshot keeps them, each for itself."""
        return snapshot.pieces(self.fold.state, jobs)

    def op_snapshot(self, part):
        """Return a part of the state but for the closed jobs; `of` says how many parts there are."""
        return snapshot.head(self.fold, part)

    def op_restore(self, head, more=False):
        """Take the state of a snapshot in place of what there is; with `more`, once all parts are there."""
        if "count" in head:  # only its first part has one
            self.coming_head = {}
        snapshot.join(self.coming_head, head)
        if more:
            return {"count": self.fold.count()}
        fold = Fold()
        corrections = fold.corrections
        fold.state, corrections.withdrawn, corrections.righted, fold.before = snapshot.restored(
            self.coming_head
        )
        fold.know_phones(self.fold.state.phones)
        self.fold, self.coming, self.coming_head, self.conclusions = fold, [], {}, Conclusions()
        return {"count": fold.count()}

    def op_load_jobs(self, jobs):
        """Take closed jobs into memory, as `job_pieces` returned them."""
        snapshot.load(self.fold.state, jobs)

    def op_unload_jobs(self, jobs, count):
        """Take closed jobs out of memory, if the log is still as long as when their pieces were made."""
        if count != self.fold.count():
            return {"unloaded": False}
        snapshot.unload(self.fold.state, jobs)
        return {"unloaded": True}

    def missing(self, jobs):
        """Say what an answer lacks; beside a job those that its sensors were on: they come next."""
        if not jobs:
            return {"log": True}
        return {"jobs": snapshot.beside(self.fold.state, jobs)}
