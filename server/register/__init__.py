"""The register of returns that a chain's counters share: what came back at one is known at all others.

It lies in a PostgreSQL database, or in one that speaks its protocol. `address` reads where; `tables` makes
its tables; `link` holds the connections and keeps each question short; `transaction` runs one, again where
another came between; `entries` asks, claims and enters. `outbox` says what the folder's own log has to enter,
`keeper` does it in a thread beside the server, and `routes` is what phones at the counter ask.

No counter waits for it: where it is not reached in time, the answer is `NotReached`, and what is decided then
is entered later. It knows parts, labels and counters; it knows no people and no vehicles.
"""
