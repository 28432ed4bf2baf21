### What `swaptrail` prints in a terminal.

commands-usage = Usage:
commands-options = Options
commands-heading = Commands
commands-program = Keeps the books of swap tests on parking sensors.
commands-more = `swaptrail COMMAND --help` says what a command takes.
commands-help = Show this and end.
commands-language = The language of what is printed: the name of its folder, such as en.
# $folder: ./data
commands-data = The data folder ({ $folder }).
# $port: 8765
commands-port = Fixed at first start ({ $port }).
commands-ends = Ctrl-C ends it.
# $what: the code is small
commands-warning = Warning: { $what }

## What is wrong in what was typed.

# $wrong: No such command 'sing'.
# $usage: swaptrail COMMAND ...
commands-misuse = { $wrong } (usage: { $usage }; --help says more)
# $name: --sing
commands-no-such-option = No such option '{ $name }'.
# $name: sing
commands-no-such-command = No such command '{ $name }'.
# $name: --out
commands-missing = { $name } is missing.
# $name: --port
# $why: found "x", wanted a whole number
commands-bad-value = { $name }: { $why }
# $found: "x"
# $wanted: a whole number
commands-found = found { $found }, wanted { $wanted }
commands-whole-number = a whole number of at most 18 figures
# $name: --port
commands-wants-value = { $name } wants a value behind it.
# $name: --lan
commands-no-value = { $name } takes no value.
# $given: one.zip
commands-left-over = { $given } is too much.
commands-stopped = Stopped before it was done.

## What each command does, in a line.

commands-demo = the demo scenario, ready to click, on loopback
commands-serve = serve one data folder
commands-trust = the authority that phones trust: fingerprint, end, how to take it off a phone
commands-site = the app alone as static files: one person, no server
commands-reason = the engine alone: JSON in, JSON out
commands-labels = labels to print, and what became of the printed ones
commands-record = the record of a sensor or a job as a file of its own
commands-lessons = what the closed jobs teach: rates, minutes, how they came out
commands-verify = whether what is kept is as it was recorded
commands-backup = the whole data folder in one file, while it is served
commands-restore = a new data folder from a backup
commands-take-in = what a phone recorded, from the file it made
commands-rebuild = make what follows from the log anew, and compare
commands-rejoin = say of a data folder that it came back from elsewhere
commands-register = the register of returns that the counters of a chain share
commands-make-room = put into a file what was set aside

## backup, restore, rebuild, rejoin, make-room, take-in, verify, site, reason

commands-backup-help =
    Put the whole data folder into one file, also while it is served.

    FILE.zip is a file that does not exist yet.
commands-restore-help =
    Make a new data folder from a backup; nothing is overwritten.

    FILE.zip is the backup.
commands-rebuild-help = Make everything that follows from the log anew, and say what differed.
commands-rejoin-help = Say of a data folder that it came back from elsewhere. Phones then send again what they have, and fetch everything.
commands-make-room-help = Move entries that nobody proved and somebody set aside into a file, and forks with them. Then there is room for others. They counted for nothing.
commands-make-room-out = A new file, with one entry a line. Pictures are not in it.
commands-register-help = Make the register of returns that the counters of a chain share (init), or say how it stands (check). URL is postgresql://USER@HOST/DATABASE.
commands-take-in-help =
    Take in what a phone recorded: what it could not send, or all of it. Twice is harmless.

    FILE is the file that the phone made.
commands-verify-help =
    Tell whether what is kept is as it was recorded, and where it is not.

    FILE is a record, a backup, a phone's file, or a data folder. Ends with 0 when it is intact, with 1 when it was altered, with 2 when it is none of these.
commands-verify-data = The data folder that knows whose seals are whose.
commands-site-help = Write the app alone as static files: one person, no server.
commands-site-out = A new folder, or one with an earlier site.
commands-reason-help =
    Run the reasoning alone: JSON in, JSON out.

    CASE.json says which positions, sensors and tests there are.

## record

commands-record-help =
    Write the record of a sensor or a job as a file of its own. Pictures without room go in as smaller versions.

    UNIT-OR-JOB is the code on a label, a sensor's id or a job's id.
