"""A clerk at the parts counter, with a camera and a hand scanner."""

from server.core.codes.labels import address
from tests.browser.phone import Phone
from tests.browser.phone import label_picture
from tests.browser.screens import TOO_SMALL
from tests.browser.screens import TOO_WIDE
from tests.browser.seeded_job import NO_WORKER
from tests.browser.wedge import Wedge
from tests.browser_support import wait_until
from tests.static.symbols import DATA_MATRIX
from tests.static.symbols import envelope
from tests.static.symbols import symbol

NO_PICTURE_HERE = "the server responded with a status of 404"  # the model job's pictures have no bytes
_ALTER = """(device) => new Promise((resolve, reject) => {
  const asked = indexedDB.open('swaptrail');
  asked.onerror = reject;
  asked.onsuccess = () => {
    const tx = asked.result.transaction('events', 'readwrite');
    const events = tx.objectStore('events');
    events.getAll().onsuccess = ({ target }) => {
      const test = target.result.find(
        ({ event }) => event.kind === 'test_run' && (!device || event.device === device));
      test.event.data.faulted = [];
      events.put(test);
    };
    tx.oncomplete = () => { asked.result.close(); resolve(); };
  };
})"""


class Clerk:
    """Holds parts before the camera and taps, or takes the hand scanner; touches no keyboard once paired."""

    def __init__(self, folder, server, size=(390, 844), worker=False):
        """Take a phone; without `worker` it has no service worker, which serves whoever loses the network."""
        self.phone = Phone(folder, server.base, size=size)
        self._worker = worker
        if not worker:
            self.phone.context.add_init_script(NO_WORKER)
        self.page = self.phone.page
        self.wedge = Wedge(self.page)
        self.server = server

    def comes_to_the_counter(self):
        self.page.goto(self.server.link("counter"))
        self.page.get_by_label("Your name").fill("Jo")
        self.phone.tap("Pair this phone")
        self.page.get_by_role("button", name="Scan returns").wait_for()
        self.phone.see("all sent")
        if self._worker:
            self.phone.wait_for_offline_use()
        self.page.evaluate("() => addEventListener('keydown', () => { window.keyed = true; }, true)")

    def holds(self, code: str, serial: str, part: str = "PS-1"):
        """Hold a part with its label, and with the maker's symbol on its bag beside it."""
        bag = symbol(envelope(f"1P{part}", f"S{serial}"), DATA_MATRIX)
        self.phone.camera.show(label_picture(code, self.server.base), bag)

    def sees(self, code: str, proposed: str):
        """Wait until this is proposed for this label."""
        wait_until(
            self.page,
            """([code, proposed]) => {
              const card = document.querySelector('.proposal');
              return card?.dataset.proposed === proposed && card.querySelector('.code')?.textContent === code;
            }""",
            [f"{code[:3]}-{code[3:]}", proposed],
        )

    def decides(self, word: str):
        """Tap what is proposed; the scanner is ready for the next right away."""
        self.phone.tap(f"{word} ")
        self.phone.see("Ready for the next label")

    def looks(self):
        """Hold the screen to the room that a finger and the narrowest phone need."""
        assert self.page.evaluate(TOO_SMALL, 48) == []
        assert self.page.evaluate(TOO_WIDE) == []

    def looks_on_any(self):
        """Hold it to that room on a usual phone and on the narrowest one; the screen is as it was then."""
        usual = self.page.viewport_size
        for width, height in ((320, 640), (390, 844)):
            self.page.set_viewport_size({"width": width, "height": height})
            self.looks()
        self.page.set_viewport_size(usual)

    def alters_a_record(self, device=""):
        """Change what a test showed in the log on this phone, of one phone at the bench where it is named."""
        self.page.evaluate(_ALTER, device)

    def leaves(self):
        heard = [each for each in self.phone.complaints.heard if NO_PICTURE_HERE not in each]
        self.phone.close()
        assert heard == []


def scans_label(clerk, code):
    """Scan a label by hand; nothing is known of its part then but that."""
    clerk.wedge.scans(address(code, clerk.server.base))
    clerk.sees(code, "hold")
