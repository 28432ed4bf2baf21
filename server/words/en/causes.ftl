### Causes of a fault, as parts of a sentence, and what to do about them.

# $sort: parking-sensor
# $unit: K7F-3M
# $count (count): 1
causes-unit = { $count ->
    [one] { PART($sort) }
   *[other] { PART($sort, form: "many") }
} { $unit }
# $sort: parking-sensor
# $position: right outer
causes-circuit = { PART($sort, form: "circuit") } at { $position }
# $sort: parking-sensor
# $position: right outer
causes-circuit-again = { PART($sort, form: "circuit") } at { $position } (after the repair)
# $blocked: dirt, ice, paint or aim
# $position: right outer
causes-blocked = { $blocked } at { $position }
# $sort: parking-sensor
# $group: rear
causes-feed = the supply or ground of the { $group } { PART($sort, form: "many") }
# $sort: parking-sensor
# $group: rear
causes-feed-again = the supply or ground of the { $group } { PART($sort, form: "many") } (after the repair)
causes-control = the control unit
causes-control-again = the control unit (after the repair)
# $sort: parking-sensor
causes-new = the new { PART($sort) }
# $group: rear
causes-group = { $group ->
    [rear] rear
    [front] front
    [left] left
   *[right] right
}
# $cause: sensor K7F-3M
causes-fix-unit = Replace { $cause }.
# $sort: parking-sensor
# $position: right outer
causes-fix-circuit = Look for it in the { PART($sort, form: "wiring") } of { $position }.
# $position: right outer
# $check: check its aim
causes-fix-blocked = Clean { $position } and { $check }.
# $sort: parking-sensor
# $group: rear
causes-fix-feed = Measure the supply and ground that the { $group } { PART($sort, form: "many") } share.
# $sort: parking-sensor
# $segment: connector
causes-segment = { $segment ->
    [pins] { PART($sort) } pins
    [connector] { PART($sort) } plug
    [wire] wire
    [loom] wire to control unit
    [splice] plug on the way
    [control-plug] { PART($sort, form: "control-plug") }
    [channel] { PART($sort, form: "inside-control") }
    [supply] supply or fuse
    [ground] ground point
    [spark-plug] spark plug
    [ring] ring that it reads
    [hinge] wires in the door hinge
   *[other] { $segment }
}
causes-fix-control = Check the control unit's own supply, ground and plug before you suspect the unit itself.
