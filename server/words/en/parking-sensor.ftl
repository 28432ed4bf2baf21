### Parking sensors: what only this sort of part has or is called.

# What it is called: PART($sort, form: "the-many") in a message picks a form. Each language has the forms it needs.
part-parking-sensor =
    .one = sensor
    .many = sensors
    .a = a sensor
    .the = the sensor
    .the-many = the sensors
    .full-many = parking sensors
    .system = parking aid
    .shares-a-feed = bumper
    .unproven = Not heard
    .test = self-test
    .tests = self-tests
    .whose-test = the control unit's self-test
    .circuit = the wiring
    .wiring = connector, wire or control-unit input
    .channel = the channel of the control unit
    .control-plug = control unit plug
    .inside-control = inside the control unit

## What the layouts are called.

parking-sensor-layout-rear-4 = Rear, 4 sensors
parking-sensor-layout-rear-6 = Rear, 6 sensors
parking-sensor-layout-front-4 = Front, 4 sensors
parking-sensor-layout-front-6 = Front, 6 sensors
parking-sensor-layout-both-8 = Front and rear, 8 sensors
parking-sensor-layout-both-12 = Front and rear, 12 sensors
parking-sensor-layout-around-12 = All round, 12 sensors

# What a customer mostly says.
parking-sensor-complaint-beeps = Beeps without reason
parking-sensor-complaint-silent = Stays silent
parking-sensor-complaint-lamp = Shows a fault

## The lamps, before the first test.

parking-sensor-key-on-heading = Key on: parking-aid lamp
parking-sensor-key-on-text = If it never comes on: the control unit may have no supply. Or the lamp or its button is not connected.
parking-sensor-key-on-right = Comes on, goes out
parking-sensor-key-on-stays = It stays on
parking-sensor-key-on-flashes = It flashes
parking-sensor-key-on-never = It never comes on
parking-sensor-lamps-not-sure = I can't tell
parking-sensor-reverse-heading = Engage reverse: parking aid
parking-sensor-reverse-text = A fault that is present now usually turns the system off.
parking-sensor-reverse-right = It is on
parking-sensor-reverse-wrong = It is off, or shows a fault

## The look from outside.

parking-sensor-look-heading = Look at every sensor
parking-sensor-look-text = Dirt, ice, thick paint, a sensor pushed in, a bumper repaired lately. Tap what you see.
parking-sensor-found-dirt = dirt
parking-sensor-found-ice = ice
parking-sensor-found-paint = thick paint
parking-sensor-found-pushed-in = pushed in
parking-sensor-found-repaired-bumper = bumper repaired
parking-sensor-photograph = Before a hand touches it.

## The self-test.

parking-sensor-test-start = Start it on the control unit. Listen for its sounder.
parking-sensor-test-start-again = Start it and listen.
parking-sensor-test-provoke = Move the wires by hand, spray water, warm it up, and test again.
parking-sensor-test-question = Did you hear its sounder?
parking-sensor-test-asked = Sounder heard, and the fault …
parking-sensor-test-ran = the test ran
parking-sensor-test-not-proven = nothing proves that it ran
parking-sensor-test-not-heard = sounder not heard
parking-sensor-test-whose-heard = whose sounder was heard

## How it is pulled and fitted.

parking-sensor-take-out = Key off, unplug it, release both catches.
parking-sensor-put-in = Push each in: both catches click.
parking-sensor-plug = Push it on straight until it clicks, then close its lock.
parking-sensor-fit-bore = The bore is clean and dry
parking-sensor-fit-right-way = The sensor faces the right way round
parking-sensor-fit-catches = Both catches are home
parking-sensor-fit-flush = It sits flush with the bumper
parking-sensor-fit-connector = The connector went on straight
parking-sensor-fit-lock = Its lock is closed

## The wiring checks: what is done, how, and what it may read.