commands-record-out = A zip file that does not exist yet.
# $file: k7f.html
# $better: k7f.zip
commands-record-ending = --out { $file }: what is written is a zip file. Name it { $better }.
# $file: k7f.zip
# $title: sensor K7F-3M
# $entries (count): 41
# $photos (count): 6
commands-record-written = { $file }: the record of { $title }, { $entries ->
    [one] { $entries } entry
   *[other] { $entries } entries
}, { $photos ->
    [one] { $photos } photo
   *[other] { $photos } photos
}.
# $photos (count): 2
commands-record-smaller = In it as a smaller version, for want of room: { $photos ->
    [one] { $photos } photo. The original stays here.
   *[other] { $photos } photos. The originals stay here.
}
# $photos (count): 2
commands-record-absent = Named in it, but not here or too large for it: { $photos ->
    [one] { $photos } photo
   *[other] { $photos } photos
}.
# $key: 1a2b 3c4d
commands-record-signed = Signed with the key { $key }; read that out to whoever takes the file.

## demo

commands-demo-help = Show the demo scenario, ready to click, on loopback.
commands-demo-data = Keep the demo's data here; without it they go when it ends.
commands-demo-building = Making the demo data. That takes up to a minute.
commands-demo-ready = The demo is ready. Open this link in a browser on this machine:
commands-demo-counter = And this one in another browser, or in a private window, for the parts counter:
commands-demo-kept = The data from last time is used as it was left.
# $folder: data
commands-demo-other-data = { $folder } holds data that is no demo. Name another --data folder, or serve this one with `swaptrail serve`.

## trust

commands-trust-help = Tell of the authority that phones trust: its fingerprint, its end, how to take it off a phone.
# $folder: data
commands-trust-none = { $folder } has no certificate authority: it was never served with --lan. Phones that open it trust whatever certificate it was given otherwise.
# $address: https://bench.local:8765
commands-trust-by = { $address } is trusted by phones that have this certificate authority:
commands-trust-name = Name
commands-trust-until = Good until
commands-trust-for = Good for
commands-trust-fingerprint = Fingerprint
commands-trust-off = To take it off a phone:
commands-trust-no-leaf = The server has no certificate of its own now; it makes one when it is started.
# $until: 28 November 2026
commands-trust-leaf = The server's own certificate is good until { $until }; it is made anew in time while it serves.

## serve

