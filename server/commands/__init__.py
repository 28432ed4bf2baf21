"""The command line, one module a command: its options, what it prints, and the call of what does the work.

`cli` has the list of commands and loads the one that is asked for; a refusal leaves as one line. `options`
has what several commands share. A further command is a module with a `command` in it, a line in
`cli.COMMANDS`, and its row in README.md and in `static/help/en/commands.md`.
"""
