"""A record that a phone with a certificate seals: it carries whose phone it is, and a reader goes by that."""

import base64
import json

from server.commands.cli import main
from server.core.host import Host
from server.core.record.comparison import stand_ins
from server.keeping.record.check import check
from tests.said import english

OPENED = """async () => {
  await device.handTo('Bo');
  const [{ id: layout, positions }] = await core.call('layouts');
  const job = device.newId('j');
  const vehicle = { id: device.newId('v'), name: 'blue estate', vin: '' };
  const result = await log.record([
    { job, kind: 'job_opened', data: { vehicle, complaint: '', layout, part: '', positions } },
    { job, kind: 'cleaned', data: { position: positions[0].id, note: '' } },
  ]);
  if (result.refusal) throw new Error(result.refusal.sentence);
  return job;
}"""
SEALED = """async (job) => {
  const { makeRecord, phoneKey } = await import('/app/parts.js');
  const { file } = await makeRecord({ core, store, device }, await phoneKey(store), { job });
  const bytes = new Uint8Array(await file.arrayBuffer());
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}"""


def sealed(phone, job):
    return base64.b64decode(phone.page.evaluate(SEALED, job))


def verified(tmp_path, capsys, data):
    """Run `swaptrail verify`; return its status and what it says."""
    file = tmp_path / "record.zip"
    file.write_bytes(data)
    capsys.readouterr()
    return main(["verify", str(file)]), capsys.readouterr().out


def names_in(sound):
    """Return beside each entry the name that a core says which has the file alone."""
    host = Host()

    def asked(**question):
        answer = json.loads(host.call(json.dumps(question)))
        assert answer["ok"], answer
        return answer["value"]

    events = [*stand_ins(sound.record["elsewhere"]), *sound.events]
    asked(op="reset", events=[{"event": event} for event in events], phones=sound.phones)
    view = asked(op="job", job=sound.record["jobs"][0])
    return [english(entry.get("who", entry["actor"])) for entry in view["history"]]


def test_a_record_made_on_a_paired_phone_says_whose_phone_it_is(make_phone, tmp_path, capsys):
    phone = make_phone()
    phone.sync()
    job = phone.page.evaluate(OPENED)
    phone.sync()
    phone.sync()  # what the server says of the phone comes with the answer

    data = sealed(phone, job)

    status, said = verified(tmp_path, capsys, data)
    assert (status, "Sealed by a phone" in said) == (0, True)
    sound = check(data)
    [row] = [each for each in sound.phones if each["people"]]
    assert (row["device"], row["role"], row["name"]) == (phone.device, "bench", "Zoë")
    assert "Bo" in row["people"]
    assert names_in(sound) == ["Bo, on the phone of Zoë"] * 2


def test_what_no_certificate_bears_out_is_left_out_of_it(make_phone, tmp_path, capsys):
    phone = make_phone()
    phone.sync()
    job = phone.page.evaluate(OPENED)
    phone.sync()
    phone.sync()
    phone.page.evaluate(
        """async () => {
          const said = await store.getMeta('phones');
          const rows = said.rows.map((row) => ({ ...row, role: 'counter', name: 'Mallory' }));
          await store.setMeta('phones', { ...said, rows });
        }"""
    )

    data = sealed(phone, job)

    assert verified(tmp_path, capsys, data)[0] == 0
    assert check(data).phones == []
