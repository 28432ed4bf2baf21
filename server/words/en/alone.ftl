### The app without a server: its file, and what stands where only a server has something.

## The file of this phone

alone-file-last-shared = shared
alone-file-last-downloaded = saved to the downloads
alone-file-last-taken-in = this phone was set up from it
alone-file-title = Your file
# $content: 3 entries and 1 picture
alone-file-waits = { $content } in no file yet
alone-file-all = All of it is in your last file
alone-file-none = Nothing to save yet
alone-file-at-once = What you record is saved on this phone at once.
# $content: 3 entries and 1 picture
alone-file-holds = This phone holds { $content }.
# $content: 3 entries and 1 picture
# $ago: 2 hours ago
alone-file-holds-unsaved = This phone holds { $content }, the oldest unsaved { $ago }.
alone-file-last = Last file:
# $how: shared
# $at: 28 Nov 2026, 09:05
alone-file-last-how = { $how }, { $at }.
alone-file-failed = No file was made
alone-file-making = Making the file
# $done (count): 3
# $all (count): 12
alone-file-progress = Making the file: { $done } of { $all } pictures
alone-file-progress-label = How much of the file is made
alone-file-ready = The file is ready, not saved yet
# $content: 3 entries and 1 picture
# $size: 1.2 MB
alone-file-content = { $content }, { $size }
# $count (count): 2
alone-file-damaged = { $count ->
    [one] { $count } picture is damaged on this phone and is
   *[other] { $count } pictures are damaged on this phone and are
} not in it. Everything else is.
alone-file-handed-on = Handed on
alone-file-download = The download has begun
alone-file-handed-on-lead = The other app has the file. Look there that it arrived: this app cannot see it.
alone-file-download-lead = Look for it in the downloads of this phone, and keep a copy somewhere else: a lost phone takes its downloads along.
alone-file-not-there = It is not there
alone-file-about = What the file is for
alone-file-about-lead = It holds everything on this phone: jobs, sensors, pictures. Another phone is set up from it, and a server takes it in. Keep it where a lost phone does not take it along. Anyone who has it can read it.
alone-file-take-in = Take in a file from another phone
alone-show-jobs = Show the jobs
alone-file-to-downloads = To the downloads
alone-file-save = Save it
alone-file-share = Share it
alone-file-make = Make the file

## What only a server has

alone-pairing-title = A pairing link
alone-pairing-heading = Nothing to pair here
alone-pairing-what = This app works by itself, for one person. A pairing link belongs to a server: open it at the address of that server, as it was given to you.
alone-pairing-file = What you recorded here gets there as a file.
alone-phones-title = Phones
alone-phones-heading = No other phones are known here
alone-phones-what = A second phone is set up from your file. Where you worked on both, each takes in the file of the other.
alone-returns-title = Returns
alone-returns-heading = Returns are decided elsewhere
alone-returns-what = Take the sensor to the parts counter with its return slip and its record. Both are on the page of the sensor.
alone-returns-scan = Scan a label

## Taking in the file of another phone

alone-take-in-title = A file from another phone
alone-take-in-heading = Take in a file
alone-take-in-adds = What is in the file and not on this phone is added. What is here stays as it is.
alone-take-in-sets-up = Pick the file that the other phone saved. Its jobs, sensors and pictures are then on this phone, too.
alone-take-in-name = Its name begins with swaptrail and a date. If it is not on this phone yet, share it from the other phone, or copy it here.
alone-take-in-label = The file of the other phone
alone-take-in-reading = Reading the file
alone-take-in-another = Choose another file
alone-take-in-choose = Choose the file
alone-take-in-checking = Checking the file
# $done (count): 3
# $all (count): 12
alone-take-in-progress = Taking it in: { $done } of { $all } pictures
alone-take-in-progress-label = How much was taken in
