### What units, positions and places are called.

# $sort: parking-sensor
names-unit-unknown = { PART($sort, form: "a") } that is not on record
# $count (count): 3
names-unit-mixed = one of the { $count } that got mixed up
# $sort: parking-sensor
# $position: right outer
# $count (count): 1
names-unit-from = the { $count ->
    [one] { PART($sort) }
   *[other] { PART($sort, form: "many") }
} from { $position }
# $sort: parking-sensor
names-unit-unlabelled = { PART($sort, form: "a") } without a label
# $whose: yours
names-place-stock = in { $whose ->
    [theirs] their
   *[yours] your
} stock
# $whose: yours
names-place-counter = at the parts counter
# $whose: yours
names-place-customer = with the customer
# $whose: yours
names-place-scrapped = scrapped
# $whose: yours
names-place-in-hand = in hand
names-place-disputed = in dispute: two places are on record
# $position: right outer
names-place-fitted-at = fitted at { $position }
# $vehicle: Estate, blue
names-place-fitted-on = fitted on { $vehicle }
# $position: right outer
# $whose: yours
names-place-hand-from = in { $whose ->
    [theirs] their
   *[yours] your
} hand, pulled from { $position }
# $whose: yours
names-place-hand = in { $whose ->
    [theirs] their
   *[yours] your
} hand
names-place-other-job = out on another job
# $count (count): 3
names-place-mixed = one of { $count } in hand that got mixed up
# $days (count): 3
names-ago = { $days ->
    [0] today
    [one] { $days } day ago
   *[other] { $days } days ago
}
