"""What all operations share: the folded log, what was concluded from it, and how a job is found."""

from ..errors import BadInput
from ..evidence.conclusions import Conclusions
from ..facts.fold import Fold
from ..messages import message
from ..state.job import Job
from ..state.job import known_job
from ..views.findable import Findable


class Held:
    """A folded log and what was concluded from it."""

    def __init__(self):
        """Start with an empty log."""
        self.fold = Fold()
        self.coming = []  # of a log that is handed over in parts
        self.coming_head: dict = {}  # of a snapshot that is
        self.conclusions = Conclusions()
        self.findable = Findable()

    def _job(self, identity) -> Job:
        if identity not in self.fold.state.jobs:
            raise BadInput("job", identity, message("refusals-job"))
        return known_job(self.fold.state, identity)

    def _findable(self) -> Findable:
        self.findable.keep_up(self.fold)
        return self.findable

    def _reasoned(self, identity) -> dict | None:
        return self.conclusions.reasoned(self._job(identity))

    def _concluded(self, identity) -> dict | None:
        return self.conclusions.concluded(self._job(identity))
