### The page *You and this phone*.

## The choice of language: as the phone has it, or a language by its own name.

you-language-heading = Language
# at most 24 characters
you-language-phone = As the phone has it
# $language: Español
you-language-lacks = { $language } is not on this phone yet. Choose it again with a network.
you-language-after = Change over to the new version first.

you-title = You and this phone

## What this phone is for.

# $role: counter
you-role = { $role ->
    [counter] at the parts counter
   *[bench] at the bench
}

## The page.

you-theme-phone = As the phone has it
you-theme-light = Light
you-theme-dark = Dark
you-file = Your file
you-send-now = Send now
you-take-in-other = Take in a file from another phone
you-name = Your name
you-name-note = Stands beside everything you record from now on.
you-use-name = Use this name
you-people = Who else uses this phone. Tap a name to go on as that person.
you-labels = Labels
you-print-labels = Print labels, see what became of them
you-lessons = What your jobs teach
you-theme = Light or dark
you-tone = When a code was read
you-tone-sound = Sound a short tone
you-voice = With both hands busy
you-voice-say = Say the steps aloud
you-voice-note = Steps and stops, in a voice that is on this phone. Nothing leaves it.
you-voice-none = This phone has no voice of its own for this language. Add one in its settings.
you-voice-like-this = Each step is said like this.
you-about = About this phone
you-id = Its id
you-version = Version
you-version-unknown = not known yet
you-exchange = Last exchange
you-exchange-none = none yet

## What this phone was not paired for.

you-at-bench = Done at the bench
you-is-at-counter = This phone is at the parts counter
you-at-bench-note = Jobs are done and labels are made on phones at the bench.
you-at-bench-read = What is on record of this one can be read here.
you-read-trail = Read its trail
you-to-counter = To the counter
you-its-history = Its history
you-at-counter = Decided at the counter
you-is-at-bench = This phone is at the bench
you-at-counter-note = Returns are decided on phones that are paired for the parts counter.

## What waits, and what was not taken.

you-not-sent = Not sent yet
you-what-waits = What waits
you-unknown-job = A job that is not on this phone
you-no-job = Outside of a job
# $count (count): 12
you-later-entries = And { $count } later entries.
# $what: 3 entries and 2 pictures
you-saved-here = { $what }, saved on this phone
you-entry-not-taken = Not taken by the server
# $job: Estate car
# $moment: 28 Nov, 09:05
# $why: job: found nothing, wanted an id
you-entry-of = An entry of { $job }, { $moment }: { $why }
you-this-phone = this phone
# $count (count): 3
you-more-wait = { $count } more wait after it.
you-entry-not-taken-do = It stays on record here. Make a file of what waits, and show this to whoever looks after the server.
you-picture-not-sent = A picture is not sent
# $job: Estate car
# $moment: 28 Nov, 09:05
# $why: it was damaged on this phone.
you-picture-of = { $job }, { $moment }: { $why }
you-a-picture = A picture
you-lost = Pictures missing on the server
# $count (count): 2
you-lost-do = { $count ->
    [one] The server's copy of { $count } picture is gone or damaged.
   *[other] The server's copies of { $count } pictures are gone or damaged.
} It asks every phone. One that still has them sends them by itself.
you-picture-not-sent-alt = The picture that is not sent
you-picture-again = Try to send it again
you-picture-leave = Leave it on this phone
you-no-network = No network in sight?
you-no-network-do = Make a file of what waits and carry it to another phone that is paired, or to the server. Everything stays here as well until the server has it.
you-make-afresh = Make it afresh
you-make-file = Make a file of what waits
# $what: 3 entries and 2 pictures
# $size: 1.4 MB
you-file-holds = { $what }, { $size }:
you-share-file = Share the file
you-other-file = A file from another phone
you-other-file-note = What another phone could not send is on record here at once, and goes to the server with yours.
you-reading-file = Reading the file
you-take-in = Take in a file

## Pairing this phone.

