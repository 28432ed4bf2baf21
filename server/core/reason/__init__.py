"""The reasoning: from readings to the probability of each cause, a verdict and the next move.

Pure: a case in (section 6 of the design), plain integers out. See README.md.
"""

from .answer import reason
from .shown import to_decimals

__all__ = ["reason", "to_decimals"]
