"""Labels that a server prints: codes issued once, symbols, sheets and rolls, what became of each label.

`store` issues codes and keeps them as a batch before anything is printed; `states` says what became of
each label. `symbol` makes the QR, `sheet` puts labels onto pages as the core lays them out (its `printing/`),
`svg` and `pdf` write pages, and `files` makes the files of both. `routes` is what the print screen asks; the
command is `server/commands/labels.py`.
"""
