"""What the camera sees while the core still answers is not lost: the scanner tells a label once."""

import pytest

READER = """async (seen) => {
  const { Reader } = await import('/app/parts.js');
  const taken = [];
  let answer = () => undefined;
  const core = {
    call: (op, { text }) => new Promise((resolve) => {
      answer = () => resolve({ outcome: text === 'WRONG' ? 'told' : 'ours', text, title: '', sentence: '' });
    }),
  };
  const ctx = { job: 'j1', form: { read: { mode: 'camera' } }, services: { core }, redraw: () => undefined };
  const reader = new Reader(ctx, { heading: '', onOurs: ({ text }) => taken.push(text) });
  const first = reader.see([seen[0]]);
  for (const text of seen.slice(1)) reader.see([text]);
  const before = [...taken];
  answer();
  await Promise.resolve();
  for (let turn = 0; turn < 20; turn += 1) { await Promise.resolve(); answer(); }
  await first;
  return { before, taken };
}"""


@pytest.mark.parametrize(
    ("seen", "taken"),
    [
        pytest.param(["A", "B"], ["A", "B"], id="the next one"),
        pytest.param(["A", "B", "C"], ["A", "C"], id="the last of several"),
        pytest.param(["A", "A"], ["A"], id="the same one, still in view"),
        pytest.param(["WRONG", "B"], [], id="nothing after an answer that has to be read"),
    ],
)
def test_a_label_seen_while_the_core_answers_is_taken_as_soon_as_it_has(asked_page, seen, taken):
    answer = asked_page.evaluate(READER, seen)
    assert answer == {"before": [], "taken": taken}