commands-serve-help = Serve one data folder until Ctrl-C: on this machine alone, unless another way is asked for.
commands-serve-in-lan = In the local network
commands-serve-own-name = Under a name of your own
# $host: localhost
commands-serve-host = Name in the address, fixed at first start ({ $host }).
commands-serve-pair = Print a pairing link although a phone is paired, for a phone at the bench or, with ROLE counter, at the parts counter.
commands-serve-warranty-days = How many days the yard answers for its work, on all its phones (kept; at 0 each has its own).
# $days (count): 30
commands-serve-return-days = How many days after it came off a sensor is taken back (kept; { $days }).
commands-serve-register = Ask the other counters of a chain, by this register (postgresql://USER@HOST/DATABASE).
commands-serve-printer = Print a slip after each decision at the counter, in ZPL or ESC/POS: zpl:PLACE or escpos:PLACE, where PLACE is a file, a device or tcp://HOST:PORT.
commands-serve-lan = For the phones in the same network, over HTTPS of its own.
commands-serve-name = NAME.local, a DNS name of your own, or a private address; fixed at first start (a new name).
commands-serve-trust-port = Of the page for phones (one above --port).
commands-serve-interface = The network, by name or address (the one to the router).
commands-serve-cert = Over HTTPS with this certificate for --host, PEM, chain included.
commands-serve-key = Its key, PEM; both are read again when they change.
commands-serve-behind-proxy = To a reverse proxy that has the certificate for --host and sets X-Forwarded-For, -Proto, -Host.
commands-serve-bind = Listen at this address alone (--cert: every one of this machine; --behind-proxy: 127.0.0.1).
# $given: --cert
# $missing: --key
commands-serve-half = { $given } is given without { $missing }. Give both files, or neither.
# $first: --lan
# $second: --cert
commands-serve-two-ways = { $first } and { $second } exclude each other: each is a way for phones to come in, and a data folder has one address. Give one of them.
# $given: --name bench
commands-serve-lan-only = { $given } goes with --lan. Add --lan, or leave it out.
# $host: bench
commands-serve-host-in-lan = --host { $host } does not go with --lan. Give the name with --name.
# $address: 10.0.0.4
commands-serve-bind-alone = --bind { $address } goes with --cert and --key, or with --behind-proxy. Leave it out.

## labels

commands-labels-help =
    Print new labels, show what became of the printed ones, or take some out of use.

    Exactly one of --count, --list, --again and --void says which.
commands-labels-layout = Layout
commands-labels-count = Print so many new labels.
commands-labels-list = Show the batches and what became of them.
commands-labels-again = Write the labels of a batch that are on no sensor again.
commands-labels-void = Take a label, or what is left of a batch, out of use.
commands-labels-out = A new file that ends in .svg or .pdf.
commands-labels-reason = Why it goes out of use.
commands-labels-force = Print even where nothing will read them.
# $cm (count): 20
commands-labels-distance = Scanned from so far ({ $cm }).
commands-labels-paper = A sheet (a4).
commands-labels-grid = Columns and rows (as many as fit).
commands-labels-label = Size of a label on a sheet, mm (26x32).
commands-labels-margin = From the paper's left and upper edge, mm.
commands-labels-gap = Between columns and between rows, mm (0x0).
commands-labels-precut = The sheet is cut already: no marks, no note.
commands-labels-roll = A roll with one label a page, mm.
commands-labels-dpi = Dots of the printer (roll 203, sheet 300).
# $ways: --count or --list
commands-labels-no-way = One of { $ways } is missing.
# $first: --count
# $second: --list
commands-not-together = { $second } does not go with { $first }.
# $given: 0
# $most (count): 500
commands-labels-count-range = --count { $given } is out of range. Take 1 to { $most }.
commands-labels-written-before =
    These were written before: destroy what was printed of them, so that none is on two sensors.
    A phone that has not sent yet may have used some.
# $batch: 3
# $count (count): 24
# $address: https://bench.local
# $folder: data
commands-labels-made =
    Batch { $batch }: { $count ->
        [one] { $count } label
       *[other] { $count } labels
    } for { $address },
    an address that stays with the data in { $folder }.
# $batch: 3
commands-labels-title = Labels, batch { $batch }
commands-labels-none = No labels were printed here yet.
commands-labels-head-batch = batch
commands-labels-head-made = made (UTC)
commands-labels-head-labels = labels
commands-labels-head-free = on paper
commands-labels-head-on = on a sensor
commands-labels-head-void = void
commands-labels-head-layout = layout
# $batch: 3
commands-labels-unfinished = { "       " }its file was never finished: --again { $batch } writes it
# $code: K7F
# $why: A letter is wrong.
commands-labels-void-wrong = --void { $code }: { $why }
# $code: K7F-3M
commands-labels-void-foreign = --void { $code }: this label was not printed here.
# $count (count): 2
# $batch: 3
commands-labels-gone = { $count ->
    [one] { $count } label of batch { $batch } is out of use.
   *[other] { $count } labels of batch { $batch } are out of use.
}
commands-labels-out-missing = --out is missing. Name the file to write; it ends in .svg or .pdf.
# $file: labels.txt
commands-labels-out-ending = --out { $file } ends in neither .svg nor .pdf. Give it one of the two.
# $file: paper/labels.pdf
# $folder: paper
commands-labels-out-folder = --out { $file }: the folder { $folder } does not exist. Make it first.

## lessons

commands-lessons-help = Print what the closed jobs of a data folder teach: rates, minutes, and how the work came out.
commands-lessons-json = As JSON: chances in parts per million, minutes in hundredths.
commands-lessons-csv = As CSV, with the same figures.
commands-lessons-since = Jobs closed from this day on, such as 2026-03-01.
commands-lessons-give = Write the own figures, sealed, for another yard: no vehicle, no name, no code, no day.
commands-lessons-weigh-in = Let the figures of another yard count, once its seal is confirmed.
commands-lessons-weight = What one of its jobs weighs beside one of yours, 0.01 to 1 (1).
commands-lessons-whose = Whose seal it is, said once its fingerprint was compared with its owner.
commands-lessons-compared = How the fingerprint was compared.
commands-lessons-yards = List the yards whose figures count, each with its weight.
commands-lessons-take-out = Let the figures of a yard, by name or seal, count no more.
commands-lessons-date = a day such as 2026-03-01
# $option: --weight
# $other: --weigh-in
commands-lessons-goes-with = { $option } goes with { $other }.
# $what: file
commands-lessons-wanted = { $what ->
    [file] the name of a file
    [name] the name of the yard
   *[yard] the name or the seal of a yard; --yards lists them
}
# $words: Self-test
# $figure: 1.4 min
commands-lessons-row = { "" }  { $words }: { $figure }