parking-sensor-check-connector = look into the connector
parking-sensor-check-connector-text = Pins straight, none pushed back, no green or white crust, seal there, lock not broken. Wiggle the wires: none may slide out.
parking-sensor-check-connector-good = Clean and tight
parking-sensor-check-connector-bad = Bent, loose, wet or corroded
parking-sensor-check-ground = measure the ground wire
parking-sensor-check-ground-text = Wanted: 1 Ω or less. Key off, sensor unplugged. Probes on the ground pin of the plug and bare metal.
parking-sensor-check-ground-good = 1 Ω or less
parking-sensor-check-ground-bad = More than 1 Ω, or open
parking-sensor-check-supply = measure the supply
parking-sensor-check-supply-text = Wanted: within 0.5 V of a sensor that works. Engine off, parking brake on, key on, reverse in. Probes on the plug's supply and ground pins.
parking-sensor-check-supply-good = Within 0.5 V of the working one
parking-sensor-check-supply-bad = Lower, or nothing
parking-sensor-check-signal = measure the signal wire
parking-sensor-check-signal-text = Wanted: 2 Ω or less along the signal wire, OL from it to ground. Key off, the control unit's plug off as well. Probes on both ends, then on wire and ground.
parking-sensor-check-signal-good = 2 Ω or less along it, open to ground
parking-sensor-check-signal-bad = High along it, or a path to ground
parking-sensor-check-seated = look how the plug sits
parking-sensor-check-seated-text = Pushed home, lock closed and whole. Seal there, dry inside.
parking-sensor-check-seated-good = Home, locked, dry
parking-sensor-check-seated-bad = Loose, open, broken or wet
parking-sensor-check-pins = look at the pins
parking-sensor-check-pins-text = Key off, plug apart. Pins straight, none pushed back, no green or white crust. Pull at each wire: none may slide out.
parking-sensor-check-pins-good = Clean and tight
parking-sensor-check-pins-bad = Bent, pushed back or corroded
parking-sensor-check-ground-drop = measure the ground under load
parking-sensor-check-ground-drop-text = Wanted: 0.1 V or less. Sensor plugged in. Engine off, parking brake on, key on, reverse in. Red on the ground pin from behind, black on bare metal.
parking-sensor-check-ground-drop-good = 0.1 V or less
parking-sensor-check-ground-drop-bad = More than 0.1 V
parking-sensor-check-elsewhere = measure at a sensor that works
parking-sensor-check-elsewhere-text = Wanted: good readings there. Measure supply and ground at the plug of a sensor that works, as here.
parking-sensor-check-elsewhere-good = Both good there
parking-sensor-check-elsewhere-bad = Bad there too
parking-sensor-check-wiggle = move the plug during the test
parking-sensor-check-wiggle-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Move the sensor's plug and its wires.
parking-sensor-check-wiggle-good = Nothing changes
parking-sensor-check-wiggle-bad = The fault comes or goes
parking-sensor-check-wiggle-line = move the wire during the test
parking-sensor-check-wiggle-line-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Move the wire, hand by hand, to the control unit.
parking-sensor-check-wiggle-line-good = Nothing changes
parking-sensor-check-wiggle-line-bad = The fault comes or goes
parking-sensor-check-splice = look into the bumper plug
parking-sensor-check-splice-text = Key off, bumper plug apart. Pins straight, none pushed back, no crust, dry.
parking-sensor-check-splice-good = Clean, tight and dry
parking-sensor-check-splice-bad = Bent, loose, wet or corroded
parking-sensor-check-half = measure to the bumper plug
parking-sensor-check-half-text = Wanted: 2 Ω or less along each wire, open between them. Key off, both plugs apart. Probes on both ends. Then wire to wire, and to bare metal.
parking-sensor-check-half-good = 2 Ω or less along, open between
parking-sensor-check-half-bad = High along one, or a path between
parking-sensor-check-continuity = measure the signal wire
parking-sensor-check-continuity-text = Wanted: 2 Ω or less. Key off, the control unit's plug off as well. Probes on both ends of the signal wire.
parking-sensor-check-continuity-good = 2 Ω or less
parking-sensor-check-continuity-bad = More than 2 Ω, or open
parking-sensor-check-to-ground = measure the signal wire to ground
parking-sensor-check-to-ground-text = Wanted: OL. Key off, both plugs off. Probes on the signal wire and on bare metal.
parking-sensor-check-to-ground-good = Open
parking-sensor-check-to-ground-bad = Any path to ground
parking-sensor-check-to-supply = measure the signal wire for a voltage
parking-sensor-check-to-supply-text = Wanted: 0.5 V or less. Both plugs off, then key on, engine off. Probes on the signal wire and on bare metal.
parking-sensor-check-to-supply-good = 0.5 V or less
parking-sensor-check-to-supply-bad = More than 0.5 V
parking-sensor-check-neighbour = measure the signal wire to its neighbour
parking-sensor-check-neighbour-text = Wanted: OL. Key off, both plugs off. At the control unit's plug: probes on the signal wire and the one beside it.
parking-sensor-check-neighbour-good = Open
parking-sensor-check-neighbour-bad = Any path to its neighbour
parking-sensor-check-control-plug = look into the control unit's plug
parking-sensor-check-control-plug-text = Key off, plug apart. Pins straight, none pushed back, no crust, dry, lock whole.
parking-sensor-check-control-plug-good = Clean, tight and dry
parking-sensor-check-control-plug-bad = Bent, loose, wet or corroded
parking-sensor-check-wire = measure the wire alone
parking-sensor-check-wire-text = Wanted: 2 Ω or less along each wire, open between them. Key off, plugs at both ends apart. Probe from behind, never through the skin. Then wire to wire, and to bare metal.
parking-sensor-check-wire-good = 2 Ω or less along, open between
parking-sensor-check-wire-bad = High along one, or a path between
parking-sensor-check-loom = measure on from the bumper plug
parking-sensor-check-loom-text = Wanted: 2 Ω or less along the signal wire, open to ground. Key off, plugs at both ends apart. Probe from behind. Then wire and bare metal.
parking-sensor-check-loom-good = 2 Ω or less along it, open to ground
parking-sensor-check-loom-bad = High along it, or a path to ground
parking-sensor-check-wiggle-wire = move the wire alone during the test
parking-sensor-check-wiggle-wire-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Bend the wire to the bumper plug, touch neither plug.
parking-sensor-check-wiggle-wire-good = Nothing changes
parking-sensor-check-wiggle-wire-bad = The fault comes or goes
parking-sensor-check-warm-plug = warm the sensor's plug alone
parking-sensor-check-warm-plug-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Hot air on it for a minute, hand-warm at most.
parking-sensor-check-warm-plug-good = Nothing changes
parking-sensor-check-warm-plug-bad = The fault comes
parking-sensor-check-warm-splice = warm the bumper plug alone
parking-sensor-check-warm-splice-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Hot air on it for a minute, hand-warm at most.
parking-sensor-check-warm-splice-good = Nothing changes
parking-sensor-check-warm-splice-bad = The fault comes
parking-sensor-check-warm-control = warm the control unit's plug alone
parking-sensor-check-warm-control-text = Wanted: no change. Engine off, key on, parking brake on. Let the self-test repeat. Hot air on it for a minute, hand-warm at most.
parking-sensor-check-warm-control-good = Nothing changes
parking-sensor-check-warm-control-bad = The fault comes
parking-sensor-check-channels = exchange two channels
parking-sensor-check-channels-text = Only where its pins come out unharmed. Key off: exchange two signal pins in the control unit's plug. Run the self-test, then put them back.
parking-sensor-check-channels-good = The fault moved with the wires
parking-sensor-check-channels-bad = The fault stayed at its channel

