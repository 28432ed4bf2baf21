"""What the yard's own jobs teach: rates, minutes, and how its work came out, made of its closed jobs.

Each closed job contributes figures of its own (`contribution`), kept in a table beside the folded state
(`kept`) until the job changes, and summed up (`sums`). From them follow the shares of the classes of causes
(`shares`), the rates of readings (`rates`), the minutes of work (`minutes`) and what the page shows
(`figures`; `page` with its `rows` says it in messages). A server alone does this: it has every job of the
yard, and time. What is adopted of it is an entry, read by the core. Yards give one another their figures as
sealed files (`given`) and let those of others weigh (`weighed_in`).
"""
