"""How the app is reached: on this machine, in the local network, under a name of one's own.

`base_address` fixes scheme, name and port with the first start. `serve` runs the app until Ctrl-C and
serves this machine alone, `beyond` serves with a certificate of one's own or behind a proxy, `lan/` the
phones in the same network. `connections/` is the HTTP server under all of them: a connection waits there
until its request is whole. `terminal` draws the QR of a pairing link. Which way is meant,
`server/commands/serve.py` reads off the options.
"""
