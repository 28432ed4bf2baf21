### What a phone says of itself: what is sent or saved, where the app is.

phone-this = This phone
phone-no-checks = Checks are not available
phone-read = I have read this
phone-not-on-record = Not on record yet
phone-save-again = Save again
phone-do-not-save = Do not save it

## A new version; the clock.

phone-version = A new version is ready
phone-version-waits = It waits until what you entered is on record.
phone-version-here = It is on this phone, complete. What you have begun to enter stays as it is.
phone-version-change = Change over now
phone-clock = The clock of this phone
# $span: 12 minutes
# $way: ahead
phone-clock-off = It is { $span } { $way ->
    [ahead] ahead of
   *[behind] behind
} the server's. What you record carries the time of this phone; its order does not depend on it. Set the clock in the settings of the phone.

## What waits to be sent.

phone-unpaired = This phone is not paired
phone-unpaired-note = You can work, and everything is kept here, but nothing reaches the server.
phone-pair = Pair this phone
# $what: 3 entries and 2 pictures
phone-not-sent = { $what } not sent yet
# $ago: 3 hours ago
phone-the-oldest = , the oldest { $ago }.
# $count (count): 3
phone-jobs = { $count ->
    [one] { $count } job
   *[other] { $count } jobs
}
# $count (count): 3
phone-loose = { $count ->
    [one] { $count } other entry
   *[other] { $count } other entries
}
# $count (count): 3
phone-entries = { $count ->
    [one] { $count } entry
   *[other] { $count } entries
}
# $count (count): 2
phone-pictures = { $count ->
    [one] { $count } picture
   *[other] { $count } pictures
}
phone-all-sent = All sent
phone-saved-here = Saved on this phone.
# $ago: 3 hours ago
phone-saved-here-since = Saved on this phone, the oldest { $ago }.
# $size: 1.4 MB
phone-pictures-take = The pictures take { $size }.
phone-nothing-waits = Nothing waits on this phone.
# $ago: 3 hours ago
phone-last-exchange = Last exchange with the server { $ago }.
phone-no-exchange = No exchange with the server since the app was opened.
# $done (count): 3
# $all (count): 9
phone-sent-entries = { $done } of { $all } entries
# $done (count): 3
# $all (count): 9
phone-sent-pictures = { $done } of { $all } pictures
# $what: 3 of 9 entries, 1 of 2 pictures
phone-sent-so-far = Sent so far: { $what }
phone-how-much = How much is sent
# $span: 40 seconds
phone-again-in = Trying again in { $span }

## The mark in the head of every screen.

# $count (count): 3
phone-mark-unpaired = { $count ->
    [0] not paired
   *[other] not paired, { $count }
}
# $count (count): 3
phone-mark-not-taken = { $count } not taken
# $count (count): 3
phone-mark-sending = sending { $count }
# $count (count): 3
phone-mark-not-sent = { $count } not sent yet
phone-mark-server = server trouble
phone-mark-offline = offline
phone-mark-sent = all sent
phone-mark-nothing = nothing to send
# $count (count): 3
phone-mark-no-file = { $count } only on this phone
phone-mark-saved = all in a file
phone-mark-empty = nothing recorded yet

## The reminder to save the file.

phone-in-no-file = only on this phone. See how to save it.
phone-only-here = Only on this phone
phone-save-file = Save the file
# $stage: urgent
# $count (count): 3
phone-stake = { $stage ->
    [urgent] would be gone with this phone
   *[due] { $count ->
        [one] is on this phone only
       *[other] are on this phone only
    }
}.
# $stage: urgent
# $count (count): 3
# $span: 3 hours
phone-stake-since = { $stage ->
    [urgent] would be gone with this phone
   *[due] { $count ->
        [one] is on this phone only
       *[other] are on this phone only
    }
}, the oldest for { $span }.
# $ago: 3 hours ago
phone-last-file = The last file is from { $ago }.
phone-no-file = There is no file yet.
phone-page-cleared = Some phones clear a page that is not on the home screen after a week without a visit.
phone-may-remove = The browser may remove the data when space runs short.

## A file that is made, a file that is taken in.

# $error: Error: no storage
phone-file-failed = The file could not be made: { $error }. Everything is still on this phone. Close the app, open it and try again.
phone-not-shared = This phone did not share the file. Save it on the phone, and copy it from there.
phone-full-title = Not taken in: this phone is full
phone-unreadable = The file could not be read
phone-unreadable-do = This phone no longer gives it out; it may lie in another app or on a drive. Nothing was changed. Copy it onto the phone and pick it again.
# $what: 3 entries and 2 pictures
phone-came-in = { $what } came in.
# $count (count): 3
phone-known = { $count ->
    [one] { $count } entry of it was here already.
   *[other] { $count } entries of it were here already.
}
phone-taken-in = Taken in
phone-file-empty = The file is empty.
# $count (count): 5
# $what: 3 entries and 2 pictures
phone-cut-off = The file was cut off: { $count ->
    [0] its last line is
    [one] { $what } is
   *[other] { $what } are
} missing. Pass it on once more from the phone that made it.
phone-taken-in-partly = Taken in as far as it goes
phone-way-back = It is
# $moment: 28 Nov, 09:05
# $what: 3 entries and 2 pictures
phone-way-back-holds = of { $moment }, with { $what }.
phone-take-in-that = Take in that file

## Whether the server is trusted.

