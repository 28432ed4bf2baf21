"""What is true: vehicles, units, labels, jobs, conflicts.

`state` holds it as plain dicts (`kept_facts`), built by the fold; the rooms above ask a `Job` and a `Unit`
of it. `index` finds units in it without going through all, `exchange` says how far an exchange has got,
`printed` what a phone printed, `own_label` whose label a text is by what is on record. `snapshot` puts the
state into text and back, for a phone's next start, `jobs_in_part` stands for jobs that are not in its
memory. `serials` finds units by their number. `stories` says who claimed what of a unit, `contradictions`
what is open on a job. Nothing here decides or words anything.
Public: `State`, `Job`, `find_job`, `known_job`, `Unit`, `exchange`, `printed`, `own_label.read`, `snapshot`.
"""
