"""How data is kept safe and handed on as files, and how a file is checked.

`backup` writes a data folder into one file (`manifest` lists what is in it) and `restore` makes a folder of
one; `rejoin` says that a folder came back from elsewhere; `rebuild` makes anew what follows from the log;
`make_room` moves what was set aside out of the database.
`record/` is the record of one sensor or job, `verify/` says of any of these files whether it is as it was
written. `new_file` is what the commands that write one file have in common.
"""
