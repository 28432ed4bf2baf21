"""From a job to a case, and what carries its conclusion.

`job_case` makes the case (`readings` its tests and rates, `priors`, `unit_history` and `comeback` its
priors; the latter two rest on what each job concludes by itself, `job_alone`), `mixups`, `ways`,
`who_is_who` and `identity_assignments` deal with units whose names got mixed up, `conclusions` keeps
what came out.
`leave_one_out` says which readings carry a conclusion, `discriminate` which move tells it from the
runner-up, `proof` whether the repair is proven, `retaken` which check that was bad before it
has to be made again. `verdict` words the conclusion, for it hangs on what
carries it.
Public: `Conclusions`, `job_case.case_of`, `proof`, `verdict`, `assumptions`.
"""
