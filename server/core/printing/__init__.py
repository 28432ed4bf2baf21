"""Labels on paper: how they lie on it, how large each symbol is, and what will be hard to read.

Both hosts print from here: the server into files, a phone without a server through its browser. Whoever
asks (command line, print screen) hands in texts by name. `measures` reads lengths, `layout` makes them a
page in printer dots, `scan_distance` says how wide a module has to be, `face` fits symbol and code on one
label, `sheet` puts labels on pages, `advice` says what came out. A symbol itself is drawn by each
host's own library: it says which version the text of a label takes at each level, and draws the modules.
"""
