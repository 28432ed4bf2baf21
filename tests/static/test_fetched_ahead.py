"""What the page has fetched ahead is what the app takes: each once, and nothing else of that name."""

from tests.static.builds import wait_for_app

_AHEAD = """() => [...document.querySelectorAll('link[rel=preload], link[rel=modulepreload]')]
  .map(({ href }) => href)"""


def test_each_file_that_is_fetched_ahead_is_asked_for_once_and_the_app_stands(make_context, shared_app):
    page = make_context().new_page()
    asked = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(shared_app.base)
    wait_for_app(page)

    ahead = page.evaluate(_AHEAD)
    assert ahead
    assert {each: asked.count(each) for each in ahead} == dict.fromkeys(ahead, 1)
