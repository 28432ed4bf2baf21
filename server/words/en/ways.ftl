### What can be done at any step instead of it: record a repair, let the job rest, end it unrepaired.

ways-link = Other ways
ways-link-note = Record a repair, pause, hand over, close without a repair
# $job: Blue estate
ways-title = Other ways: { $job }
ways-heading = What instead?

## A job that rests.

ways-pause = Pause the job
ways-pause-text = Nothing is in your hand. The list shows what it waits for.
# $why: part
ways-pause-why = { $why ->
    [part] Waiting for a part
    [customer] Waiting for the customer
    [weather] Waiting for weather or light
    [help] Waiting for help or a tool
   *[other] Something else
}
# $why: part
ways-paused-title = { $why ->
    [part] Waiting for a part
    [customer] Waiting for the customer
    [weather] Waiting for weather or light
    [help] Waiting for help or a tool
   *[other] The job rests
}
# $part: PS-1
ways-order = To order: { $part }.
ways-paused-text = All is in its place. Any work on the job ends the pause.
# $units: K7F-3M and D4H-PX
# $count (count): 2
ways-in-hand = { $count ->
    [one] { CAP($units) } is in your hand: keep it where nobody mixes it up.
   *[other] { CAP($units) } are in your hand: keep them where nobody mixes them up.
}
# $position: right outer
ways-plug-off = The plug at { $position } is off.
# $positions: right outer and left outer
# $count (count): 2
ways-hanging = { $count ->
    [one] The one at { $positions } hangs on its wire. Push it home before anyone drives.
   *[other] Those at { $positions } hang on their wires. Push them home before anyone drives.
}
ways-go-on = Go on
ways-part = Part number to order, if you know it
ways-note = A word for the record
ways-note-wanted = Say why in a word.
ways-pause-save = Pause the job

## A repair at any time.

ways-repair = I have repaired something
ways-repair-text = What was it? A test comes next.
ways-repair-save = Record the repair

## Listening at any step.

ways-listen = Listen at the sensors
ways-listen-none = Tap what you hear, at each that you tried.
ways-listen-save = Save what you heard
ways-hear = Let the phone listen
ways-hear-stop = Stop listening
ways-hear-held = The phone holds the sound back. Tap below to let it through.
ways-hear-go = Listen now
ways-hear-listening = Listening. Hold it close and still.
# $count (count): 14
ways-hear-ticks = Ticks { $count } times a second
ways-hear-nothing = Nothing regular
ways-hear-yours = It is your word that counts: tap it above.
ways-hear-altered = This phone smooths its sound, so faint ticks may be lost. Trust your ear.
ways-hear-not-allowed = The microphone is not allowed. Allow it in the browser’s settings for this page, or listen by ear.
ways-hear-none = This device has no microphone. Listen by ear.
ways-hear-busy = The microphone gives no sound; another app may hold it. Close that, or listen by ear.
ways-hear-not-offered = This browser lets no page listen here. Listen by ear.

## The end without a repair.

ways-close = Close without a repair
ways-close-text = Why does it end here? The record keeps the reason.
# $positions: right outer and right inner
ways-pushed-home = Pushed home and checked: { $positions }
# $why: customer
ways-close-why = { $why ->
    [customer] The customer stops here
    [no_part] The part is not to be had
    [elsewhere] It is repaired elsewhere
    [not_worth] It is not worth it
    [not_found] The cause was not found
   *[other] Another reason
}
ways-close-first = Settle this first
ways-close-save = Close without a repair

## The job goes to another person, or to another phone.

ways-hand = Hand it over
ways-hand-text = All is in its place. Who works on from here?
ways-hand-people = Who works on
ways-hand-other = Somebody else
ways-hand-name = Name
ways-hand-name-wanted = Say who works on.
ways-hand-save = Hand it over
# $to: Ben
ways-handed = Handed over to { $to }
ways-handed-sent = It is in the list of every phone of the yard after their next exchange.
# $to: Ben
ways-handed-scan = { $to } can also scan this with the phone's camera: it opens the job.
ways-handed-qr = QR code that opens this job
ways-handed-no-phone = Their phone is new here: let it in
ways-handed-file = Make a file for the other phone
ways-handed-file-note = This phone has no server. The other one takes the job in from a file.
# $to: Ben
ways-handed-to = { $to } works on from here.
# $by: Mara
ways-handed-you = { $by } handed this to you.
# $to: Ben
ways-handed-list = with { $to }
ways-handed-mine = handed to you
