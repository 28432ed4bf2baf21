"""The app's own timers at another pace: a busy machine is later than some, and no test waits for others."""

import json
import re

from tests.browser_support import ROOT

_SCRIPT = """((factors) => {
  const plain = setTimeout;
  globalThis.setTimeout = (call, ms, ...rest) => plain(call, ms * (factors[ms] ?? 1), ...rest);
})(%s)"""


def paced(*changes: tuple[str, str, float]) -> str:
    """Return a script for a page whose timers of some lengths take so many times as long.

    Each change is a file of the repository, its constant that gives the length in ms, and the factor.
    """
    return _SCRIPT % json.dumps({_length(file, name): factor for file, name, factor in changes})


def _length(file: str, name: str) -> int:
    source = (ROOT / file).read_text("utf-8")
    return int(re.search(rf"^const {name} = ([\d_]+);", source, re.MULTILINE)[1])
