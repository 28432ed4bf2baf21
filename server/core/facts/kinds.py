"""Every kind of event there is: the declarations of all groups, under their names.

A kind that is not listed is kept and shown as not understood: an older app may meet a newer one's facts.
"""

from . import fold_custody
from . import fold_evidence
from . import fold_job
from . import fold_moves
from . import fold_printing
from . import fold_returns
from . import fold_settings

ALL = (
    fold_job.KINDS
    + fold_evidence.KINDS
    + fold_custody.KINDS
    + fold_moves.KINDS
    + fold_settings.KINDS
    + fold_printing.KINDS
    + fold_returns.KINDS
)
KINDS = {kind.name: kind for kind in ALL}
