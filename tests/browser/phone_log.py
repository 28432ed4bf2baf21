"""What a phone has on record, read from its storage beside the app."""

import json

from tests.browser_support import wait_until

# Where the app lies in a folder of a host, the name of its database says in which.
_RECORDS = """async () => {
  const all = await indexedDB.databases();
  const { name } = all.find(({ name }) => /(^| )swaptrail$/.test(name));
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(name);
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
      const asked = opening.result.transaction('events').objectStore('events').getAll();
      asked.onsuccess = () => {
        opening.result.close();
        resolve(JSON.stringify(asked.result));
      };
    };
  });
}"""


_DRAFTS_HOLD = """(words) => new Promise((resolve, reject) => {
  const opening = indexedDB.open('swaptrail');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction('drafts').objectStore('drafts').getAll();
    asked.onsuccess = () => {
      opening.result.close();
      const kept = JSON.stringify(asked.result);
      resolve(words.every((word) => kept.includes(word)));
    };
  };
})"""


def wait_for_draft(page, *words: str) -> None:
    """Wait until what is being entered is kept on the phone, with these words in it."""
    wait_until(page, _DRAFTS_HOLD, list(words))


def entries(page) -> list[dict]:
    """Return the entries on this phone as it keeps them, by device and number."""
    return json.loads(page.evaluate(_RECORDS))


def facts(page) -> list[dict]:
    """Return kind and data of each entry, and whether it is unchecked."""
    return [
        {"kind": each["event"]["kind"], "data": each["event"]["data"], "unchecked": each.get("unchecked")}
        for each in entries(page)
    ]
