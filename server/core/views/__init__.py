"""What screens, paper and records draw, as JSON in which every sentence is a message.

`job`, `unit`, `vehicle`, `report` and `counter` are what is opened; the other modules are parts of them.
Nothing is decided here: a view asks the rooms below.
Public: `job.job_view`, `job_list.jobs_view`, `unit.unit_view`, `vehicle.vehicles_view`, `report.report`,
`counter.look`.
"""
