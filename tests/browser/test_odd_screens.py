"""A bad entry is a row that says so: each part of a screen fails alone, odd signs are seen as codes."""

import json
from urllib.parse import quote

import pytest

from server.core.host import Host
from server.log import intake
from server.words.speech import Speech
from server.words.visible import visible
from tests.browser.odd_log import keep
from tests.browser.phone_log import entries
from tests.browser.phone_log import facts
from tests.core.driver import START
from tests.long_runs import times
from tests.odd_entries import declared_entries
from tests.odd_entries import is_taken
from tests.odd_entries import odd_entries
from tests.odd_entries import opening

BAD = 9_000_000_000_000_000
# What makes a row, or a whole screen, throw as a fault of ours would.
_NO_ROW = """() => {
  const real = Date.prototype.getFullYear;
  Date.prototype.getFullYear = function () {
    if (this.getTime() === 1000) throw new RangeError('a row of no use');
    return real.call(this);
  };
}"""

_NO_LIST = """() => {
  const real = Array.prototype.some;
  Array.prototype.some = function (...given) {
    if (this[0]?.id === 'j1' && !globalThis.useful) throw new RangeError('a list of no use');
    return real.apply(this, given);
  };
}"""


# The core fails at each question for a job.
_NO_JOB = """(() => {
  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (!message.text?.includes('"op":"job"')) return post.call(this, message, ...rest);
    const data = { id: message.id, fault: 'of no use' };
    setTimeout(() => this.dispatchEvent(new MessageEvent('message', { data })));
  };
})()"""


def opened(number, at=START, **vehicle):
    data = opening(number)
    data["vehicle"].update(vehicle)
    return {"kind": "job_opened", "data": data, "job": f"j{number}", "at": at}


def test_a_job_at_which_the_core_fails_is_not_said_to_be_missing(take_screens):
    phone = take_screens()
    keep(phone, [opened(1)])
    phone.context.add_init_script(_NO_JOB)

    page = phone.show("/#/job/j1")
    page.get_by_text("This could not be shown").wait_for()
    page.get_by_text("Nothing that was recorded is lost.").wait_for()
    assert page.locator("[data-missing]").count() == 0


def test_jobs_with_a_time_beyond_all_calendars_and_ids_of_any_letters_are_listed_and_open(take_screens):
    phone = take_screens()
    odd = opened(3)
    odd["data"]["positions"][0]["id"] = "ä"
    keep(phone, [opened(1), opened(2, at=BAD), odd])

    page = phone.show("/#/")
    page.get_by_role("link", name="Car 2").get_by_text("unknown day").wait_for()
    for number in (1, 2, 3):
        phone.show(f"/#/job/j{number}/history")
        page.get_by_role("heading", name=f"Car {number}").wait_for()
        assert page.locator("[data-broken]").count() == 0
    phone.show("/#/job/j2/history")
    page.get_by_text("unknown time").wait_for()
    phone.show("/#/job/j3/position/%C3%A4")
    page.get_by_role("heading", name="Left 3").wait_for()
    phone.show("/#/job/j3")
    page.locator(".step").wait_for()


def test_signs_that_nobody_sees_stand_there_as_their_codes_and_are_recorded_as_typed(take_screens):
    phone = take_screens()
    keep(phone, [opened(1, name="left\u202etfel\u200b")])

    page = phone.show("/#/")
    page.get_by_text("left[U+202E]tfel[U+200B]", exact=True).wait_for()
    page.get_by_role("link", name="left[U+202E]").click()
    page.wait_for_function("() => document.title.startsWith('left[U+202E]tfel[U+200B]')")
    assert facts(page)[0]["data"]["vehicle"]["name"] == "left\u202etfel\u200b"


# Where a name ends and the figure behind it begins, in a sentence that the app draws.
_BEHIND = """async (sentence) => {
  const line = document.createElement('p');
  line.textContent = sentence;
  document.querySelector('main').append(line);
  await new Promise(requestAnimationFrame);
  const drawn = line.firstChild;
  const box = (text) => {
    const range = document.createRange();
    range.setStart(drawn, drawn.data.indexOf(text));
    range.setEnd(drawn, drawn.data.indexOf(text) + text.length);
    return range.getBoundingClientRect();
  };
  return [box('\u05d7\u05d9\u05d9\u05e9\u05df \u05d0\u05d7').right, box('74').left, drawn.data];
}"""


def test_a_figure_behind_a_name_from_right_to_left_stays_behind_it(take_screens):
    """ "The sensor at ..., 74 %" had the 74 in front of the name, and the % behind it."""
    page = take_screens().show("/#/")
    name = "\u05d7\u05d9\u05d9\u05e9\u05df \u05d0\u05d7"
    ends, begins, drawn = page.evaluate(_BEHIND, f"The sensor at {name}, 74 %. \u2068a\u2069")
    assert begins >= ends
    # The marks around it are the app's own; those that somebody typed stand there as their codes.
    assert drawn == f"The sensor at \u2068{name}\u2069, 74 %. [U+2068]a[U+2069]"


