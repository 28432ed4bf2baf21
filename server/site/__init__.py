"""`swaptrail site`: the app alone, as files for any host that serves files over HTTPS.

pages    what differs from the app of a server: its page, the page for label addresses, the headers
notes    what whoever hosts it has to know
folder   puts a whole site into a folder, or a newer one in the place of an older one
make     makes all files and has them put into their folder
"""
