"""What a phone has on record, read from its storage beside the app."""

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
        resolve(asked.result);
      };
    };
  });
}"""


def entries(page) -> list[dict]:
    """Return the entries on this phone as it keeps them, by device and number."""
    return page.evaluate(_RECORDS)


def facts(page) -> list[dict]:
    """Return kind and data of each entry, and whether it is unchecked."""
    return [
        {"kind": each["event"]["kind"], "data": each["event"]["data"], "unchecked": each.get("unchecked")}
        for each in entries(page)
    ]
