"""The one next step of a job, with the facts that a tap on it records.

`next_step` picks the stage; `opening`, `moving`, `cleaning`, `fixing`, `ending` and `mixed_up` build its
steps in the shape of `step`. `moves` tells the moves that can be chosen, `scan` what a scanned label means
at a step, `stops` what is said of a wrong one.
`measuring` asks for a check of a circuit, `harness` for the one that tells most where the circuit is a chain;
`sounder` leads on where no test is heard, `stuck` where the wiring checks found nothing; `repeats` knows a
test that would say the same again; `settling` asks what settles a contradiction, `mixed_or_not` where
one phone says that sensors got mixed up, `corrected_apart` where phones corrected one entry in two ways, or
read two numbers off one sensor; `ways` are what can be done at any step instead: repair, pause, end;
`repairing` asks for a repair and the check that proves it; `standing` says where the pole stands at the
check in use. `testing` is the step of a self-test, `listening` that of hearing units work, `fitting` the
guided exchange, `spare` what at hand may take a place, `tried_spare` one that is in and may stay,
`true_place` where a unit in dispute is, `finishing` the last things of a job.
Public: `next_step.next_step`, `moves`, `scan.meaning`, `step.draft`.
"""
