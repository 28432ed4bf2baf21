"""Serves phones in the same network: HTTPS by an authority of the installation, under a name of its own.

`serve_lan` is `serve --lan` and puts the parts together. It prints what `greeting` words; `swaptrail trust`
(`server/commands/trust.py`) tells of the same authority later.

* The place: `naming` chooses and checks the name, `address` fixes it with its ports, `network` finds the
  addresses that phones are sent to, `announce` makes the name known to them.
* The certificates: `authority` is what phones trust, made once; `leaf` is what the server shows, and
  `certified` what both are; `renewal` keeps the leaf fresh in a file, which the HTTP server reads anew.
  `instants` is their clock.
* The phones: `trust_page` leads them through their settings, over plain HTTP on a port of its own; `page/`
  has its text, looks and pictures.

Nothing here knows of jobs, and nothing outside knows of certificates: `serve_lan` gives the HTTP server a
file.
"""
