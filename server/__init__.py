"""Swaptrail: the Flask app and, in `core`, the domain that phone and server share.

Each folder is a room with one concern; its docstring says how its modules combine. Imports between rooms run
down only, from the command line to the core: `tests/server/test_floors.py` has the floors.
"""
