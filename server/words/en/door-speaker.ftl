### Door loudspeakers: what only this sort of part has or is called. What each is for, parking-sensor.ftl says.

part-door-speaker =
    .one = loudspeaker
    .many = loudspeakers
    .a = a loudspeaker
    .the = the loudspeaker
    .the-many = the loudspeakers
    .full-many = door loudspeakers
    .system = sound
    .shares-a-feed = pair of doors
    .unproven = Nothing heard
    .test = listening test
    .tests = listening tests
    .whose-test = the listening test
    .circuit = the wiring
    .wiring = connector, wires or the radio's output
    .channel = the output of the radio
    .control-plug = radio plug
    .inside-control = inside the radio

door-speaker-layout = 4 door loudspeakers
door-speaker-at-front-left = front left door
door-speaker-at-front-right = front right door
door-speaker-at-rear-left = rear left door
door-speaker-at-rear-right = rear right door
door-speaker-complaint-silent = One is silent
door-speaker-complaint-rattles = One rattles
door-speaker-complaint-crackles = Crackles over bumps

door-speaker-look-heading = Look at every door
door-speaker-look-text = A wet or clogged grille, a loose trim panel. Tap what you see.
door-speaker-found-dirt = wet or clogged grille
door-speaker-found-pushed-in = loose trim panel
door-speaker-photograph = The open door, before a hand touches its wires.

door-speaker-test-start = Play speech, tone in the middle. Set balance and fader to one door after the other.
door-speaker-test-start-again = Play speech, go from door to door, listen.
door-speaker-test-provoke = Open and close the door, knock on its panel, turn it up, listen again.
door-speaker-test-question = Did you hear the radio play?
door-speaker-test-asked = The radio played, and the fault …
door-speaker-test-ran = the test ran
door-speaker-test-not-proven = nothing proves that it ran
door-speaker-test-heard = radio heard
door-speaker-test-not-heard = nothing heard at all
door-speaker-test-was-not-heard = nothing was heard at all
door-speaker-test-whose-heard = in which the radio was heard

door-speaker-take-out = Radio and key off. Take the panel off, unplug it, undo its screws.
door-speaker-put-in = Screw each in crosswise. Then put its panel on.
door-speaker-plug = Push its plug on until it clicks. Let it touch no metal.
door-speaker-fit-foil = The moisture foil is back and sealed
door-speaker-fit-seal = Its seal lies flat
door-speaker-fit-screws = Its screws are tight
door-speaker-fit-lock = Its plug is on and locked

door-speaker-check-connector = look into the connector
door-speaker-check-connector-text = Contacts straight, none pushed back, no crust. Wiggle the wires: none may slide out.
door-speaker-check-connector-good = Clean and tight
door-speaker-check-connector-bad = Bent, loose, wet or corroded
door-speaker-check-wires = measure its wires
door-speaker-check-wires-text = Wanted: 2 Ω or less. Radio off, its plug off, loudspeaker off. Probes on both ends of each wire.
door-speaker-check-wires-good = 2 Ω or less along each
door-speaker-check-wires-bad = More, or open
door-speaker-check-hinge = look at the hinge
door-speaker-check-hinge-text = Open the door wide, pull the rubber sleeve back. Bend each wire while somebody listens.
door-speaker-check-hinge-good = Whole, nothing changes
door-speaker-check-hinge-bad = Broken, bare or crackling
door-speaker-check-output = exchange the outputs
door-speaker-check-output-text = Radio off. At its plug put this pair of wires on the output of a door that plays.
door-speaker-check-output-good = Still silent: the output is good
door-speaker-check-output-bad = Now it plays: the output is bad

door-speaker-blocked = a wet or clogged grille
door-speaker-blocked-for-customer = water or dirt in the grille
door-speaker-blocked-state = covered or wet
door-speaker-blocked-check = look at its grille and foil
door-speaker-clean = Brush the grille, dry it, listen from close by.
door-speaker-clean-and-look = Brush the grille, dry it, and look where water came in.

## Where nothing at all was heard: what is gone through.

door-speaker-unproven-volume = volume and source
door-speaker-unproven-volume-text = Turn it up slowly, take mute off, choose another source.
door-speaker-unproven-volume-good = It is turned up and plays
door-speaker-unproven-fuse = the fuses
door-speaker-unproven-fuse-text = Key off. Find those of radio and amplifier in the vehicle's data. Pull them and look.
door-speaker-unproven-fuse-good = They are whole
door-speaker-unproven-amplifier = the amplifier
door-speaker-unproven-amplifier-text = Find it in the vehicle's data, if it has one. Key off, push its plug home.
door-speaker-unproven-amplifier-good = Its plug is home, or there is none
door-speaker-unproven-rest = Volume, fuses and amplifier are fine. The radio itself is left.

door-speaker-walk-heading = Listen with everything closed
door-speaker-walk-text = Panels on, doors shut, low notes, turned up. Tap any that is dull or rattles.
door-speaker-walk-all = All four are clear
door-speaker-walk-again-heading = Listen again
# $positions: rear left door
door-speaker-walk-again-text = { CAP($positions) } is not clear with the panel on. Look at its screws and seal and at the clips, then listen once more.
door-speaker-walk-works = clear
door-speaker-walk-fails = not clear
door-speaker-walk-left = still to hear
door-speaker-walk-first = Listen at the others first.
door-speaker-walk-accepted = not clear when loud
door-speaker-walk-name = listening with the doors shut
# $positions: rear left door
door-speaker-walk-missed = { $positions } was not clear
door-speaker-walk-all-well = all were clear
door-speaker-walk-report-name = Listening with the doors shut
door-speaker-walk-report-all-well = every door was clear

door-speaker-caution-ground = Level ground, parking brake on, engine off.
door-speaker-caution-ground-short = Level, braked
door-speaker-caution-airbag = Leave the side airbag, its wires and its pressure sender in the door alone.
door-speaker-caution-airbag-short = Leave airbag parts
door-speaker-caution-key-off = Radio and key off before you unplug anything.
door-speaker-caution-key-off-short = Radio, key off to unplug
door-speaker-caution-window = Sheet metal is sharp, and the window may drop. Gloves on, hands clear.
door-speaker-caution-window-short = Sharp edges, window
door-speaker-caution-ears = Turn it down before you put an ear close.
door-speaker-caution-ears-short = Turn it down first
door-speaker-caution-local = Local rules and licensed practice come first.
door-speaker-caution-local-short = Local rules first
