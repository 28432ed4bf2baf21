"""What screens and clerks ask, answered from the folded state by the core.

`projection` is the server's host of the core: it moves the folded state on and answers the core's questions
from it. `returns` has the lists of the parts counter, `decisions_csv` writes its decisions as a file for a
spreadsheet.
"""
