### Wheel-speed senders: what only this sort of part has or is called. What each is for, parking-sensor.ftl says.

part-wheel-sender =
    .one = sender
    .many = senders
    .a = a sender
    .the = the sender
    .the-many = the senders
    .full-many = wheel-speed senders
    .system = brake control
    .shares-a-feed = axle
    .unproven = No speeds shown
    .test = rolling test
    .tests = rolling tests
    .whose-test = the rolling test
    .circuit = the wiring or ring
    .wiring = connector, wire, control-unit channel or ring
    .channel = the channel of the control unit
    .control-plug = control unit plug
    .inside-control = inside the control unit

wheel-sender-layout = 4 wheel-speed senders
wheel-sender-at-front-left = front left wheel
wheel-sender-at-front-right = front right wheel
wheel-sender-at-rear-left = rear left wheel
wheel-sender-at-rear-right = rear right wheel
wheel-sender-complaint-lamp = Brake lamp on
wheel-sender-complaint-pulses = Pedal pulses
wheel-sender-complaint-speed = Speedometer jumps

wheel-sender-key-on-heading = Key on: anti-lock lamp
wheel-sender-key-on-text = It lights with the key and goes out after a few seconds.
wheel-sender-key-on-right = Comes on, goes out
wheel-sender-key-on-stays = It stays on
wheel-sender-key-on-never = It never comes on
wheel-sender-key-on-not-sure = I can't tell

wheel-sender-look-heading = Look behind every wheel
wheel-sender-look-text = Dirt on a sender, a loose one, a wire that rubs. Tap what you see.
wheel-sender-found-dirt = iron dust or dirt
wheel-sender-found-pushed-in = loose, or its wire rubs
wheel-sender-photograph = Sender and wire, before a hand touches them.

wheel-sender-test-start = Show all four speeds on the tester. Roll straight at walking pace for 20 m.
wheel-sender-test-start-again = Roll straight and read the four speeds.
wheel-sender-test-provoke = Turn the steering from lock to lock, move the wire, roll over a bump, test again.
wheel-sender-test-question = Did the tester show speeds?
wheel-sender-test-asked = Speeds were shown, and the fault …
wheel-sender-test-ran = the test ran
wheel-sender-test-not-proven = nothing proves that it ran
wheel-sender-test-heard = speeds shown
wheel-sender-test-not-heard = no speeds shown
wheel-sender-test-was-not-heard = it showed no speeds
wheel-sender-test-whose-heard = that showed speeds

wheel-sender-take-out = Key off. Unplug it, undo its bolt, draw it out straight, without levering.
wheel-sender-put-in = Push each in by hand. Tighten its bolt, clip its wire.
wheel-sender-plug = Seat it, push its plug on until it clicks.
wheel-sender-fit-seat = Its seat is clean of rust
wheel-sender-fit-tip = Its tip is whole and clean
wheel-sender-fit-bolt = It sits flat, its bolt is tight
wheel-sender-fit-wire = Its wire is in every clip
wheel-sender-fit-lock = Its plug is on and locked

wheel-sender-check-connector = look into the connector
wheel-sender-check-connector-text = Pins straight, none pushed back, no crust, seal there. Wiggle the wires: none may slide out.
wheel-sender-check-connector-good = Clean and tight
wheel-sender-check-connector-bad = Bent, loose, wet or corroded
wheel-sender-check-ring = look at the ring
wheel-sender-check-ring-text = Wheel up on a stand. Turn it by hand, look at the ring that the sender reads.
wheel-sender-check-ring-good = Whole, clean, runs true
wheel-sender-check-ring-bad = Cracked, rusted or loose
wheel-sender-check-supply = measure the supply
wheel-sender-check-supply-text = Wanted: within 0.5 V of a wheel that works. Sender unplugged, key on. Probes on the two pins of its plug.
wheel-sender-check-supply-good = Within 0.5 V of the working one
wheel-sender-check-supply-bad = Lower, or nothing
wheel-sender-check-signal = measure its wires
wheel-sender-check-signal-text = Wanted: 2 Ω or less. Key off, the control unit's plug off as well. Probes on both ends of each wire.
wheel-sender-check-signal-good = 2 Ω or less along each
wheel-sender-check-signal-bad = More, or open

wheel-sender-blocked = iron dust or dirt
wheel-sender-blocked-for-customer = iron dust or dirt between sender and ring
wheel-sender-blocked-state = covered in dirt
wheel-sender-blocked-check = look at its ring
wheel-sender-clean = Wipe the tip of the sender and the ring that it reads.
wheel-sender-clean-and-look = Wipe the tip of the sender and its ring, and look at the ring.

## Where no speeds were shown: what is gone through.

wheel-sender-unproven-tester = the tester
wheel-sender-unproven-tester-text = Push its plug home, key on. Does it find the control unit of the brakes?
wheel-sender-unproven-tester-good = It does
wheel-sender-unproven-speeds = where speeds are shown
wheel-sender-unproven-speeds-text = Read in the vehicle's data what they are called. Many show none below walking pace.
wheel-sender-unproven-speeds-good = I look there, and it rolls
wheel-sender-unproven-fuse = the fuse of the brake control
wheel-sender-unproven-fuse-text = Key off. Find the fuse in the vehicle's data. Pull it and look, or measure through it.
wheel-sender-unproven-fuse-good = The fuse is whole
wheel-sender-unproven-rest = Tester and fuse are fine. The control unit is left, or a vehicle that shows no speeds.

wheel-sender-walk-heading = Drive it
wheel-sender-walk-text = A short drive with turns and one firm stop. Tap any wheel whose speed drops out.
wheel-sender-walk-all = All four keep step
wheel-sender-walk-again-heading = Drive it again
# $positions: rear left wheel
wheel-sender-walk-again-text = { CAP($positions) } dropped out on the road although the rolling test is clean. Look at its wire and ring, then drive once more.
wheel-sender-walk-works = keeps step
wheel-sender-walk-fails = drops out
wheel-sender-walk-left = still to read
wheel-sender-walk-first = Read the others first.
wheel-sender-walk-accepted = drops out on the road
wheel-sender-walk-name = drive
# $positions: rear left wheel
wheel-sender-walk-missed = { $positions } dropped out
wheel-sender-walk-all-well = all kept step
wheel-sender-walk-report-name = Drive with turns and a stop
wheel-sender-walk-report-all-well = every wheel kept step

wheel-sender-caution-ground = Level ground, the other wheels chocked.
wheel-sender-caution-ground-short = Level, chocked
wheel-sender-caution-stand = Nobody under a vehicle that stands on a jack alone. Use stands.
wheel-sender-caution-stand-short = On stands, never a jack alone
wheel-sender-caution-brakes = Brakes stay hot after a drive. Do not breathe their dust.
wheel-sender-caution-brakes-short = Hot brakes, dust
wheel-sender-caution-key-off = Key off before you unplug anything.
wheel-sender-caution-key-off-short = Key off to unplug
wheel-sender-caution-roll = One person drives, another reads. Nobody before or behind the vehicle.
wheel-sender-caution-roll-short = Two people, way clear
wheel-sender-caution-braking = With its lamp on, wheels may lock when braking. Drive gently.
wheel-sender-caution-braking-short = Wheels may lock
wheel-sender-caution-local = Local rules and licensed practice come first.
wheel-sender-caution-local-short = Local rules first
