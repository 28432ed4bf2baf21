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
