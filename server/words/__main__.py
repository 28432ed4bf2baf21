"""`python -m server.words`: the page of all words, and last what is wrong with them."""

from server.words import sheet


def main() -> int:
    """Prints the page; returns 1 where something is wrong."""
    wrong = sheet.faults()
    try:
        for line in sheet.lines():
            print(line)
    except ValueError:
        pass  # a file that cannot be read; it is named among the faults
    print("\n" + ("\n".join(wrong) if wrong else "Nothing is missing, unused or too long."))
    return 1 if wrong else 0


if __name__ == "__main__":
    raise SystemExit(main())
