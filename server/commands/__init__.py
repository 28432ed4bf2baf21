"""The command line, one module a command.

`cli` reads the arguments, runs one command and turns refusals into one line each.
"""