## The circuit as a chain: its segments within a sentence, and what is to be done to each.

parking-sensor-segment-pins = the pins of the sensor's plug
parking-sensor-segment-connector = the sensor's plug
parking-sensor-segment-wire = the wire to the bumper plug
parking-sensor-segment-splice = the bumper plug
parking-sensor-segment-loom = the wire from the bumper plug to the control unit
parking-sensor-segment-control-plug = the control unit's plug
parking-sensor-segment-channel = the channel of the control unit
parking-sensor-segment-shared = the supply or ground that others share
parking-sensor-mend-pins = Clean the pins, or replace them. Push back in what was pushed out, until it catches.
parking-sensor-mend-connector = Push the plug home and close its lock. Replace it where lock, seal or housing is broken.
parking-sensor-mend-wire = Find where it is chafed, pinched or broken. Replace that piece, seal it and tie it clear of edges.
parking-sensor-mend-splice = Take the bumper plug apart, clean and dry it. Replace pins that are bent or corroded.
parking-sensor-mend-loom = Follow the wire to the control unit. Mend what is chafed or pinched, most often where it passes sheet metal.
parking-sensor-mend-control-plug = Key off. Clean the control unit's plug and push its pins home. Close its lock.
parking-sensor-mend-channel = The wires are sound. A new control unit, set up as its maker says, is what is left.
parking-sensor-mend-shared = Follow supply and ground to fuse, branch and ground point. Clean the ground point and tighten it.

## Listening: common practice, no source.

parking-sensor-listen-text = Key on, reverse in. Put an ear or a fingertip close: a working sensor ticks softly.
parking-sensor-listen-ticks = It ticks
parking-sensor-listen-silent = Nothing to hear

## Cleaning.

parking-sensor-clean = Wipe the face of the sensor and the edge around it.
parking-sensor-clean-and-look = Wipe the face of the sensor and the edge around it, and look at its aim.
parking-sensor-blocked-for-customer = dirt, ice, thick paint or a wrong aim
parking-sensor-blocked-state = covered or misaligned

## The check in use.

parking-sensor-walk-heading = Walk behind it with a pole
parking-sensor-walk-text = Engine off. Hold or stand a pole upright at each. Tap any that stays quiet.
parking-sensor-walk-all = All of them sound
parking-sensor-walk-again-heading = Listen again
# $positions: right outer and left outer
parking-sensor-walk-again-text = { CAP($positions) } stayed quiet although the self-test passes. Look at its aim and its seat, wipe it, then go round once more.
parking-sensor-walk-works = sounds
parking-sensor-walk-fails = quiet
parking-sensor-walk-left = still to hear
parking-sensor-walk-first = Listen at the others first.
# what is accepted of those that stayed quiet
parking-sensor-walk-accepted = quiet at the pole
parking-sensor-walk-name = walk-behind check
# $positions: right outer and left outer
parking-sensor-walk-missed = { $positions } stayed quiet
parking-sensor-walk-all-well = all sounded
parking-sensor-walk-report-name = Walk-behind check with a pole
parking-sensor-walk-report-all-well = every sensor sounded

