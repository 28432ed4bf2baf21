"""The card of a return at the counter: a check that cannot be drawn says so, and the decision stands."""

from tests.static.phone_parts import start_parts

_CARD = """() => import('/app/parts.js').then(({ proposalCard, renderInto }) => {
  const check = (rule) => ({ rule, title: rule, state: 'hold', sentence: `${rule} is not known` });
  const bad = { ...check('custody'), get sentence() { throw new RangeError('a check of no use'); } };
  const checks = [check('identity'), bad, check('part')];
  const answer = { checks, photos: null, proposed: 'hold', word: 'Hold', headline: 'Look again',
    shown: 'K7F-3M', part: 'PS-1', from: '' };
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