def test_a_row_that_cannot_be_drawn_says_so_and_the_others_stand(take_screens):
    phone = take_screens()
    keep(phone, [opened(1), opened(2, at=1000), opened(3)])
    phone.context.add_init_script(f"({_NO_ROW})()")

    page = phone.show("/#/")

    page.get_by_role("link", name="Car 1").wait_for()
    page.get_by_role("link", name="Car 3").wait_for()
    broken = page.locator("li", has=page.locator("[data-broken]"))
    assert broken.count() == 1
    broken.get_by_text("This part can't be shown.").wait_for()
    broken.get_by_role("link", name="Open it").click()
    page.wait_for_function("() => location.hash === '#/job/j2'")
    page.locator(".screen").wait_for()
    for width in (390, 320):
        phone.show("/#/")
        assert phone.lacking((width, 844, 100)) == {}


def test_a_screen_that_cannot_be_drawn_is_one_that_says_so_and_leads_on(take_screens):
    phone = take_screens()
    keep(phone, [opened(1)])
    phone.context.add_init_script(f"({_NO_LIST})()")

    page = phone.show("/#/")
    page.get_by_text("This could not be shown").wait_for()
    page.get_by_text("a list of no use").wait_for()
    page.get_by_role("link", name="Save what is on this phone").wait_for()
    page.evaluate("() => { globalThis.useful = true; }")
    phone.tap("Try again")
    page.get_by_role("link", name="Car 1").wait_for()


@pytest.mark.parametrize("seed", range(7, 7 + times(1, 20)))
@pytest.mark.parametrize("make", [odd_entries, declared_entries])
def test_odd_entries_that_the_server_takes_are_drawn_as_the_server_tells_them(take_screens, make, seed):
    phone = take_screens()
    keep(phone, [draft for draft in make(seed, 3, 40) if is_taken(draft)])
    events = [entry["event"] for entry in entries(phone.page)]
    for event, entry in zip(events, entries(phone.page), strict=True):
        assert intake.hash_of(intake.read(event)) == entry["hash"]
    host = Host()

    def told(op, **arguments):
        answer = json.loads(host.call(json.dumps({"op": op, **arguments})))
        assert answer["ok"], answer
        return Speech("en").render(answer["value"])

    told("reset", events=[{"event": event} for event in events])
    state = host.fold.state
    page = phone.show("/#/")
    titles = [job["title"] for job in told("job_list")["jobs"]]
    assert bare(page.locator(".job-list .list-title").all_text_contents()) == bare(titles)
    for job in sorted(state.jobs):
        view = told("job", job=job)
        address = f"/#/job/{quote(job, safe='')}"
        phone.show_anew(f"{address}/history")
        said = [entry["sentence"] for entry in view["history"]]
        assert bare(page.locator(".history-text").all_text_contents()) == bare(said)
        for further in (address, f"{address}/photos", f"{address}/trail", f"{address}/report"):
            phone.show_anew(further)
            assert page.locator("[data-broken]").count() == 0, further
    for place in [f"unit/{quote(unit, safe='')}" for unit in sorted(state.units)] + [
        f"vehicle/{quote(vehicle, safe='')}" for vehicle in sorted(state.vehicles)
    ]:
        phone.show_anew(f"/#/{place}")
        assert page.locator("[data-broken]").count() == 0, place
        assert page.get_by_text("This could not be shown").count() == 0, place


def bare(texts):
    """Return texts as they are shown, without their blanks: a code in a sentence is set apart."""
    return ["".join(visible(text).split()) for text in texts]


def spare(at):
    data = {"unit": "s1", "part": "PS-1", "serial": "", "code": "", "how": "tapped", "place": "stock"}
    return {"kind": "unit_added", "data": data, "job": None, "at": at}


def test_a_part_of_a_sheet_that_cannot_be_drawn_says_so_and_the_rest_is_printed(take_screens):
    phone = take_screens()
    keep(phone, [spare(1000)])
    phone.context.add_init_script(f"({_NO_ROW})()")

    for sheet, parts, stands in (("paper", 2, "Tests"), ("slip", 1, "Decision")):
        page = phone.show(f"/#/unit/s1/{sheet}")
        page.locator(".sheet [data-broken]").first.wait_for()
        assert page.locator(".sheet [data-broken]").count() == parts
        page.get_by_role("heading", name=stands, exact=True).wait_for()
        page.locator(".sheet-foot").wait_for()
        page.get_by_role("button", name="Print").first.wait_for()


def test_a_batch_of_labels_that_cannot_be_drawn_says_so_and_the_others_stand(take_screens):
    phone = take_screens()
    counts = {"on paper": 5, "on a sensor": 1, "void": 0}
    batch = {"made_at": START, "layout": "A4", "finished": True}
    batches = [{**batch, "id": each, "counts": None if each == 2 else counts} for each in (1, 2, 3)]
    phone.page.route("**/api/labels", lambda route: route.fulfill(json={"batches": batches}))
    page = phone.show("/#/labels")
    page.get_by_role("link", name="Batch 3").wait_for()
    assert page.locator("li [data-broken]").count() == 1
    page.get_by_role("button", name="Print labels").wait_for()