## Cautions.

parking-sensor-caution-ground = Level ground, parking brake on, wheels chocked.
parking-sensor-caution-ground-short = Level, braked, chocked
parking-sensor-caution-reverse = Engine off and foot on the brake before you engage reverse.
parking-sensor-caution-reverse-short = Engine off, foot on the brake
parking-sensor-caution-listen = Engine off. Never a foot on the brake and a hand at the bumper at once.
parking-sensor-caution-listen-short = Engine off, nobody on the brake
parking-sensor-caution-key-off = Key off before you unplug anything.
parking-sensor-caution-key-off-short = Key off to unplug
parking-sensor-caution-stand = Nobody under a vehicle that stands on a jack alone.
parking-sensor-caution-stand-short = Never under a jack alone
parking-sensor-caution-hot = The exhaust near the bumper stays hot for a long time.
parking-sensor-caution-hot-short = Hot exhaust
parking-sensor-caution-airbag = Leave airbag wiring near the bumper alone.
parking-sensor-caution-airbag-short = Leave airbag wiring
parking-sensor-caution-battery = For long work with the key on, support the battery.
parking-sensor-caution-battery-short = Support the battery
parking-sensor-caution-aid = A parking aid is an aid. Look behind you as well.
parking-sensor-caution-aid-short = An aid only: look behind you
parking-sensor-caution-local = Local rules and licensed practice come first.
parking-sensor-caution-local-short = Local rules first

## What else keeps a good sensor from working; its sounder.

parking-sensor-blocked = dirt, ice, paint or aim
parking-sensor-blocked-check = check its aim
parking-sensor-test-heard = sounder heard
parking-sensor-test-was-not-heard = its sounder was not heard

## Positions.

parking-sensor-at-left-outer = left outer
parking-sensor-at-left-middle = left middle
parking-sensor-at-left-inner = left inner
parking-sensor-at-right-inner = right inner
parking-sensor-at-right-middle = right middle
parking-sensor-at-right-outer = right outer
parking-sensor-at-front-left-outer = front left outer
parking-sensor-at-front-left-middle = front left middle
parking-sensor-at-front-left-inner = front left inner
parking-sensor-at-front-right-inner = front right inner
parking-sensor-at-front-right-middle = front right middle
parking-sensor-at-front-right-outer = front right outer
parking-sensor-at-rear-left-outer = rear left outer
parking-sensor-at-rear-left-middle = rear left middle
parking-sensor-at-rear-left-inner = rear left inner
parking-sensor-at-rear-right-inner = rear right inner
parking-sensor-at-rear-right-middle = rear right middle
parking-sensor-at-rear-right-outer = rear right outer
parking-sensor-at-left-front-side = left front side
parking-sensor-at-left-rear-side = left rear side
parking-sensor-at-right-front-side = right front side
parking-sensor-at-right-rear-side = right rear side

## When the sounder of the self-test is never heard: what is gone through.

parking-sensor-sounder-fuse = the fuse
parking-sensor-sounder-fuse-text = Find the fuse of the parking aid in the vehicle's data. Pull it and look, or measure through it.
parking-sensor-sounder-fuse-good = The fuse is whole
parking-sensor-sounder-supply = supply and ground
parking-sensor-sounder-supply-text = Measure at the plug of the control unit, key on: battery voltage against its ground.
parking-sensor-sounder-supply-good = 11.5 V or more
parking-sensor-sounder-switch = the switch
parking-sensor-sounder-switch-text = Press the button of the parking aid once. Its lamp changes where it is connected.
parking-sensor-sounder-switch-good = The lamp changes
parking-sensor-sounder-reverse = the reverse signal
parking-sensor-sounder-reverse-text = Engage reverse, key on. Do the reversing lamps light?
parking-sensor-sounder-reverse-good = They light
parking-sensor-sounder-itself = the sounder
parking-sensor-sounder-itself-text = Find the sounder, push its plug home, and look for a break in its wires.
parking-sensor-sounder-itself-good = Plug and wires are fine
parking-sensor-sounder-start = how the test is started
parking-sensor-sounder-start-text = Read in the vehicle's data how its self-test is started. Radio off, volume up.
parking-sensor-sounder-start-good = I start it just so
parking-sensor-sounder-control = the control unit
parking-sensor-sounder-control-text = Pull the plug of the control unit, look at each pin, push it home until its lock clicks.
parking-sensor-sounder-control-good = Pins and lock are fine
parking-sensor-sounder-rest = Supply, switch and sounder are fine. The control unit itself is left, or a test that this vehicle runs without a sound.
