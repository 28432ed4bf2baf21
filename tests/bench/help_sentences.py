"""How long the help's sentences are, page by page; the goal is 14 words on average.

    python -m tests.bench.help_sentences

Counted is what is read as running text: paragraphs and points of lists, without headings and code blocks.
"""

import re
import sys
from itertools import pairwise
from pathlib import Path

from markdown_it import MarkdownIt

HELP = Path(__file__).resolve().parents[2] / "static" / "help" / "en"
GOAL = 14
LONG = 22


def sentences(text: str) -> list[str]:
    """Return the sentences of a page, each as plain words."""
    tokens = MarkdownIt("commonmark").parse(text)
    found = []
    for before, token in pairwise(tokens):
        if token.type == "inline" and before.type != "heading_open":
            pieces = [child.content if child.type != "softbreak" else " " for child in token.children]
            found += re.split(r"(?<=[.?!:]) +(?=[A-Z0-9(])", "".join(pieces).strip())
    return [sentence for sentence in found if len(sentence.split()) > 1]


def main() -> int:
    """Print the figures and every long sentence; return 1 when the goal is missed."""
    counts = []
    for file in sorted(HELP.glob("*.md")):
        lengths = [(len(sentence.split()), sentence) for sentence in sentences(file.read_text("utf-8"))]
        counts += [count for count, _ in lengths]
        mean = sum(count for count, _ in lengths) / len(lengths)
        print(f"{mean:5.1f} words a sentence, {len(lengths):3} sentences  {file.name}")
        for count, sentence in lengths:
            if count > LONG:
                print(f"      {count}: {sentence}")
    mean = sum(counts) / len(counts)
    print(f"{mean:5.1f} words a sentence of {len(counts)} on all pages; the goal is {GOAL}")
    return int(mean > GOAL)


if __name__ == "__main__":
    sys.exit(main())
