### What is refused, and why.

# $field: minutes
# $found: -3
# $wanted: whole minutes from 0 to 600
refusals-bad-input = { $field }: found { $found }, wanted { $wanted }

## What was found, where it is no text.

refusals-found-nothing = nothing
refusals-found-decimals = a number with decimals
refusals-found-list = a list of { $count }
refusals-found-object = an object with { $count } keys
refusals-found-else = something else
