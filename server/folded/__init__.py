"""The folded state in tables: each vehicle, unit, label and job as the core's fold left it.

The log may hold a million events; a question about one job must not need them all. So the state
that the core folds is kept entity by entity, moved on inside the transaction that takes events in,
and a question reads only the entities that it touches. All of it is a cache: `rebuild` drops it and
makes it again from the log.
"""

from .progress import CACHES
from .progress import advance
from .progress import beyond
from .progress import catch_up
from .progress import forget
from .progress import in_step
from .search import units_found
from .state import FoldedState

__all__ = ["CACHES", "FoldedState", "advance", "beyond", "catch_up", "forget", "in_step", "units_found"]
