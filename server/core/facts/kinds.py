"""Every kind of event there is: the declarations of all groups, under their names.

A kind that is not listed is kept and shown as not understood: an older app may meet a newer one's facts.
"""

from . import apart
from . import corrections
from . import custody
from . import evidence
from . import job
from . import learned
from . import listening
from . import looks
from . import measuring
from . import moves
from . import pausing
from . import printing
from . import repairing
from . import returns
from . import settings
from . import sounder
from . import units

ALL = (
    job.KINDS
    + corrections.KINDS
    + pausing.KINDS
    + looks.KINDS
    + evidence.KINDS
    + measuring.KINDS
    + repairing.KINDS
    + listening.KINDS
    + sounder.KINDS
    + units.KINDS
    + custody.KINDS
    + apart.KINDS
    + moves.KINDS
    + settings.KINDS
    + learned.KINDS
    + printing.KINDS
    + returns.KINDS
)
KINDS = {kind.name: kind for kind in ALL}
corrections.ENTRY.kinds = KINDS