# $role: counter
# $host: yard.example
you-will-be = It will be a phone { $role ->
    [counter] at the parts counter
   *[bench] at the bench
}. From then on it sends what you record to { $host }, and shows what the others recorded.
you-not-paired = Not paired
you-pair-name-note = Stands beside everything you record on this phone.
you-pair-name-wanted = Say who uses this phone.
you-not-yet = Not yet
# $what: 3 entries
you-send-first = { $what } must be sent first
# $was: bench
# $role: counter
you-send-first-note = This phone was { $was ->
    [counter] at the parts counter
   *[bench] at the bench
} when they were recorded. One { $role ->
    [counter] at the parts counter
   *[bench] at the bench
} may not send them. Send them, or pair it { $was ->
    [counter] at the parts counter
   *[bench] at the bench
} first, then open this link again.
you-install-first = First the home screen, then pair it there
you-install-first-1 = Copy this link with the button below.
you-install-first-2 = Put Swaptrail on the home screen: in Safari, the square with an arrow up, then “Add to Home Screen”.
you-show-me = Show me
you-install-first-3 = Open it there, tap “Pair this phone”, and paste the link.
you-copy-link = Copy the link
you-pair-page = Pair this page
you-link-copied = The link is copied.
you-no-copy-below = This browser does not copy. Hold your finger on the link below and copy it.
you-scan-link = Scan the pairing link
you-scan-aim = The code on the other screen
you-paste = Paste the link
you-link-where = Its code stands on the screen of a paired phone, under “You and this phone”, or where the server runs.
you-link = Pairing link
you-link-note = Or paste the link here, if it was copied.
you-scan-code = Scan the code
you-use-link = Use this link
# $example: yard.example/pair#…
you-no-link = This is no pairing link. One looks like { $example } with letters after #.
# $host: other.example
# $own: yard.example
you-link-elsewhere = This link is for { $host }, but this app belongs to { $own }. Open the link in the browser, or make one for this app.
you-link-cut = This link is not complete: the part after # is missing. Copy the whole link.

## Pairing another phone.

you-unpaired-note = A paired phone makes a link for it; the server printed one when it was first started.
you-pair-another = Pair another phone
you-counter-too = It will be at the parts counter too.
you-fresh-link = Make a fresh link
you-make-link = Make a pairing link
you-see-phones = See the paired phones
you-other-for = What the other phone is for
you-no-copy = This browser does not copy. Hold your finger on the link.
you-link-qr = The pairing link as a QR code
# $role: counter
# $moment: 28 Nov, 09:05
you-link-scan = Scan it with the camera of the other phone: it will be { $role ->
    [counter] at the parts counter
   *[bench] at the bench
}. It works once, until { $moment }.

## The paired phones.

you-phones = Paired phones
you-phones-lead = Put a phone out that was lost or that someone has taken along. What it has not sent stays on it.
you-look-again = Look again
you-no-name = No name
# $role: counter
you-role-this = { $role ->
    [counter] at the parts counter
   *[bench] at the bench
}, this phone
# $ago: 3 hours ago
# $day: 28 Nov
you-seen = last seen { $ago }, paired { $day }
you-put-out = Put out
# $phone: Sam
you-put-out-ask = { $phone } can then send and see nothing until it is paired again.
you-put-out-now = Put it out now
you-brought = Brought, not proven
you-brought-lead = A phone passed these on, and nothing proves which phone recorded them. They count for nothing yet. If this is your work, accept it; else set it aside, then it stays on record.
# $name: Mara
# $moment: 28 Nov, 10:31
you-brought-by = Brought by { $name }, { $moment }
# $entries (count): 12
# $name: Jo
# $first: 27 Nov, 9:00
# $last: 28 Nov, 10:31
you-brought-of = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} in the name of { $name }, { $first } to { $last }.
you-brought-accept = Accept
you-brought-set-aside = Set aside
# $name: Mara
# $entries (count): 12
# $devices (count): 3
you-brought-all = { $name } brought { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} of { $devices ->
    [one] { $devices } phone
   *[other] { $devices } phones
}.
you-brought-all-aside = Set all of them aside
you-set-aside = Set aside
you-set-aside-lead = These count for nothing and stay on record. What was set aside by mistake, take back.
# $entries (count): 12
# $name: Mara
# $moment: 28 Nov, 10:31
you-set-aside-of = { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
} that { $name } brought, set aside { $moment }
you-set-aside-back = Take back
you-came-and-went = Who came and went
you-failed-note = Whoever was not let in had no good link and saw nothing. If it was none of you, ask who uses your network.
# $moment: 28 Nov, 09:05
# $address: 192.168.1.20
you-line-from = { $moment }, from { $address }
you-nameless = A phone without a name
# $name: Sam
# $role: counter
you-let-in = { $name } was let in { $role ->
    [counter] at the parts counter
   [bench] at the bench
   *[unknown] { "" }
}
# $name: Sam
you-was-put-out = { $name } was put out
# $name: Sam
# $by: Alex
you-was-put-out-by = { $name } was put out by { $by }
you-someone-failed = Someone was not let in
# $name: Sam
you-name-failed = Someone who said to be { $name } was not let in
you-keeps-installed = on the home screen
you-keeps-page = only a page in the browser
you-keeps-promised = its browser keeps the data
you-keeps-may-remove = its browser may remove what is not sent
