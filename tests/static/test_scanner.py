"""The scanner reads labels through a real camera stream, hands over texts, and opens none of them."""

import io

import pytest
import qrcode
from PIL import Image
from PIL import ImageFilter

from tests.browser_support import Complaints
from tests.browser_support import fake_camera_file
from tests.browser_support import wait_until
from tests.static.app_server import BARE_PAGE
from tests.static.phone_parts import open_bare
from tests.static.symbols import CODE_128
from tests.static.symbols import DATA_MATRIX
from tests.static.symbols import symbol

LABEL = "HTTP://LOCALHOST:8765/U/K7F3M"
OTHER = "HTTP://LOCALHOST:8765/U/P2W9D"

OPEN = """(given) => {
  const options = given ?? {};
  const host = document.getElementById('app');
  return import('/app/scan-parts.js').then(async ({ openScanner, openCamera, startWords }) => {
    await startWords();
    window.texts = [];
    window.troubles = [];
    window.typed = 0;
    window.files = [];
    const heard = {
      onTexts: (found) => texts.push(found),
      onType: () => { typed += 1; },
      onProblem: (trouble) => troubles.push(trouble && trouble.name),
      onFile: (file) => files.push(file.size),
    };
    window.scanner = (options.only === 'camera' ? openCamera : openScanner)(host, { ...heard, ...options });
  });
}"""

# What the camera's track is doing, as the person cannot see it.
TRACK = "document.querySelector('video')?.srcObject?.getVideoTracks()[0]?.readyState ?? 'none'"

COUNT_CAMERAS = """() => {
  window.opened = [];
  const open = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = (asked) => { opened.push(asked.video); return open(asked); };
}"""

# Counts from outside: pictures that the worker was given, has not answered yet, and has answered.
COUNT_READINGS = """() => {
  window.reading = { now: 0, most: 0, all: 0, done: 0 };
  const { postMessage } = Worker.prototype;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message.picture) {
      reading.all += 1;
      reading.now += 1;
      reading.most = Math.max(reading.most, reading.now);
      this.addEventListener('message', () => { reading.now -= 1; reading.done += 1; }, { once: true });
    }
    return postMessage.call(this, message, ...rest);
  };
}"""

# What the camera shows at this moment, small; `looked` is what it was when it was kept.
LOOK = """() => {
  const canvas = document.createElement('canvas');
  canvas.width = 64;
  canvas.height = 36;
  const context = canvas.getContext('2d');
  context.drawImage(document.querySelector('video'), 0, 0, 64, 36);
  const { data } = context.getImageData(0, 0, 64, 36);
  return [...data];
}"""
LOOKS_SO_AGAIN = f"""() => {{
  const now = ({LOOK})();
  return now.reduce((sum, value, at) => sum + Math.abs(value - looked[at]), 0) / now.length < 0.2;
}}"""

HIDE = """(hidden) => {
  Object.defineProperty(document, 'visibilityState',
    { configurable: true, value: hidden ? 'hidden' : 'visible' });
  document.dispatchEvent(new Event('visibilitychange'));
}"""


def qr(text: str, pixels: int = 8) -> Image.Image:
    """Return the symbol of a label as it is printed: level Q, white margin."""
    code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, box_size=pixels, border=4)
    code.add_data(text)
    code.make(fit=True)
    return code.make_image().get_image().convert("RGB")


@pytest.fixture
def camera(shared_camera):
    """Give the camera of the browser; it shows nothing yet."""
    shared_camera.show()
    return shared_camera


@pytest.fixture
def page(camera_browser, camera, shared_app):
    """Give a bare page whose browser has that camera, and fail on anything it objects to."""
    context = camera_browser.new_context(
        permissions=["camera"], service_workers="block", viewport={"width": 390, "height": 844}
    )
    complaints = Complaints(shared_app.base)
    page = open_bare(context, shared_app.base, complaints)
    yield page
    heard, pages, url = complaints.heard, len(context.pages), page.url
    context.close()
    assert heard == []
    assert url == shared_app.base + BARE_PAGE
    assert pages == 1


def wait_for_texts(page, count):
    """Wait until the scanner has told so many times what it sees; returns all it told."""
    wait_until(page, "(count) => texts.length >= count", count)
    return page.evaluate("texts")


def wait_for_more_readings(page, count):
    """Wait until so many pictures more were taken and read."""
    before = page.evaluate("reading.all")
    wait_until(page, "(enough) => reading.done >= enough", before + count, seconds=30)


def test_a_label_in_front_of_the_camera_is_read_once(page, camera):
    camera.show(qr(LABEL))
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)

    assert wait_for_texts(page, 1) == [[LABEL]]
    wait_for_more_readings(page, 5)
    assert page.evaluate("texts.length") == 1


