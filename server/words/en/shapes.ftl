### What stands in drawings: marks, the board, the trail, a label code.

shapes-clean = clean
shapes-fault = fault
shapes-untested = not tested
shapes-aside = set aside
shapes-empty = empty
shapes-no-label = no label

## The board.

shapes-seen-rear = rear, seen from behind
shapes-seen-front = front, seen from the front
shapes-seen-around = seen from above
shapes-edge-front = Front
shapes-edge-left = Left side
shapes-edge-right = Right side
shapes-edge-rear = Rear
# $count (count): 12
shapes-positions = { $count ->
    [one] { $count } position
   *[other] { $count } positions
}
shapes-photo-taken = photo taken
shapes-front = front
shapes-rear = rear
shapes-left = left
shapes-right = right

## The trail.

# $number (count): 3
shapes-test = test { $number }
shapes-position = position
# $test: test 3
shapes-test-aside = { $test }, set aside
shapes-in-hand = in hand
shapes-trail = trail of the tests
# $count (count): 2
shapes-trail-earlier = { $count ->
    [one] 1 earlier test
   *[other] { $count } earlier tests
}
# $count (count): 2
shapes-trail-later = { $count ->
    [one] 1 later test
   *[other] { $count } later tests
}
# $count (count): 6
shapes-trail-folded = { $count ->
    [one] 1 more position: no fault, nothing moved
   *[other] { $count } more positions: no fault, nothing moved
}
