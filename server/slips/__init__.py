"""Slips that a printer at the counter prints of decisions: `swaptrail serve --printer`.

`place` reads what the option names and sends bytes there; `slip` says what stands on a slip; `zpl` and
`escpos` write it in the two languages that such printers speak. `spool` prints in a thread beside the server,
`kept` has what waits through a restart, and `routes` is what phones at the counter ask. No decision waits for
a printer: it is on record before its slip is asked for.
"""