def test_what_is_shown_next_is_read_next(page, camera):
    camera.show(qr(LABEL))
    page.evaluate(OPEN)
    wait_for_texts(page, 1)

    camera.show(qr(OTHER))

    assert wait_for_texts(page, 2) == [[LABEL], [OTHER]]


def test_a_label_shown_again_after_it_was_gone_is_read_again(page, camera):
    camera.show()
    page.clock.install()
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)
    wait_until(page, "document.querySelector('video').videoWidth > 0")
    page.evaluate(f"window.looked = ({LOOK})()")
    camera.show(qr(LABEL))
    wait_for_texts(page, 1)

    camera.show()
    wait_until(page, LOOKS_SO_AGAIN)
    wait_for_more_readings(page, 1)
    page.clock.fast_forward(2200)
    camera.show(qr(LABEL))

    assert wait_for_texts(page, 2) == [[LABEL], [LABEL]]


def test_a_foreign_code_comes_through_as_text_and_is_not_opened(page, camera):
    foreign = "https://example.org/a?b=c#d"
    camera.show(qr(foreign))
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)

    assert wait_for_texts(page, 1) == [[foreign]]
    wait_for_more_readings(page, 2)  # the fixture then checks address, windows and requests


def test_several_codes_in_view_are_all_told(page, camera):
    camera.show(qr(LABEL), qr(OTHER))
    page.evaluate(OPEN)

    assert sorted(wait_for_texts(page, 1)[-1]) == [LABEL, OTHER]


def test_a_tilted_and_blurred_label_is_read(page, camera):
    tilted = qr(LABEL, 10).rotate(28, expand=True, fillcolor="white")
    camera.show(tilted.filter(ImageFilter.GaussianBlur(1.5)))
    page.evaluate(OPEN)

    assert wait_for_texts(page, 1) == [[LABEL]]


@pytest.mark.parametrize("form", [DATA_MATRIX, CODE_128])
def test_a_makers_symbol_is_read_only_where_it_is_asked_for(page, camera, form):
    camera.show(symbol("1P4L0014-163B", form, pixels=5))
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)
    wait_for_more_readings(page, 5)
    assert page.evaluate("texts") == []

    page.evaluate("scanner.stop()")
    page.evaluate(OPEN, {"formats": ["data_matrix", "code_128"]})

    assert wait_for_texts(page, 1) == [["1P4L0014-163B"]]


def test_pictures_are_read_beside_the_page_not_in_it(page, camera):
    camera.show(qr(LABEL))
    page.evaluate(OPEN)
    wait_for_texts(page, 1)

    assert [worker.url.rsplit("/", 1)[1] for worker in page.workers] == ["code-worker.js"]


def test_where_codes_cannot_be_read_it_says_so_and_goes_on_showing_the_picture(page, camera):
    page.evaluate("() => { window.Worker = class { constructor() { throw new Error('none here'); } }; }")
    page.evaluate(OPEN)

    page.wait_for_selector("text=Codes cannot be read on this phone. Type the code")


def test_a_reader_that_could_not_be_fetched_reads_as_soon_as_it_can(page, camera):
    page.evaluate("() => import('/app/scan-parts.js').then(({ startWords }) => startWords())")
    page.context.set_offline(True)
    wait_until(page, "!navigator.onLine")
    camera.show(qr(LABEL))
    page.clock.install()
    page.evaluate(
        """() => {
          window.fetched = 0;
          const real = fetch;
          window.fetch = (...args) => { fetched += 1; return real(...args); };
        }"""
    )
    page.evaluate(OPEN)
    page.wait_for_selector("text=Codes cannot be read on this phone. Type the code")
    assert page.evaluate("fetched") == 0

    page.context.set_offline(False)
    page.clock.fast_forward(2000)

    assert wait_for_texts(page, 1) == [[LABEL]]
    page.get_by_text("Codes cannot be read").wait_for(state="detached")


def test_a_film_of_two_labels_is_read_in_turn(make_profile, shared_app, tmp_path):
    film = fake_camera_file([qr(LABEL), qr(OTHER)], tmp_path / "film.y4m", seconds=1.5)
    context = make_profile(
        args=["--use-fake-device-for-media-stream", f"--use-file-for-fake-video-capture={film}"],
        permissions=["camera"],
        service_workers="block",
    )
    page = open_bare(context, shared_app.base)
    page.evaluate(OPEN)

    assert {text for (text,) in wait_for_texts(page, 2)} == {LABEL, OTHER}


def test_two_frames_are_never_read_at_once_and_no_more_than_five_a_second(page, camera):
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)
    wait_until(page, "reading.all > 1")
    before = page.evaluate("[performance.now(), reading.all]")
    wait_for_more_readings(page, 8)
    after = page.evaluate("[performance.now(), reading.all]")

    seconds, read = (after[0] - before[0]) / 1000, after[1] - before[1]
    assert read <= 5 * seconds + 1
    assert page.evaluate("reading.most") == 1


