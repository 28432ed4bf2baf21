"""A sort of part that nobody has: valves along a made-up rail, with no word of a parking sensor in it."""

from fluent.runtime import FluentResource

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
from server.words.speech import bundle_of

WORDS = """
part-injector =
    .one = injector
    .many = injectors
    .a = an injector
    .the = the injector
    .the-many = the injectors
    .full-many = fuel injectors
    .system = engine
    .shares-a-feed = bank
"""
bundle_of("en").add_resource(FluentResource(WORDS))


def _layouts():
    row = [position(f"rail-{n}", f"cylinder {n}", "left bank", "front", 5) for n in (1, 2, 3, 4)]
    return [layout("row-4", "One bank, 4 injectors", row)]


INJECTOR = Sort(
    identity="injector",
    unit="injector",
    units="injectors",
    full_names="fuel injectors",
    system="engine",
    shares_a_feed="bank",
    layouts=_layouts,
    lamps=(
        Lamp("key_on", "Key on. Does the engine light come on?", "It has to.", (("as_it_should", "Yes"),)),
    ),
    look=Look("Look along the rail", "Wet fuel, a loose clamp.", (("dirt", "wet fuel"),)),
    photograph="The clamp and the plug, before a hand touches them.",
    self_test=SelfTest(
        start="Start the cut-out test on the tester and watch the engine speed.",
        heard="speed seen to fall",
        not_heard="speed not seen to fall",
        was_not_heard="the speed was not seen to fall",
        whose_was_heard="in which the speed fell",
        provoke="Drive it warm, and test again.",
        question="Did the engine speed fall?",
        yes="the test ran",
        no="nothing proves that it ran",
    ),
    handling=Handling("Pressure off, undo the clamp, draw it out.", "press it home", "Click the plug home."),
    fit_checks=({"id": "seal", "words": "A new seal is on"},),
    circuit_checks=(
        {
            "id": "coil", "title": "Measure the coil", "text": "Ohms across both pins.", "unit": "Ω",
            "good": "as its neighbours", "bad": "open or short",
        },
    ),
    obstruction=Obstruction(
        words="deposits or a stuck needle",
        for_customer="deposits",
        state="clogged",
        clean="Flush it with cleaner",
        look_at="look at its spray",
        check="check its spray",
    ),
    walk=Walk(
        heading="Drive it",
        text="Ten minutes, cold and warm.",
        button="It runs evenly",
        again_heading="Drive it again",
        again_text="{} ran rough. Look at its clamp, then drive again.",
        accepted="rough when cold",
        name="drive check",
        missed="{} ran rough",
        all_well="all ran evenly",
        report_name="Drive check",
        report_all_well="every cylinder ran evenly",
        works="even",
        fails="rough",
        left="still to feel",
        first="Feel the others first.",
    ),
    cautions={
        "fuel": Caution("hot", "Fuel sprays: no flame, eyes covered."),
        "key": Caution("key_off", "Key off before you undo anything."),
    },
    at_step={"cautions": ("fuel",), "pull": ("key", "fuel"), "measure": ("key",)},
    caution_in_report="fuel",
    rates={"unit": 0.1},
    minutes={"pull": 4.0, "fit": 4.0},
)  # fmt: skip
