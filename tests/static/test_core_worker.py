"""The core in its worker: answers unharmed, fetches nothing, comes back after a hang, can be missing."""

import re

from tests.static.app_server import core_with
from tests.static.phone_parts import open_bare

START = """async (options) => {
  const { Core } = await import('/app/parts.js');
  window.core = await Core.start(options);
  return [core.available, core.trouble.value];
}"""

ASK = """async ([op, args]) => {
  try { return { value: await core.call(op, args) }; } catch (error) {
    return { error: { name: error.name, field: error.field, broken: error.broken, message: error.message } };
  }
}"""

# A host that keeps a sum as its state, and hangs or fails when asked to.
SUMMING_HOST = """
import json
from .log import canon

class Host:
    def __init__(self):
        self.total = 0

    def call(self, text):
        asked = json.loads(text)
        op = asked["op"]
        if op == "canonical":
            value = {"text": canon.dumps(asked["value"])}
        elif op == "hang":
            while True:
                pass
        elif op == "fail":
            raise KeyError("a fault of the core")
        elif op == "reset":
            self.total = sum([entry["event"]["data"]["amount"] for entry in asked["events"]])
            value = {"count": len(asked["events"])}
        elif op == "add":
            self.total += sum([entry["event"]["data"]["amount"] for entry in asked["events"]])
            value = {"conflicts": []}
        else:
            value = self.total
        return canon.dumps({"ok": True, "value": value})
"""

REPLAYED = """async () => {
  window.kept = [5, 6].map((amount) => ({ event: { data: { amount } } }));
  core.keptBy({ refill: (ask) => ask('reset', { events: kept }), supply: async () => undefined });
  await core.call('reset', { events: kept });
}"""


def test_values_cross_the_border_unharmed(bare_page):
    assert bare_page.evaluate(START, {}) == [True, {"state": "none", "sentence": ""}]

    value = {"largest": 2**53 - 1, "least": 1 - 2**53, "32": 2**31, "text": "ä😀\u2028\0", "no": None}
    answer = bare_page.evaluate(
        "async (text) => (await core.call('canonical', { value: JSON.parse(text) })).text",
        '{"largest":9007199254740991,"least":-9007199254740991,"32":2147483648,'
        '"text":"ä😀\\u2028\\u0000","no":null}',
    )

    assert (
        answer == '{"32":2147483648,"largest":9007199254740991,"least":-9007199254740991,"no":null,'
        '"text":"ä😀\u2028\\u0000"}'
    )
    assert value["text"] in bare_page.evaluate(
        "async (text) => JSON.parse((await core.call('canonical', { value: { text } })).text).text",
        value["text"],
    )


def test_the_worker_fetches_nothing_but_its_own_script(make_context, checkout_app):
    page = open_bare(make_context(), checkout_app.base)
    checkout_app.requests.clear()

    page.evaluate(START.replace("parts.js", "core/client.js"), {})
    page.evaluate(ASK, ["layouts", {}])

    fetched = [request.path for request in checkout_app.requests if request.destination == "empty"]
    assert sorted(fetched) == [
        "/app/core.json",
        "/app/vendor/micropython/micropython.wasm",
        "/app/words/en.ftl",
    ]
    by_the_worker = {"/app/core/worker.js", "/app/vendor/micropython/micropython.mjs"}
    of_the_page = re.compile(r"/icons/swaptrail\.svg$|/app/words/\w+\.js$|/vendor/fluent-bundle/\w+\.js$")
    assert {path for path in checkout_app.paths() if not of_the_page.search(path)} == {
        "/app/core/client.js",
        "/app/core/parts.js",
        "/app/core/worker-line.js",
        "/app/phone/observable.js",
        "/app/place.js",
        *by_the_worker,
        *fetched,
    }


