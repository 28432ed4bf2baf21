"""The counter: a check that cannot be drawn says so and the decision stands; how long one look lasts."""

import pytest

from tests.static.phone_parts import start_parts

_CARD = """() => import('/app/parts.js').then(({ proposalCard, renderInto }) => {
  const check = (rule) => ({ rule, title: rule, state: 'hold', sentence: `${rule} is not known` });
  const bad = { ...check('custody'), get sentence() { throw new RangeError('a check of no use'); } };
  const checks = [check('identity'), bad, check('part')];
  const answer = { checks, photos: null, pictured: true, proposed: 'hold', word: 'Hold',
    headline: 'Look again', shown: 'K7F-3M', part: 'PS-1', from: '' };
  const place = document.createElement('main');
  renderInto(proposalCard({ ctx: {} }, answer), place);
  return [place.querySelectorAll('[data-broken]').length, place.textContent];
})"""


def test_a_check_that_cannot_be_drawn_says_so_and_the_others_stand(bare_page):
    start_parts(bare_page)
    broken, told = bare_page.evaluate(_CARD)
    assert broken == 2  # the check, and the pictures to compare with
    assert "Look again" in told
    assert "identity is not known" in told.lower()


def test_what_the_headline_says_comes_before_other_checks(bare_page):
    start_parts(bare_page)
    _, told = bare_page.evaluate(_CARD.replace("headline: 'Look again'", "headline: 'part'"))
    words = told.lower()
    assert words.index("part is not known") < words.index("identity is not known")


_LOOK = """([readAgo, shown, symbolAgo]) => import('/app/parts.js').then(({ InView }) => {
  const now = 100_000;
  performance.now = () => now;
  const inView = new InView();
  inView.look('label', [], now - readAgo);
  if (shown) inView.shown();
  return inView.isSameLook(now - symbolAgo);
})"""


@pytest.mark.parametrize(
    ("read_ago", "is_shown", "symbol_ago", "same"),
    [
        pytest.param(1000, True, 0, True, id="at once"),
        pytest.param(8000, True, 0, True, id="waited for a slow computer"),
        pytest.param(8000, False, 0, False, id="not shown yet"),
        pytest.param(16_000, True, 8000, False, id="unseen, long after the label"),
    ],
)
def test_a_look_lasts_from_the_label_or_from_its_proposal_on(bare_page, read_ago, is_shown, symbol_ago, same):
    assert bare_page.evaluate(_LOOK, [read_ago, is_shown, symbol_ago]) is same
