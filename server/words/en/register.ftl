### The register of returns that a chain's counters share: said by the server.

register-no-driver = A register needs the package psycopg. Install swaptrail with it: pip install 'swaptrail[register]'
register-no-address = That is no address of a register. It reads postgresql://USER@HOST/DATABASE.
# $register: db.example/returns
# $error: connection refused
register-trouble = The register { $register } does not do what it is asked: { $error }
# $register: db.example/returns
register-no-tables = { $register } has no tables of a register. Make them: swaptrail register init URL
# $register: db.example/returns
register-other-form = The tables in { $register } are those of another version of swaptrail.
# $register: db.example/returns
# $returns (count): 3
# $counters (count): 2
register-stands = { $register }: { $returns ->
    [one] one return
   *[other] { $returns } returns
} of { $counters ->
    [one] one counter
   *[other] { $counters } counters
}.
# $count (count): 1
register-contradictions = { $count ->
    [0] No decisions contradict one another.
    [one] One pair of decisions contradicts.
   *[other] { $count } pairs of decisions contradict.
}
# $milliseconds: 4
register-look-up = One look-up took { $milliseconds } ms.
# $decision: accept
# $code: K7F-3M
# $place: north.example
register-contradiction-title = { $decision ->
    [accept] { $code } was accepted at { $place } too
   *[refuse] { $code } was refused at { $place }
}
# $decision: accept
# $code: K7F-3M
# $place: north.example
register-contradiction = { $decision ->
    [accept] Two counters took it back. Call { $place }, and take one decision back.
   *[refuse] Another counter refused what was taken back. Call { $place }, and take one decision back.
}
