"""Which phones may come in, and in whose name they speak.

`pairing` lets a phone in by a one-time link (`try_limit` against guessing, `pairing_log` notes who came and
went), `sessions` knows it by its cookie, `roles` says what it may ask, `devices` which device ids are its
own and `certificates` which key speaks for each, `paired` lists phones and puts one out. `installation`
tells a phone whom it talks to; `signing` has the installation's key.
"""