def test_paused_it_reads_nothing_and_resumed_it_reads_what_is_there(page, camera):
    camera.show(qr(LABEL))
    page.clock.install()
    page.evaluate(COUNT_READINGS)
    page.evaluate(OPEN)
    wait_for_texts(page, 1)

    page.evaluate("scanner.pause()")
    page.evaluate(f"window.looked = ({LOOK})()")
    camera.show(qr(OTHER))
    wait_until(page, f"!({LOOKS_SO_AGAIN})()")
    wait_until(page, "reading.now === 0")
    read = page.evaluate("reading.all")
    page.clock.run_for(800)
    assert page.evaluate("reading.all") == read
    assert page.evaluate("[texts.length, scanner && true]") == [1, True]
    assert page.evaluate(TRACK) == "live"
    camera.show(qr(LABEL))
    wait_until(page, LOOKS_SO_AGAIN)
    page.evaluate("scanner.resume()")

    assert wait_for_texts(page, 2) == [[LABEL], [LABEL]]


def test_it_lets_the_camera_go_when_hidden_and_comes_back(page, camera):
    page.evaluate(COUNT_CAMERAS)
    page.evaluate(OPEN)
    wait_until(page, f"({TRACK}) === 'live'")

    page.evaluate(HIDE, True)
    assert page.evaluate(TRACK) == "none"

    camera.show(qr(LABEL))
    page.evaluate(HIDE, False)
    # several signs of coming back at once must not open the camera twice
    page.evaluate("['focus', 'pageshow'].forEach((name) => dispatchEvent(new Event(name)))")

    assert wait_for_texts(page, 1) == [[LABEL]]
    assert page.evaluate(TRACK) == "live"
    assert page.evaluate("opened.length") == 2


@pytest.mark.parametrize("sign", ["focus", "pageshow", "visibilitychange"])
@pytest.mark.parametrize(
    "death",
    [
        pytest.param("held.stop()", id="ended"),
        pytest.param("Object.defineProperty(held, 'muted', { value: true })", id="black"),
    ],
)
def test_a_stream_that_died_in_the_background_is_replaced(page, camera, sign, death):
    page.evaluate(OPEN)
    wait_until(page, f"({TRACK}) === 'live'")
    page.evaluate("() => { window.held = document.querySelector('video').srcObject.getVideoTracks()[0]; }")

    page.evaluate(f"() => {{ {death}; }}")
    page.evaluate("(sign) => document.dispatchEvent(new Event(sign, { bubbles: true }))", sign)

    wait_until(page, "document.querySelector('video').srcObject?.getVideoTracks()[0] !== held")
    camera.show(qr(LABEL))
    assert wait_for_texts(page, 1) == [[LABEL]]
    assert page.evaluate("held.readyState") == "ended"


def test_it_asks_for_a_sharp_picture_and_offers_no_tool_that_the_camera_lacks(page):
    page.evaluate("() => { MediaStreamTrack.prototype.getCapabilities = () => ({}); }")
    page.evaluate(COUNT_CAMERAS)
    page.evaluate(OPEN)
    wait_until(page, "troubles.length === 1")

    [asked] = page.evaluate("opened")
    assert asked == {
        "width": {"ideal": 1920},
        "height": {"ideal": 1080},
        "facingMode": {"ideal": "environment"},
    }
    video = page.locator("video")
    assert video.evaluate("({ playsInline, muted }) => [playsInline, muted]") == [True, True]
    assert page.locator("button").all_inner_texts() == ["Type the code"]
    assert page.locator("input[type=range]").count() == 0


def test_stopped_it_leaves_no_stream_and_an_empty_host(page, camera):
    page.evaluate(COUNT_CAMERAS)
    page.evaluate(OPEN)
    wait_until(page, "troubles.length === 1")
    page.evaluate("() => { window.held = document.querySelector('video').srcObject; }")

    page.evaluate("scanner.stop()")

    assert page.evaluate("held.getTracks().map((track) => track.readyState)") == ["ended"]
    assert page.inner_text("#app") == ""
    page.evaluate("dispatchEvent(new Event('focus'))")
    page.evaluate("navigator.mediaDevices.enumerateDevices()")  # behind whatever was asked of the browser
    assert page.evaluate("[troubles, texts, opened.length]") == [[None], [], 1]


def test_typing_is_one_tap_away(page):
    page.evaluate(OPEN)

    page.click("text=Type the code")

    assert page.evaluate("typed") == 1