def test_what_few_answers_need_is_read_when_one_is_asked_for(make_context, shared_app):
    page = open_bare(make_context(), shared_app.base)
    gone = ("404 Not Found", "text/plain", b"")
    shared_app.fault = lambda environ, app: gone if environ["PATH_INFO"].endswith("/core-late.bin") else None
    page.evaluate(START, {})

    early = page.evaluate(ASK, ["label_specimen", {"base": "https://a.example"}])
    shared_app.fault = None
    later = page.evaluate(ASK, ["label_specimen", {"base": "https://a.example"}])

    assert early["error"]["message"] == "This screen is not on the phone yet. It needs the network once."
    assert later["value"].startswith("HTTPS://A.EXAMPLE/U/")
    assert page.evaluate("[core.available, core.restarts]") == [True, 0]


def test_a_refusal_of_the_core_names_field_and_both_sides(bare_page):
    bare_page.evaluate(START, {})

    error = bare_page.evaluate(
        """async () => { try { await core.call('job', { job: 'j000000000000' }); } catch (error) {
          return [error.field, error.found, error.wanted, error.broken]; } }"""
    )

    assert error == ["job", '"j000000000000"', "a job that is on record", False]


def test_a_hang_ends_in_a_fresh_worker_with_the_state_replayed(bare_page, shared_app):
    shared_app.fault = core_with(SUMMING_HOST)
    bare_page.evaluate(START, {})
    bare_page.evaluate(REPLAYED)

    # asked while the worker hangs: answered after the restart, by the replayed state
    answers = bare_page.evaluate(
        """async () => Promise.allSettled([
          core.call('hang', {}, { seconds: 1 }), core.call('total'),
        ]).then((all) => all.map(({ status, value, reason }) => value ?? [reason.broken, reason.message]))"""
    )

    assert answers == [
        [True, "No answer within 1 seconds. The checks were started again."],
        11,
    ]
    assert bare_page.evaluate("[core.available, core.restarts, core.trouble.value.state]") == [
        True,
        1,
        "restarted",
    ]


def test_a_fault_inside_the_core_replays_the_state_too(bare_page, shared_app):
    shared_app.fault = core_with(SUMMING_HOST)
    bare_page.evaluate(START, {})
    bare_page.evaluate(REPLAYED)

    failed = bare_page.evaluate(ASK, ["fail", {}])

    assert failed["error"]["broken"] is True
    assert "a fault of the core" in failed["error"]["message"]
    assert bare_page.evaluate(ASK, ["total", {}]) == {"value": 11}


def test_a_log_that_hangs_the_core_again_leaves_the_app_without_it(bare_page, shared_app):
    shared_app.fault = core_with(SUMMING_HOST)
    bare_page.evaluate(START, {})
    bare_page.evaluate(
        """core.keptBy({
          refill: (ask) => ask('reset', { events: [{ event: {} }] }),
          supply: async () => undefined,
        })"""
    )

    bare_page.evaluate("core.call('hang', {}, { seconds: 1 }).catch(() => undefined)")

    assert bare_page.evaluate("core.available") is False
    assert "unchecked" in bare_page.evaluate("core.trouble.value.sentence")


def test_a_core_that_fails_its_self_check_is_not_used(bare_page, shared_app):
    shared_app.fault = core_with(SUMMING_HOST.replace("canon.dumps(asked", "str(asked"))

    available, trouble = bare_page.evaluate(START, {})

    assert available is False
    assert "self-check" in trouble["sentence"]


def test_without_webassembly_the_app_says_so_and_goes_on(make_context, shared_app):
    context = make_context()
    context.add_init_script("delete window.WebAssembly")
    page = open_bare(context, shared_app.base)

    available, trouble = page.evaluate(START, {})

    assert available is False
    assert trouble["sentence"] == (
        "This browser cannot run the checks (no WebAssembly). "
        "What you enter is saved on this phone, marked as unchecked."
    )
    assert page.evaluate(ASK, ["jobs", {}])["error"]["broken"] is True
