"""What a sort of part is: all that depends on it, named by the step of a job that asks for it.

Its words are messages; those that take the names of positions as `$positions` are named by their ids.
"""

from collections import namedtuple

from ..messages import message
from .layouts import OWN

# Lamps to look at before the first test. `when` is "key_on" or "reverse"; the choices are (result, words)
# with the results of the kind `lamp_checked`.
Lamp = namedtuple("Lamp", ("when", "heading", "text", "choices"))

# What can be seen from outside before anything is touched; `found` is ((id, words), ...).
Look = namedtuple("Look", ("heading", "text", "found"))

# The self-test: how it is started, and what proves that it ran: "sounder heard", "sounder not heard",
# "its sounder was not heard", "whose sounder was heard". `provoke` is what may bring out a fault that
# comes and goes. `question` asks for the proof, `yes` and `no` say what either answer means; `asked`
# stands over the likely answers, which say what the fault did.
SelfTest = namedtuple(
    "SelfTest",
    (
        "start",
        "start_again",
        "heard",
        "not_heard",
        "was_not_heard",
        "whose_was_heard",
        "provoke",
        "question",
        "asked",
        "yes",
        "no",
    ),
)

# What is gone through where that proof never comes. `checks` are {"id", "title", "text", "good"}; `order` is
# ((when, result, ids), ...): the first whose lamps showed so says in which order, `when` "" fits always.
# `rest` is said once all were gone through; `controls` is ((when, result, factor), ...): what speaks for the
# control unit or its supply, by that factor on its prior odds.
Sounder = namedtuple("Sounder", ("checks", "order", "rest", "controls"))

# What a working unit can be heard to do with nothing taken apart: how to listen at a position, and the
# two answers.
Listen = namedtuple("Listen", ("text", "ticks", "silent"))

# How a unit is taken out and put in, and its connector plugged.
Handling = namedtuple("Handling", ("take_out", "put_in", "plug"))

# What keeps a good unit from working (cause `blocked`): "dirt, ice, paint or aim", and as a customer
# reads it. `clean` says what is done at the position, `clean_and_look` the same with what is looked at
# besides, `check` names that; `outside` tells whether a hand is on it with nothing opened.
Obstruction = namedtuple(
    "Obstruction", ("words", "for_customer", "state", "clean", "clean_and_look", "check", "outside")
)

# The check in use that ends a job (kind `walk_checked`): its step, what is said of those that did not
# work (`again_...`, `accepted` is the reason on record), how it is told, and the words of its form: of a
# position that works and one that fails, of those that are left, what is wanted before it can be saved.
Walk = namedtuple(
    "Walk",
    (
        "heading", "text", "button", "again_heading", "again_text", "accepted", "name", "missed", "all_well",
        "report_name", "report_all_well", "works", "fails", "left", "first",
    ),
)  # fmt: skip

# The segments of a circuit at which something can be repaired, from the unit on: what most sorts have.
SEGMENTS = ("pins", "connector", "wire", "splice", "loom", "control-plug", "channel", "supply", "ground")

# A wire that a check is made on, as long as it may be: a size of `meter/copper.py`, and whole metres.
Wire = namedtuple("Wire", ("size", "metres"))

# A circuit that is reasoned over: its chain (`harness/chain.py`), the same with what shows only warm, place
# -> minutes until a hand is there, the list of checks it goes by, segment -> its name within a sentence,
# segment -> what is done to mend it, the segments that are bought anew (likely is not enough for that), and
# the minutes of a whole round: where it finds the fault, on average over the chain, and where all is good.
Harness = namedtuple(
    "Harness", ("chain", "warm", "reach", "since", "names", "mends", "bought", "found", "all_good")
)

# A caution: the icon beside it (static/shapes/icons.js), its sentence, and the few words that stand for it
# at the steps that need it once it was read.
Caution = namedtuple("Caution", ("icon", "sentence", "short"))


