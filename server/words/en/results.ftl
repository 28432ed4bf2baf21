### The possible results of a move: what would be seen. Each stands alone, or after its chance.

results-else = anything else
# $then: it is sensor K7F-3M, 98.7 %
# $who: K7F-3M is the one from right outer
results-then-who = { $then }; { $who }
results-rarely = test again before you conclude anything
results-often = the next move is worked out from what you enter
# $result: fault stays at right inner and right outer
# $count (count): 2
results-or-at = { $result } (or at { $count ->
    [2] only one
   *[other] some
} of them)
results-checks-good = every check is good
results-check-bad = a check is bad
results-ticks = it ticks
results-silent = nothing to hear
# $position: right outer
results-shown-at = fault shown at { $position }
# $position: right outer
results-not-shown-at = no fault shown at { $position }
results-none = no fault anywhere
results-none-this-time = no fault this time
# $positions: right inner and right outer
results-fault = fault at { $positions }
# $positions: right inner and right outer
results-again = fault at { $positions } again
# $positions: right inner and right outer
results-still = fault still at { $positions }
# $positions: right inner and right outer
results-both = fault at both { $positions }
# $positions: right inner
# $only: no
results-moves = { $only ->
    [yes] fault moves to { $positions } only
   *[no] fault moves to { $positions }
}
# $positions: right inner
# $only: yes
results-stays = { $only ->
    [yes] fault stays at { $positions } only
   *[no] fault stays at { $positions }
}
# $moved: right inner
# $stayed: left outer
results-moves-and-stays = fault moves to { $moved }, stays at { $stayed }

## Positions, in a list that stays short.

results-every-position = every position
# $edge: rear
results-every-at-edge = every { $edge } position
# $count (count): 3
results-more = { $count } more