def test_a_photo_is_what_the_camera_sees(page, camera):
    camera.show(Image.new("RGB", (600, 600), "#c00000"))
    page.evaluate(OPEN, {"only": "camera"})
    wait_until(page, "troubles.length > 0")
    wait_until(page, "document.querySelector('video').videoWidth > 0")

    taken = bytes(
        page.evaluate("scanner.takePhoto().then(async (b) => [...new Uint8Array(await b.arrayBuffer())])")
    )

    seen = Image.open(io.BytesIO(taken)).convert("RGB")
    assert seen.size == (1280, 720)
    red, green, _ = seen.getpixel((640, 360))
    assert red > 150 > 60 > green


@pytest.mark.parametrize("how", ["scanner", "camera"])
def test_a_picture_file_serves_in_place_of_the_camera(page, how):
    page.evaluate(OPEN, {"only": how})
    file = io.BytesIO()
    qr(LABEL).save(file, "PNG")
    picked = {"name": "label.png", "mimeType": "image/png", "buffer": file.getvalue()}

    page.set_input_files("input[type=file]", picked)

    if how == "scanner":
        assert wait_for_texts(page, 1) == [[LABEL]]
    else:
        wait_until(page, "files.length === 1")
        assert page.evaluate("files") == [len(file.getvalue())]


def test_a_picture_without_a_code_is_said_to_have_none(page):
    page.evaluate(OPEN)
    file = io.BytesIO()
    Image.new("RGB", (300, 300), "white").save(file, "PNG")

    page.set_input_files(
        "input[type=file]",
        {"name": "blank.png", "mimeType": "image/png", "buffer": file.getvalue()},
    )

    page.wait_for_selector("text=No code found in this picture")


def test_without_permission_it_says_how_to_allow_the_camera(make_context, shared_app):
    page = open_bare(make_context(), shared_app.base)
    page.evaluate(
        """() => {
          navigator.mediaDevices.getUserMedia = async () => {
            throw new DOMException('denied', 'NotAllowedError');
          };
        }"""
    )
    page.evaluate(OPEN)

    assert page.inner_text("[role=alert] h2") == "The camera is not allowed"
    assert page.is_visible("text=Type the code")
    assert page.evaluate("troubles") == ["NotAllowedError"]


def test_without_a_camera_it_says_so(make_context, shared_app):
    page = open_bare(make_context(), shared_app.base)
    page.evaluate(OPEN)

    page.wait_for_selector("[role=alert]")
    assert page.inner_text("[role=alert] h2") == "No camera found"


def test_each_camera_error_has_a_sentence_of_its_own(bare_page):
    names = [
        "NotAllowedError",
        "NotFoundError",
        "NotReadableError",
        "OverconstrainedError",
        "SecurityError",
        "AbortError",
        "InvalidStateError",
    ]

    told = bare_page.evaluate(
        """async (names) => {
          const { cameraTrouble, startWords } = await import('/app/scan-parts.js');
          await startWords();
          const errors = [...names.map((name) => new DOMException('x', name)), new TypeError('x'), null];
          return errors.map((error) => cameraTrouble(error));
        }""",
        names,
    )

    titles = [trouble["title"] for trouble in told]
    assert len(set(titles)) == len(titles)
    assert all(trouble["sentence"].endswith(".") for trouble in told)


def test_torch_zoom_and_choice_of_camera_are_offered_where_there_are_any(page, camera):
    page.evaluate(
        """() => {
          const { prototype } = MediaStreamTrack;
          window.set = [];
          prototype.getCapabilities = () => ({ torch: true, zoom: { min: 1, max: 4, step: 0.5 } });
          prototype.applyConstraints = async ({ advanced }) => { set.push(advanced[0]); };
          const two = ['a', 'b'].map((deviceId) => ({ kind: 'videoinput', deviceId, label: deviceId }));
          navigator.mediaDevices.enumerateDevices = async () => two;
          const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
          window.asked = [];
          navigator.mediaDevices.getUserMedia = (wanted) => {
            const { deviceId, ...video } = wanted.video;
            asked.push(deviceId?.exact ?? video.facingMode.ideal);
            return ask({ ...wanted, video });
          };
        }"""
    )
    page.evaluate(f"({OPEN})({{ onCamera: (id) => {{ window.remembered = id; }} }})")

    page.click("text=Light on")
    page.wait_for_selector("text=Light off")
    page.fill("input[type=range]", "2.5")
    page.click("text=Other camera")
    wait_until(page, "window.remembered")

    assert page.evaluate("set") == [{"torch": True}, {"zoom": 2.5}]
    wait_until(page, "asked.length === 2")
    assert page.evaluate("[asked[0], asked[1] === remembered]") == ["environment", True]


def test_a_remembered_camera_that_is_gone_gives_way_to_another(page, camera):
    camera.show(qr(LABEL))

    page.evaluate(OPEN, {"camera": "no-such-camera"})

    assert wait_for_texts(page, 1) == [[LABEL]]
