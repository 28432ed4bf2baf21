"""The event log of the server: how facts come in and go out. It has nothing to do with `logging`.

`sync` is the route by which phones send and fetch, `take_in` the command for a file of a phone
(`unsent_file` reads it). Both hand entries to `events`, which asks `intake` about each and keeps it;
`senders` says whose each is, by what `proof` reads of certificates and signatures. `unproven` keeps apart
what nothing proves, and `brought` is the list of that, for people. `named` finds the units that an entry
names. `epoch` begins anew where the log may have gone back, and `mark` is the file beside the database by
which that is noticed. `fault` is one place at which a log, a backup or a record is not as it was recorded.
"""
