"""A sort of part that nobody has: valves along a made-up rail, with no word of a parking sensor in it."""

from server.core.messages import message
from server.core.parts.layouts import layout
from server.core.parts.layouts import position
from server.core.parts.sort import Caution
from server.core.parts.sort import Handling
from server.core.parts.sort import Lamp
from server.core.parts.sort import Look
from server.core.parts.sort import Obstruction
from server.core.parts.sort import SelfTest
from server.core.parts.sort import Sort
from server.core.parts.sort import Walk
from tests.said import also_saying

# What `server/words/LANGUAGE/` has for a sort that there is.
also_saying("""
part-injector =
    .one = injector
    .many = injectors
    .a = an injector
    .the = the injector
    .the-many = the injectors
    .full-many = fuel injectors
    .system = engine
    .shares-a-feed = bank
    .control-plug = engine computer plug
    .inside-control = inside the engine computer
injector-layout = One bank, 4 injectors
injector-lamp-heading = Key on. Does the engine light come on?
injector-lamp-text = It has to.
injector-lamp-right = Yes
injector-look-heading = Look along the rail
injector-look-text = Wet fuel, a loose clamp.
injector-photograph = The clamp and the plug, before a hand touches them.
injector-test-start = Start the cut-out test on the tester and watch the engine speed.
injector-test-provoke = Drive it warm, and test again.
injector-test-question = Did the engine speed fall?
injector-test-ran = the test ran
injector-test-not-proven = nothing proves that it ran
injector-take-out = Pressure off, undo the clamp, draw it out.
injector-plug = Click the plug home.
injector-fit-seal = A new seal is on
injector-check-coil-text = Ohms across both pins.
injector-walk-heading = Drive it
injector-walk-text = Ten minutes, cold and warm.
injector-walk-all = It runs evenly
injector-walk-again-heading = Drive it again
injector-walk-works = even
injector-walk-fails = rough
injector-walk-left = still to feel
injector-walk-first = Feel the others first.
injector-caution-fuel = Fuel sprays: no flame, eyes covered.
injector-caution-key = Key off before you undo anything.
injector-put-in = Then press it home.
injector-check-coil-good = As its neighbours
injector-check-coil-bad = Open or short
injector-clean = Flush it with cleaner.
injector-clean-and-look = Flush it with cleaner, and look at its spray.
injector-walk-again-text = { CAP($positions) } ran rough. Look at its clamp, then drive again.
injector-check-coil = measure the coil
injector-found-wet = wet fuel
injector-test-not-heard = speed not seen to fall
injector-test-whose-heard = in which the speed fell
injector-blocked-for-customer = deposits
injector-blocked-state = clogged
injector-walk-accepted = rough when cold
injector-walk-name = drive check
injector-walk-missed = { $positions } ran rough
injector-walk-all-well = all ran evenly
injector-walk-report-name = Drive check
injector-walk-report-all-well = every cylinder ran evenly
""")


def _layouts():
    row = [position(f"rail-{n}", f"cylinder {n}", "left-bank", "front", 5) for n in (1, 2, 3, 4)]
    return [layout("row-4", message("injector-layout"), row)]


INJECTOR = Sort(
    identity="injector",
    layouts=_layouts,
    lamps=(
        Lamp("key_on", message("injector-lamp-heading"), message("injector-lamp-text"),
             (("as_it_should", message("injector-lamp-right")),)),
    ),
    look=Look(message("injector-look-heading"), message("injector-look-text"),
              (("dirt", message("injector-found-wet")),)),
    photograph=message("injector-photograph"),
    self_test=SelfTest(
        start=message("injector-test-start"),
        start_again=message("injector-test-start"),
        heard="speed seen to fall",
        not_heard=message("injector-test-not-heard"),
        was_not_heard="the speed was not seen to fall",
        whose_was_heard=message("injector-test-whose-heard"),
        provoke=message("injector-test-provoke"),
        question=message("injector-test-question"),
        asked=message("injector-test-question"),
        yes=message("injector-test-ran"),
        no=message("injector-test-not-proven"),
    ),
    handling=Handling(message("injector-take-out"), message("injector-put-in"), message("injector-plug")),
    fit_checks=({"id": "seal", "words": message("injector-fit-seal")},),
    circuit_checks=(
        {
            "id": "coil", "title": message("injector-check-coil"),
            "text": message("injector-check-coil-text"), "unit": "Ω",
            "good": message("injector-check-coil-good"), "bad": message("injector-check-coil-bad"),
        },
    ),
    obstruction=Obstruction(
        words="deposits or a stuck needle",
        for_customer=message("injector-blocked-for-customer"),
        state=message("injector-blocked-state"),
        clean=message("injector-clean"),
        clean_and_look=message("injector-clean-and-look"),
        check="check its spray",
        outside=False,
    ),
    walk=Walk(
        heading=message("injector-walk-heading"),
        text=message("injector-walk-text"),
        button=message("injector-walk-all"),
        again_heading=message("injector-walk-again-heading"),
        again_text="injector-walk-again-text",
        accepted=message("injector-walk-accepted"),
        name=message("injector-walk-name"),
        missed="injector-walk-missed",
        all_well=message("injector-walk-all-well"),
        report_name=message("injector-walk-report-name"),
        report_all_well=message("injector-walk-report-all-well"),
        works=message("injector-walk-works"),
        fails=message("injector-walk-fails"),
        left=message("injector-walk-left"),
        first=message("injector-walk-first"),
    ),
    cautions={
        "fuel": Caution("hot", message("injector-caution-fuel"), message("injector-caution-fuel")),
        "key": Caution("key_off", message("injector-caution-key"), message("injector-caution-key")),
    },
    at_step={"cautions": ("fuel",), "pull": ("key", "fuel"), "measure": ("key",)},
    caution_in_report="fuel",
    rates={"unit": 0.1},
    minutes={"pull": 4.0, "plug": 4.0, "fit": 4.0},
)  # fmt: skip
