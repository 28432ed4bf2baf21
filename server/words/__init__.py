"""All text that a person reads, by language: `en/`, `es/`, one Fluent file an area.

Everything else hands out messages, an id and arguments; here they become text. `speech.py` says a message,
`figures.py` has the one rule for numbers, lists, dates and units, which `static/words/` follows to the
letter, `sheet.py` lists all messages for whoever edits them (`python -m server.words`).
A further language is one more folder here, nothing else.
Public: `speech.Speech`, `files.languages`, `files.sent_source_of`.
"""
