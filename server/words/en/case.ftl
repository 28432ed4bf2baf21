### What is refused of a case for `swaptrail reason`, and of the file that it stands in: what would be right.

case-key-there = this key to be there
# $keys: position, reads, generation
case-keys = one of the keys { $keys }
case-text = a text that is not empty
case-text-or-none = a text
case-id = an id without #
case-chance = a number from 0 to 1
case-confidence = a number above 0 and below 1
case-shows = a number above 0, up to 1
case-false-alarm = a number from 0, below 1
# $most: 10000
case-minutes = a number of minutes from 0 to { $most }
# $most: 1000000000
case-money = a whole number of cents or the like from 0 to { $most }
# $least: 1
# $most: 100
case-doubt = a number from { $least } to { $most }
# $least: 0.001
# $most: 1000
case-factor = a number from { $least } to { $most }
case-whole-from-1 = a whole number from 1
# $most: 2
case-generation = a whole number from 1 to { $most }
case-some-position = at least one position
case-unit-id-taken = an id that no other unit has
# $position: rear-left-outer
case-unit-elsewhere = a unit not at { $position } too
case-position = the id of one of the positions
case-unit-once = each unit named once
case-position-once = each position named once
case-not-silent = a position that is not silent in this test
case-fitted = a position that is fitted or unplugged in this test
case-listen-fitted = a position that is fitted and plugged in
case-repair = circuit: and a position, feed: and a group, or control
case-repair-once = each repair named once
case-cause = unit: and a unit of the case, circuit: or blocked: and a position, feed: and a group, or control
case-prior-cause = circuit: or blocked: and a position, feed: and a group, or control; a unit has a prior of its own
case-cause-once = each cause named once

## The whole of it: what was found, in quotes, and what would be right.

case-ruled-out = "readings that rule each other out"
case-possible = readings that can happen together at these rates

## The file. What was found in it stands in quotes.

case-file = a file that can be read
case-file-no-access = "no access"
case-file-none = "no such file"
# $most: 5000000
case-file-at-most = a file of at most { $most } bytes
case-file-larger = "a larger file"
# $at: 12
case-bytes = "other bytes at byte { $at }"
case-utf-8 = UTF-8 text
# $wrong: Expecting value
# $line: 1
# $column: 14
case-no-json = "{ $wrong } in line { $line }, column { $column }"
case-nested = "lists or objects nested too deeply"
case-case = a case
case-number-long = "a number that is too long"
case-number = a number of everyday size
case-key-twice = "the key twice in one object"
case-key-once = each key once
case-json-numbers = numbers that JSON has