class Sort:
    """A sort of part; the attributes are its declaration."""

    def __init__(
        self,
        *,
        identity: str,
        layouts,
        lamps: tuple,
        look: Look,
        photograph: dict,
        self_test: SelfTest,
        handling: Handling,
        fit_checks: tuple,
        circuit_checks: tuple,
        obstruction: Obstruction,
        walk: Walk,
        cautions: dict,
        at_step: dict,
        caution_in_report: str,
        sounder: Sounder | None = None,
        listen: Listen | None = None,
        harness: Harness | None = None,
        codes: bool = True,
        pole: bool = False,
        rates: dict | None = None,
        minutes: dict | None = None,
        position_names: dict | None = None,
        complaints: tuple = (),
        outline: str = "vehicle",
        without: tuple = (),
        hangs: bool = True,
        segments: tuple = SEGMENTS,
    ):
        """Declare a sort.

        `identity` begins the ids of its layouts, before a "/"; `part-IDENTITY` is the message of what it is
        called. `layouts` is a function that returns [{"id", "name", "positions"}]; no other sort has a
        position of the same id. `fit_checks` are {"id", "words"}, `circuit_checks` {"id", "title", "text",
        "unit", "good", "bad"} in the order in which they are made; a title stands within sentences too. One
        with a unit may have a "limit" (`meter/limits.py`) and a "wire", whose resistance is told beside it;
        with a `harness`, "since" is the list that a check came with, "since_warm" the list that has it warm,
        and the chain says the order.
        `cautions` is id -> Caution, `at_step` id of a step -> ids of cautions; those of the step "cautions"
        have to be acknowledged. `sounder` is None where a test that proves nothing is just made again,
        `listen` where one that works makes no noise; `codes` is False where nothing stores trouble codes.
        `pole` is True where the check in use is done with a pole before each (`guide/standing.py`).
        `rates` and `minutes` are those that differ from the defaults of `infer/case.py`. `position_names` is
        what logs call a ready-made position -> the id of the message that names it. `complaints` are what
        customers mostly say; `outline` is what positions with a place are drawn on, "vehicle" or "engine"
        (static/shapes/vehicle.js). `without` are the kinds of cause that it has none of, "feed" and
        "control"; `hangs` tells whether a unit may hang on its wire for a test: else each is pushed home
        before it. `segments` are those of a circuit, as `segment` names them.
        """
        self.identity = identity
        self.layouts = layouts
        self.position_names = position_names or {}
        self.lamps = lamps
        self.look = look
        self.photograph = photograph
        self.self_test = self_test
        self.handling = handling
        self.fit_checks = fit_checks
        self.circuit_checks = circuit_checks
        self.obstruction = obstruction
        self.walk = walk
        self.cautions = cautions
        self.at_step = at_step
        self.caution_in_report = caution_in_report
        self.sounder = sounder
        self.listen = listen
        self.harness = harness
        self.codes = codes
        self.pole = pole
        self.rates = rates or {}
        self.minutes = minutes or {}
        self.complaints = complaints
        self.outline = outline
        self.without = without
        self.hangs = hangs
        self.segments = segments

    def called(self, position: dict):
        """Return what a position of a job is called: a ready-made one by a message, others as named."""
        name = position["name"]
        if position["id"].startswith(OWN) or name not in self.position_names:
            return name
        return message(self.position_names[name])

    def says(self, identity: str, **args) -> dict:
        """Return a message that names this sort: its `$sort` picks the forms of `part-IDENTITY`."""
        return message(identity, sort=self.identity, **args)

    def finding(self, identity: str) -> str | None:
        """Return the words for what was found by a look from outside; None where it is none of its own."""
        for known, words in self.look.found:
            if known == identity:
                return words
        return None

    def circuit_check(self, identity: str) -> dict | None:
        """Return a check of a circuit by its id, or None."""
        for check in self.circuit_checks:
            if check["id"] == identity:
                return check
        return None

    def segment(self, identity: str) -> dict:
        """Return what a segment of a circuit is called; one in somebody's own words as it was typed."""
        return self.says("causes-segment", segment=identity)
