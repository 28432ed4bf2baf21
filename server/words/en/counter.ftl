### The parts counter: proposals, decisions, the day.

# $part: 0263-K
counter-part = part { $part }
# $part: 0263-K
# $where: right outer, estate car
counter-part-from = part { $part }, from { $where }
# $count (count): 9
counter-all-checks = All { $count } checks
counter-same-part = It is the same part
counter-other-part = It is another part
counter-compare-again = Compare again
# $code: K7F-3M
counter-otherwise-on = Decide otherwise on { $code }
# $decision: Hold
# $why: Its label was not scanned
counter-proposed = Proposed: { $decision }. { $why }
counter-your-decision = Your decision
counter-your-reason = Your reason, kept on record
counter-own-words = Or in your own words
counter-reason-wanted = Say what you decide, and give a reason.
counter-no-record = No record here
counter-record-file = Its record as a file
counter-pictures-in-record = Its pictures are in its record. Save it as a file, and open that under “Check a record”.
counter-record-not-here = The record did not come
# $moment: 28 Nov, 09:05
# $name: Sam
counter-signed-by = { $moment }, signed by { $name }
counter-twice = Decided at two counters; both stay on record
counter-others-not-asked = Other counters are not reached
# $count (count): 3
counter-others-waiting = { $count ->
    [one] One decision
   *[other] { $count } decisions
} not told to other counters yet

## Scanning one after the other.

counter-title = Counter
# $count (count): 12
counter-title-today = Counter · { $count } today
counter-type = Type a code
counter-aim = Label, then the part's symbol
counter-take-back = Cancel the decision
counter-ready = Ready for the next label.
counter-show-label = Show the label of the part.
counter-decide = Decide
# $decision: Accept
# $code: K7F-3M
counter-decide-on = { $decision } { $code }
counter-as-proposed = Back to the proposal
counter-later = Decide later
counter-receive = Take it in
counter-leave = Only looked
counter-only-looked = Nothing recorded
# $code: K7F-3M
counter-only-looked-at = { $code } was only looked at. Scan it again to decide.
counter-entered-kept = Kept, not recorded
# $code: K7F-3M
counter-entered-kept-of = What you entered for { $code } is kept. Scan it again to decide.
counter-whole-record = Its whole record
counter-otherwise = Otherwise
counter-look-up = Look it up

## What waits, and today.

# $count (count): 3
counter-wait = { $count ->
    [0] Nothing waits
    [one] { $count } waits for a decision
   *[other] { $count } wait for a decision
}
counter-scan-lead = Scan the label of a part that comes back.
counter-today = Today
counter-day-file = Day list and file
counter-search-records = Search what is on record
counter-scan-returns = Scan returns
# $ago: 3 hours ago
# $why: its label was not scanned
counter-held = held { $ago }: { $why }
# $ago: 3 hours ago
counter-received = received { $ago }
counter-who = Who decides here?
counter-your-name = Your name
counter-your-name-note = Signs every decision that is made on this phone.
counter-sign = Sign with this name
counter-unchecked = This could not be checked
counter-taken-back = Taken back at once

## The list of a day.

counter-day-list = Day list
counter-day = Day
counter-day-before = The day before
counter-day-after = The day after
counter-day-empty = Nothing was decided on this day.
counter-save = Save as a file (CSV)
counter-search = Search
# $why: The server cannot be reached.
counter-file-problem = The server makes the file. { $why }
counter-search-for = What do you look for?
counter-search-note = A code, part, serial, vehicle, complaint or name. The beginning of each word will do.
# $count (count): 3
# $where: server
counter-found = { $count ->
    [0] Nothing found
   *[other] { $count } found
} { $where ->
    [server] on the server
   *[phone] on this phone
}.
counter-found-nothing = Type less of it, or something else: its code, its serial, the vehicle.
counter-found-nothing-here = The server was not asked. It may know more.
counter-found-scan = Scan or type its label

## A symbol and the part it is on.

counter-whose = Which part is this symbol on?
# $code: K7F-3M
counter-whose-why = It was not read together with label { $code }.
# $code: K7F-3M
counter-whose-this = On { $code }
counter-whose-other = On another one
counter-label-first = The label first
counter-label-first-do = Read the label of that part, then its symbol.
# $numbers: 0263-K, 4711-0
counter-bag-first = It holds { $numbers }. Read the label of that part, then its symbol.
counter-serial = Type its serial number
counter-serial-field = Serial number, as printed on the part
counter-serial-enter = Compare it
counter-serial-known = This serial number is on record
# $serial: 4711-0
counter-serial-known-of = { $serial } was read off a part before. Tap the part to go on with it.
counter-no-serial = No part here has it as its serial number either.

## A hand scanner that types.

# $what: layout
counter-keys-title = { $what ->
    [caps] Capitals and small letters are turned around
    [separators] The scanner leaves separators out
   *[layout] The scanner types for another keyboard
}
# $what: layout
counter-keys-do = { $what ->
    [caps] Switch Caps Lock off, here and in the scanner's setting, and scan again.
    [separators] Set it to send control characters as Ctrl keys, and scan again.
   *[layout] Set it to the keyboard layout of this device, and scan again.
} Nothing was taken from this scan.
counter-hand-scanner = Hand scanner
counter-hand-scanner-is = One that types needs no tap: scan on any screen here.
# $text: 4711-0
counter-held-back = Waiting for the rest of { $text }
counter-held-end = Press Enter if that is all.
counter-prefix = What it types before each code
counter-prefix-note = Leave it empty where it types nothing more.
counter-prefix-keep = Keep this

## Several at once, and the screen of a counter with a computer.

# $count (count): 3
# $why: serial number
counter-together = Decide these { $count } together: { $why }
# $why: serial number
counter-several = Held for: { $why }
counter-together-reason = Your reason, where you decide otherwise than proposed
# $decision: Accept
# $count (count): 3
counter-decide-several = { $decision }: { $count }

## What changed while a proposal stood there.

counter-changed = Something else is proposed now
# $code: K7F-3M
counter-changed-do = What is on record of { $code } changed meanwhile. Nothing was decided: look again.
# $codes: K7F-3M, P2W-9D
counter-changed-of = Nothing was decided on { $codes }. Look at each by itself.

## Slips.

counter-slip = A slip after each decision
# $way: printer
counter-slip-way = { $way ->
    [printer] From the printer at the server
    [paper] Show it, to print it here
    [print] Print it here at once
   *[none] None
}
# $state: waits
counter-slip-state = { $state ->
    [sent] Its slip is printed.
    [waits] Decided. Its slip waits: the printer does not answer.
   *[failed] Decided. Its slip was not printed: server or printer cannot be reached.
}
counter-slip-again = Print the slip again
counter-slip-paper = Slip on paper
# $count (count): 2
counter-slips-aside = { $count ->
    [one] One slip was not printed
   *[other] { $count } slips were not printed
}
# $heading: Accepted
# $code: K7F-3M
# $ago: 2 days ago
counter-slip-of = { $heading } { $code }, { $ago }
counter-slip-begun = The printer broke off. It may be on paper already.
counter-slips-print = Print now
counter-slips-leave = No longer wanted
