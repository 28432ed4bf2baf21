### Ignition coils: what only this sort of part has or is called. What each is for, parking-sensor.ftl says.

part-ignition-coil =
    .one = coil
    .many = coils
    .a = a coil
    .the = the coil
    .the-many = the coils
    .full-many = ignition coils
    .system = ignition
    .shares-a-feed = engine
    .unproven = Counters stood still
    .test = misfire count
    .tests = misfire counts
    .whose-test = the misfire count
    .circuit = the wiring or spark plug
    .wiring = connector, wire, control-unit channel or spark plug
    .channel = the channel of the control unit
    .control-plug = control unit plug
    .inside-control = inside the control unit

ignition-coil-layout = 4 ignition coils
ignition-coil-at-1 = cylinder 1
ignition-coil-at-2 = cylinder 2
ignition-coil-at-3 = cylinder 3
ignition-coil-at-4 = cylinder 4
ignition-coil-complaint-shakes = Shakes at idle
ignition-coil-complaint-lamp = Engine lamp on
ignition-coil-complaint-power = Lacks power

ignition-coil-key-on-heading = Key on: engine lamp
ignition-coil-key-on-text = It lights with the key and goes out once the engine runs.
ignition-coil-key-on-right = Comes on, goes out
ignition-coil-key-on-stays = It stays on
ignition-coil-key-on-flashes = It flashes while the engine runs
ignition-coil-key-on-never = It never comes on
ignition-coil-key-on-not-sure = I can't tell

ignition-coil-look-heading = Look at every coil
ignition-coil-look-text = Oil or water in a well, a coil not pushed home. Tap what you see.
ignition-coil-found-dirt = oil or water in the well
ignition-coil-found-pushed-in = not pushed home
ignition-coil-photograph = Coil and plug, before a hand touches them.

ignition-coil-test-start = Clear the misfire counters. Run the engine two minutes, then read each cylinder.
ignition-coil-test-start-again = Clear the counters, run the engine, read them.
ignition-coil-test-provoke = Get it hot, pull hard from low speed, and count again.
ignition-coil-test-question = Did the counters run?
ignition-coil-test-asked = The counters ran, and the misfire …
ignition-coil-test-ran = the test ran
ignition-coil-test-not-proven = nothing proves that it ran
ignition-coil-test-heard = counters ran
ignition-coil-test-not-heard = counters stood still
ignition-coil-test-was-not-heard = its counters stood still
ignition-coil-test-whose-heard = whose counters ran

ignition-coil-take-out = Key off. Unplug it, undo its bolt, turn it, pull it straight up.
ignition-coil-put-in = Push each straight down onto its spark plug. Tighten its bolt.
ignition-coil-plug = Seat it, push its plug on until it clicks.
ignition-coil-fit-well = The well is dry and free of oil
ignition-coil-fit-boot = Its boot is whole, without white tracks
ignition-coil-fit-seated = It sits on its spark plug
ignition-coil-fit-bolt = Its bolt is tight
ignition-coil-fit-lock = Its plug is on and locked

ignition-coil-check-connector = look into the connector
ignition-coil-check-connector-text = Pins straight, none pushed back, no crust, lock whole. Wiggle the wires: none may slide out.
ignition-coil-check-connector-good = Clean and tight
ignition-coil-check-connector-bad = Bent, loose, wet or corroded
ignition-coil-check-spark-plug = look at the spark plug
ignition-coil-check-spark-plug-text = Engine cold. Take it out. Look for cracks, a worn gap, oil, and compare with a neighbour.
ignition-coil-check-spark-plug-good = Whole, dry, like its neighbour
ignition-coil-check-spark-plug-bad = Cracked, worn or wet
ignition-coil-check-supply = measure the supply
ignition-coil-check-supply-text = Wanted: within 0.5 V of a coil that works. Coil unplugged, key on, engine off. Probes on the plug's supply and ground pins.
ignition-coil-check-supply-good = Within 0.5 V of the working one
ignition-coil-check-supply-bad = Lower, or nothing
ignition-coil-check-ground = measure the ground wire
ignition-coil-check-ground-text = Wanted: 1 Ω or less. Key off, coil unplugged. Probes on the ground pin of the plug and bare metal of the engine.
ignition-coil-check-ground-good = 1 Ω or less
ignition-coil-check-ground-bad = More than 1 Ω, or open

ignition-coil-blocked = oil or water in the well
ignition-coil-blocked-for-customer = oil or water in the well of the spark plug
ignition-coil-blocked-state = wet
ignition-coil-blocked-check = find where it comes in
ignition-coil-clean = Engine cold. Pull the coil, dry its well and its boot.
ignition-coil-clean-and-look = Engine cold. Pull the coil, dry its well and its boot, and find the leak.

## Where nothing proves that the counters ran: what is gone through.

ignition-coil-unproven-tester = the tester
ignition-coil-unproven-tester-text = Push its plug home, key on. Does it find the engine's control unit?
ignition-coil-unproven-tester-good = It does
ignition-coil-unproven-counters = how they are read
ignition-coil-unproven-counters-text = Read in the vehicle's data where misfires are counted, and at which engine speed.
ignition-coil-unproven-counters-good = I read them just so
ignition-coil-unproven-fuse = the fuse of the ignition
ignition-coil-unproven-fuse-text = Key off. Find the fuse in the vehicle's data. Pull it and look, or measure through it.
ignition-coil-unproven-fuse-good = The fuse is whole
ignition-coil-unproven-rest = Tester and fuse are fine. The control unit is left, or a vehicle that counts no misfires.

ignition-coil-walk-heading = Drive it
ignition-coil-walk-text = Ten minutes, warm and under load. Read the counters once more. Tap any that counted.
ignition-coil-walk-all = None misfired
ignition-coil-walk-again-heading = Drive it again
# $positions: cylinder 2
ignition-coil-walk-again-text = { CAP($positions) } misfired on the road although the count was clean. Look at its boot and plug, then drive once more.
ignition-coil-walk-works = even
ignition-coil-walk-fails = misfired
ignition-coil-walk-left = still to read
ignition-coil-walk-first = Read the others first.
ignition-coil-walk-accepted = misfires on the road
ignition-coil-walk-name = drive
# $positions: cylinder 2
ignition-coil-walk-missed = { $positions } misfired
ignition-coil-walk-all-well = none misfired
ignition-coil-walk-report-name = Drive under load
ignition-coil-walk-report-all-well = no cylinder misfired

ignition-coil-caution-voltage = High voltage: never touch a coil, its plug or a lead while the engine turns.
ignition-coil-caution-voltage-short = High voltage: hands off
ignition-coil-caution-hot = Engine, exhaust and coolant stay hot for a long time. Work on it cold.
ignition-coil-caution-hot-short = Hot parts
ignition-coil-caution-belts = Hair, sleeves and hands away from belts and fans.
ignition-coil-caution-belts-short = Away from belts and fans
ignition-coil-caution-brake = Parking brake on, out of gear, exhaust gas led into the open.
ignition-coil-caution-brake-short = Braked, out of gear, open air
ignition-coil-caution-key-off = Key off before you unplug anything.
ignition-coil-caution-key-off-short = Key off to unplug
ignition-coil-caution-catalyst = Keep runs with a misfire short: unburnt fuel overheats the catalyst.
ignition-coil-caution-catalyst-short = Short runs: catalyst
ignition-coil-caution-road = Drive where it is safe. Let somebody else read the counters.
ignition-coil-caution-road-short = A second person reads
ignition-coil-caution-local = Local rules and licensed practice come first.
ignition-coil-caution-local-short = Local rules first
