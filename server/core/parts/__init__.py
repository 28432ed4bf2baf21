"""What belongs to a sort of part: its layouts, checks, cautions and rates. The rest is for any sort.

`sort` says what a sort declares; `parking_sensor` came first, `ignition_coil`, `wheel_sender` and
`door_speaker` are others, `declared` has what those declare alike. `sorts` lists them and says which one a
job is about. A further sort is one module more, its name in that list, and a file of words in each
language; `tests/core/test_sorts.py` goes through a job with each, `tests/core/test_another_sort.py` with a
made-up one. `parking_wiring` is the circuit of a parking sensor with its checks, `wires` a check on the
wire that was noted, `parking_sounder` why its test may stay silent. `layouts` is the form of positions,
`cautions` finds those of a step.
Public: `sorts` (`by_layout`, `named`, `all_layouts`, `findings`), `sort.Sort`,
`layouts.check_positions`, `drawn` (layouts of a person's own, and their file), `cautions.for_step`,
`cautions.to_acknowledge`.
"""
