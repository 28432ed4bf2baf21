### What all screens share: buttons, the way back, times and sizes.

frame-back = Back
frame-stages = Stages of the job
frame-one-moment = One moment
frame-undo = Undo
frame-mark-of = This phone:

## Buttons that many screens have.

frame-the-jobs = The jobs
frame-show-jobs = Show the jobs
frame-try-again = Try again

## Screens for what cannot be shown.

frame-nowhere = No such screen
frame-nowhere-heading = This address leads nowhere
frame-nowhere-do = Go back to the list of jobs.
# $what: job
frame-missing = { $what ->
    [job] This job is not on this phone
    [unit] This sensor is not on this phone
    [position] This job has no such position
   *[batch] These labels were not printed here
}
# $what: job
# $alone: no
frame-missing-do = { $what ->
    [position] Open the job from the list and tap the position there.
   *[other] { $alone ->
        [yes] Look for it in the list of jobs.
       *[no] Another phone may not have sent it yet. Look for it in the list, or look again later.
    }
}
frame-look-again = Look again
frame-not-found = Not found
frame-not-shown = This could not be shown
frame-part-broken = This part can't be shown. What was recorded is kept.
frame-part-open = Open it
frame-nothing-lost = Nothing that was recorded is lost.

## Rows that lead to files, checks and help.

frame-record-file = The record as a file
frame-record-file-note = sealed, for a counter elsewhere
frame-check-record = Check a record
frame-check-record-note = a file from another yard
frame-help = Help
frame-help-note = first steps, cautions

## What a rule refused.

frame-refused = Not recorded
frame-refused-leave = Leave it
frame-refused-understood = Understood
frame-refused-reason = Reason, kept on record
frame-refused-override = Record it for this reason

## Beside what is shown.

# $now (count): 3
# $total (count): 6
frame-step-count = { $now } of { $total }

## Times and sizes.

# $month (count): 11
frame-short-month = { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
}
# $day: 28
# $month: Nov
frame-day-of-this-year = { $day } { $month }
frame-just-now = just now
# $span: 3 hours
frame-ago = { $span } ago
# $count (count): 3
frame-seconds = { $count ->
    [one] { $count } second
   *[other] { $count } seconds
}
# $count (count): 3
frame-minutes = { $count ->
    [one] { $count } minute
   *[other] { $count } minutes
}
# $count (count): 3
frame-hours = { $count ->
    [one] { $count } hour
   *[other] { $count } hours
}
# $count (count): 3
frame-days = { $count ->
    [one] { $count } day
   *[other] { $count } days
}
# $number: 1.4
frame-kilobytes = { $number } kB
# $number: 1.4
frame-megabytes = { $number } MB
# $number: 1.4
frame-gigabytes = { $number } GB
frame-help-missing = The help is not on this phone yet. Open it once more with a network.
frame-screen-missing = This screen is not on the phone yet. It needs the network once.
