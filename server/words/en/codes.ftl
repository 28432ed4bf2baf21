### What a code that was read or typed is: our labels, the maker's symbols, trouble codes, vehicle numbers.

## Labels.

codes-text-wanted = the text that was scanned or typed
codes-elsewhere-title = A label from elsewhere
# $host: yard.example
codes-elsewhere = This label belongs to { $host }, not to this installation. Stick on one of your own labels.
codes-not-whole-title = Not a whole code
# $code: K7F3
# $count (count): 4
# $whole (count): 5
codes-not-whole = { $count ->
    [one] { $code } has { $count } character, a code has { $whole }. Read the label again.
   *[other] { $code } has { $count } characters, a code has { $whole }. Read the label again.
}
codes-no-label-title = Not a label code
# $code: K7F-3O
# $character: O
codes-no-such-character = { $code } has the character { $character }, which no label uses. Read the label again.
# $code: K7F-3N
codes-check-does-not-fit = { $code }: the check character does not fit, so at least one character is wrong. Read the label again.
codes-foreign-title = This is not one of your labels
# $text: 4006381333931
codes-foreign = It holds: { $text }

## The maker's symbol.

codes-symbol-texts-wanted = a list of the texts that were read from symbols
codes-symbol-text-wanted = the text that was read from a symbol
codes-own-label-title = This is a label of your own
codes-own-label = It says which part this is, not its numbers. Show the maker's symbol.
codes-web-address-title = This symbol holds a web address
codes-web-address = It is not opened, and holds no numbers. Show the other symbol, or type the numbers.
codes-symbol-two-title = Two codes came as one
codes-symbol-two = Scan one, wait for its sound, then scan the other.
codes-symbol-not-whole-title = This symbol is not whole
codes-symbol-not-whole = It begins like a maker's symbol but goes on otherwise. Type the numbers.
codes-no-numbers-title = This symbol holds no part number
# $wanted: 06
codes-no-format = Its format is empty, and only { $wanted } carries part number and serial here. Type them.
# $formats: 05 and 12
# $wanted: 06
codes-other-format = Its format is { $formats }, and only { $wanted } carries part number and serial here. Type them.
codes-holds-nothing = It holds nothing. Show another symbol, or type the numbers.
# $held: lot 0815 and date 260401
codes-holds-others = It holds { $held }. Show another symbol, or type the numbers.
# $meaning: supplier-lot
# $value: 0815
codes-held = { $meaning ->
    [customer-part] customer's part number { $value }
    [supplier-part] supplier's part number { $value }
    [serial] serial { $value }
    [lot] lot { $value }
    [supplier-lot] supplier's lot { $value }
    [date] date { $value }
    [quantity] quantity { $value }
   *[supplier] supplier { $value }
}
# $mark: 7Q
# $value: 0815
codes-held-marked = { $mark } { $value }
# $value: 0815
codes-held-text = the text { $value }
codes-empty-symbol-title = This symbol is empty
codes-empty-symbol = Show another symbol, or type the numbers.
# $part: 4L0014
# $serial: 0815
codes-read-both = Read: part number { $part }, serial { $serial }. Compare it with what is printed.
# $field: serial
# $value: 0815
codes-read-one = Read: { $field ->
    [part] part number
   *[serial] serial
} { $value }. Compare it with what is printed.
# $field: part
# $value: 4L0014
codes-choice = { $field ->
    [part] Part number
   *[serial] Serial
} { $value }
# $choice: Part number 4L0014
# $note: supplier's part number, marked 1P
codes-choice-noted = { $choice } ({ $note })
# $meaning: supplier-part
codes-meaning = { $meaning ->
    [customer-part] customer's part number
   *[supplier-part] supplier's part number
}
# $mark: S
codes-marked = marked { $mark }
# $meaning: supplier's part number
# $mark: 1P
codes-meaning-marked = { $meaning }, marked { $mark }
codes-which-title = Which number is which?
codes-which = Compare with what is printed, and tap what you want to enter.
codes-symbol-unreadable-title = This symbol does not fit
# $most (count): 80
codes-symbol-unreadable = It holds characters that no number has, or more than { $most } of them. Type the numbers.

## Trouble codes, and what a failure type of the open list says.

# $code: B12
codes-trouble-form = { $code } is not the form of a trouble code: a letter P, C, B or U, a digit 0 to 3, then three of 0-9 A-F. It is kept as typed.
# $code: B1A45-13
codes-trouble-bytes = If a tester showed it as bytes in hex, it is { $code }.
# $type: G1
codes-failure-form = { $type } is not a failure type: two of 0-9 A-F are wanted.
# $letter: B
# $whose: maker
codes-trouble-whose = { $letter ->
    [P] Powertrain code
    [C] Chassis code
    [B] Body code
   *[U] Network code
}, { $whose ->
    [standard] of the standard
    [maker] the maker's own
    [maker-memory] the maker's own (from memory)
   *[reserved] of a reserved range (from memory)
}.
# $type: 13
# $meant: open circuit
codes-failure-meant = { $type }: { $meant }.
# $type: 13
codes-failure-as-it-is = { $type } is kept as it is.
# $code: B1A2B-13
# $failure: open circuit
codes-told-failure = { $code } ({ $failure })
# $code: B1A2B-13
# $position: right outer
codes-told-at = { $code } at { $position }
# $code: B1A2B-13
# $means: wire to the right outer one
codes-told-means = { $code }: “{ $means }”
# $code: B1A2B-13 at right outer
codes-told = Code { $code }.
codes-failure-general = general
codes-failure-electrical = electrical: short, open, voltage or current
codes-failure-signal = signal: level, rate or shape
codes-failure-control-unit = inside the control unit
codes-failure-mechanical = mechanical
codes-failure-short-to-ground = short to ground
codes-failure-short-to-battery = short to battery
codes-failure-open = open circuit
codes-failure-ground-or-open = short to ground or open
codes-failure-battery-or-open = short to battery or open
codes-failure-no-signal = no signal
codes-failure-wrong-place = wrong mounting position
codes-failure-no-message = message missing
codes-failure-performance = wrong operation
codes-failure-no-operation = no operation
codes-failure-comes-and-goes = comes and goes
codes-failure-electronic = electronic failure inside
codes-failure-component = component failure inside
codes-failure-blocked = blocked or obstructed

## The vehicle identification number.

# $place: 3
# $character: O
codes-vin-character = Character { $place } is { $character }. A VIN uses digits and letters, but never I, O or Q.
# $count (count): 5
# $whole (count): 17
codes-vin-incomplete = { $count } of { $whole } characters.
codes-vin-fits = The check digit (character 9) fits.
# $character: 5
# $digit: 4
codes-vin-does-not-fit = Character 9 is { $character }, the check digit would be { $digit }. North American numbers always have it; others need not. Read the number once more.
