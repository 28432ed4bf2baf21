### What the reasoning says of moves: why, and what their results would mean.

## What a result would mean; it stands after the result, so it begins small. `$share` is "none" where several results mean the same.

reasons-then-unlikely = not expected; test again before you conclude anything
reasons-then-open = nothing is settled by that; the next move is worked out then
reasons-then-gone = the fault is gone for now; test again
reasons-then-no-fault = no fault has shown; if it comes and goes, test again
reasons-then-watched = the test watches this position, so its results count
reasons-then-not-watched = the test does not watch this position, so its clean results prove nothing
# $cause: the wiring at right outer
# $share: 98.8 %
reasons-then-it-is = { $share ->
    [none] it is { $cause }
   *[figure] it is { $cause }, { $share }
}
# $cause: sensors WM3-F2 and CMT-94
# $share: 98.8 %
reasons-then-causes = { $share ->
    [none] the causes are { $cause }
   *[figure] the causes are { $cause }, { $share }
}
# $cause: the wiring at right outer
# $share: 71 %
reasons-then-likely = { $share ->
    [none] most likely { $cause }; not settled yet
   *[figure] most likely { $cause }, { $share }; not settled yet
}
# $share: 98.8 %
reasons-then-nothing-left = { $share ->
    [none] nothing is left to fix
   *[figure] nothing is left to fix, { $share }
}
# $position: right outer
# $share: 98.8 %
reasons-then-circuit = it is the wiring at { $position }, { $share }
# $position: right outer
# $share: 71 %
reasons-then-circuit-likely = most likely the wiring at { $position }, { $share }; not settled yet
# $position: right outer
# $share: 21 %
reasons-then-circuit-stays = the wiring at { $position } stays a suspect, { $share }
# $position: right outer
# $share: 1.2 %
reasons-then-circuit-out = the wiring at { $position } is as good as ruled out, { $share }

## Why a move is proposed, and what speaks against it.

reasons-why-first = Nothing has been tested yet.
reasons-why-no-fault = No test that counts has shown a fault. If it comes and goes, test again.
reasons-why-aside = The last test does not count.
reasons-why-changed = Something was changed since the last test.
reasons-why-gone = The causes found are dealt with. Clean tests now prove it.
# $about: right outer
reasons-why-shared = Most likely it is { $about }: check there first, then test again.
# $about: right outer
reasons-why-repair = Find and repair { $about }, then test again.
reasons-why-before-buying = Once more before you buy a part: it costs little and makes sure.
reasons-why-before-buying-elsewhere = Before you buy another part: it shows whether the place is to blame.
reasons-why-before-a-spare = Once more before the spare goes in: it tested clean in between.
reasons-why-retest = Nothing to take apart: it shows whether the fault is still there.
# $blocked: dirt, ice, paint or aim
reasons-why-clean = { CAP($blocked) } would show the same.
# $blocked: dirt, ice, paint or aim
reasons-why-clean-several = { CAP($blocked) } would show the same, and one retest serves for all of them.
# $about: right outer
reasons-why-meter = Connector and wire of { $about } are still suspects.
# $about: right outer
reasons-why-listen = Nothing is taken apart to hear whether { $about } works.
# $about: right outer
reasons-why-verdict-replace = Replace { $about }, then prove it with a clean test.
# $about: right outer
reasons-why-verdict-spare = It is { $about }: the one at hand takes its place.
# $about: right outer
# $check: check its aim
reasons-why-verdict-clean = It is { $about }: clean it, { $check }, then prove it.
# $about: right outer
reasons-why-unplug = Shows whether the test watches { $about } at all; nothing about the cause.
# $sort: parking-sensor
reasons-why-replace = No working { PART($sort) } is left to exchange with: a new one tells.
# $about: right outer
reasons-why-unplug-doubt = No test has ever shown a fault at { $about }: does the test watch it at all?
reasons-why-spare = Your spare goes in: only one position to take apart.
reasons-why-easiest = It tested clean, and it is the easiest to reach.
reasons-why-cleared = It tested clean, so the fault can show where it belongs.
reasons-why-same-part-easiest = Same part, and the easiest to reach.
reasons-why-same-part = Same part, and it tested clean.
reasons-why-bench = A suspect lies on the bench: where all works, a test clears it or convicts it.
reasons-why-fill = They have to go in again, and this takes the least.
reasons-why-fill-elsewhere = They have to go in again. So placed, the fault can show where it belongs.
reasons-why-back = All is clean with your spare. Back in its place, the one that came out shows whether it is bad.
reasons-why-several = Settles several suspects in one retest, each with one that tested clean.
# $sort: parking-sensor
reasons-why-ring = Settles several suspects in one retest: each { PART($sort) } moves on to the next place.
reasons-why-chain = Your spare goes in, the suspects move on by one place.
reasons-why-spares = Your spares go in, all in one retest.
# $sort: parking-sensor
reasons-why-suspects-first = Fewest to take apart. A fault that moves is in a { PART($sort, form: "one") }, one that stays in the wiring.
reasons-why-suspects = Two suspects with each other: if both are bad, nothing moves.
# $why: its sounder was not heard
reasons-not-heard = { CAP($why) }, so nothing proves that the test ran.
reasons-waits = It counts once it is settled what two phones entered apart.
# $position: right outer
reasons-not-watching = { CAP($position) } was unplugged and still tested clean, so the test was not watching.
# $why: Same part, and the easiest to reach.
# $length: 9 minutes
reasons-with-retest = { $why } About { $length } with the retest.
# $why: Same part, and the easiest to reach.
# $length: 9 minutes
reasons-without-test = { $why } About { $length }.
reasons-half-minute = half a minute
reasons-not-suspects = Suspects only change places: if they fault again, it says hardly more than before.
reasons-not-untested = Nobody has tested this spare: if it faults, it is one more suspect.
reasons-not-same = The test would most likely look the same either way.
reasons-not-same-checks = The checks would most likely find nothing.
reasons-not-same-heard = It would most likely sound the same either way.
reasons-not-unplug = It says nothing about the cause.