phone-no-trust = This phone does not trust the server
phone-no-trust-note = The app was opened past a warning of the browser, so it will not open without a network. What you record here is kept.
phone-maybe-no-trust = The server: not reachable, or not trusted
phone-maybe-no-trust-note = Is this phone in its network, and the server on? If both are so, the phone may have lost its trust, or its clock is wrong.
phone-trust = Trust the server

## Whether this phone keeps it.

phone-keeps = Does this phone keep it?
phone-promised = The browser has promised to keep the data
phone-not-promised = The browser may remove the data when space is short
phone-installed = The app is on the home screen
phone-not-installed = The app is not on the home screen
phone-offline-ready = It starts without a network
phone-offline-not-ready = It needs a network to start
# $room: 40 MB in use, 3.1 GB left at most
phone-short = Space runs short: { $room }
phone-how-to-keep = How to keep the data safe
phone-ask-browser = Ask the browser to keep it
phone-send-soon = The browser has not promised to keep what is not sent. Send soon.
# $room: 40 MB in use, 3.1 GB left at most
phone-short-notice = Space runs short on this phone: { $room }. See what helps.
# $used: 40 MB
phone-room-unknown = { $used } in use; the browser does not say how much is left
# $used: 40 MB
# $left: 3.1 GB
phone-room = { $used } in use, { $left } left at most
phone-take-pictures-off = Take sent pictures off this phone
phone-how-to-install = How to put it on the home screen

## On the home screen.

phone-can-get-lost = This can get lost
phone-so-it-stays = So that it stays
phone-install = Put Swaptrail on the home screen
phone-see-what-waits = See what waits
phone-not-now = Not now
phone-install-line = Keep Swaptrail on the home screen
phone-put-it-there = Put it there
phone-show-how = Show me how
phone-install-iphone = This is a page in the browser, which forgets a page that was not opened for a week. The app on the home screen starts empty: see how first.
phone-install-calm = This is a page in the browser. On the home screen it starts in one tap, and the phone keeps its data longer.
# $what: 3 entries and 2 pictures
phone-install-strong = Only this page has { $what }. The browser has not promised to keep it. Send it soon.
phone-on-home-screen = On the home screen
phone-is-installed = It is on the home screen
phone-install-lead = It then starts in one tap, and phones are slower to throw away what it keeps.
phone-install-button = Put it on the home screen
phone-android = On an Android phone
phone-android-1 = Tap the three dots in the browser's bar.
phone-android-2 = Tap “Add to Home screen” or “Install app”, and confirm.
phone-android-note = Without internet some phones can only make a shortcut to this page. That works too, with the same records.
phone-iphone = On an iPhone
phone-iphone-1 = In Safari, tap the square with an arrow up. Newer ones keep it behind three dots.
phone-iphone-2 = Tap “Add to Home Screen” further down the list, then “Add”.
phone-starts-empty = It starts empty there
phone-shares-nothing = On an iPhone the app on the home screen shares nothing with this page.
phone-save-first = Save your file first, and take it in there.
phone-save-your-file = Save your file
phone-pair-there = Put it there first. Then open it there and pair it.
# $paired: no
phone-send-only-here = { $paired ->
    [no] Pair this page and send
   *[yes] Send
} what is only here:
phone-nothing-only-here = Nothing waits here: all of it was sent.
phone-make-link = Make a pairing link and copy it:
phone-pair-with-link = Put the app on the home screen, open it there, and pair it with the copied link.
phone-menu-iphone = A phone: 1, the square with an arrow up in the bar at the bottom. 2, Add to Home Screen in the list it opens.
phone-menu-iphone-entry = Add to Home Screen
phone-menu-android = A phone: 1, the three dots at the top right. 2, Add to Home screen, or Install app, in the list they open.
phone-menu-android-entry = Add to Home screen
phone-menu-android-or = or Install app

## What keeps a record, with a server and without one.

phone-lost = This phone lost its data: the browser removed it. What was sent is safe on the server; what was not sent is gone.
phone-lost-alone = This phone lost its data: the browser removed it. Only the last file that you saved still has it.
phone-forked = The same phone identity was in use twice, perhaps after a restored backup. This phone has a new one now; what it had not sent is kept and will be sent.
phone-forked-alone = The same phone identity was in use on two phones, perhaps after one was copied to the other. This phone has a new one now; everything it recorded is kept.
phone-renewed = This phone has a new identity: the old one had ended, or its key was lost. What it had not sent is kept and will be sent.
phone-full-save = What you entered is still here. Free some space on the phone, or send what waits, then save again.
phone-full-save-alone = What you entered is still here. Free some space on the phone, then save again.
phone-full-take-in = Nothing was changed. Free some space on the phone, or send what waits, then take the file in again.
phone-full-take-in-alone = Nothing was changed. Free some space on the phone, then take the file in again.
phone-safe = Only what was sent is safe from a lost phone.
phone-safe-alone = Only what is in a file that you keep elsewhere is safe from a lost phone.
phone-safe-either-way = What was sent is safe either way.
phone-safe-either-way-alone = Save your file all the same.
phone-no-room = Send what waits and delete something else from the phone. Pictures that the server has can go from this phone: they are shown from there.
phone-no-room-alone = Save the file first, then delete something else from the phone: films and other apps take most.
phone-checks-later = when the checks run again, here or on the server
phone-checks-later-alone = when the checks run again
# $host: yard.example
phone-of-record = on a phone that is paired with { $host }
phone-of-record-alone = on the phone that keeps it
