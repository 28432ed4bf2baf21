### Printing labels: layouts, batches, the sheet for the printer.

## A batch

# $number: 3
labels-batch-title = Batch { $number }
labels-batch-new = Print new labels
labels-batch-all = All batches
labels-again = The print failed or was lost
# $count (count): 12
labels-again-lead = { $count ->
    [one] The { $count } that is
   *[other] The { $count } that are
} on no sensor can be made once more. First destroy what was printed of them: one code on two sensors puts both in doubt.
labels-again-unsent = A phone that has not sent yet may have used some.
# $count (count): 12
labels-again-button = It is destroyed: make these { $count } again
labels-gone = Some are torn or lost
# $count (count): 12
labels-gone-lead = Tap those that are gone; without any tapped, all { $count } go out of use.
labels-gone-group = Labels on paper
labels-gone-reason = What happened to them
labels-gone-reason-fault = Say in a few words what happened to them.
# $count (count): 3
labels-gone-button = Take { $count ->
    [one] this label
   *[other] { $count } labels
} out of use
labels-on-sensor = On a sensor
labels-void = Void
labels-void-was-on = the sensor it was on

## All batches

labels-title = Labels
labels-lead = Each printing is a batch. No code is ever printed for a second sensor.
labels-none = No labels were printed yet
labels-none-lead = Print a sheet or a roll, and keep some in the tool bag.
labels-help = Which labels hold
labels-print = Print labels
# $number: 3
# $day: 28 Nov 2026
labels-batch-made = Batch { $number } · { $day }
labels-unfinished = Its file was never finished.
# $paper (count): 50
# $sensor (count): 4
# $void (count): 2
labels-counts = { $paper } on paper · { $sensor } on a sensor · { $void } void

## What was just made

# $count (count): 12
labels-ready = { $count ->
    [one] { $count } label is
   *[other] { $count } labels are
} ready to print
labels-ready-how = Print at 100 %, not “fit to page”, on matt stock. Scan one before you print the rest.
# $number (count): 2
labels-save-page = Save page { $number }
# $kind: PDF
labels-save-kind = Save the { $kind }
labels-preview-one = One label, larger than it is
# $count (count): 54
labels-preview-sheet = A sheet with { $count } labels
# $count (count): 12
labels-few-codes = Only { $count } codes are left that were never printed. Print at most so many.
labels-to-printer = To the printer
labels-format-pdf = PDF
labels-format-svg = SVG, a file a page

## Choosing a layout

labels-on-a4 = A4 sheet
labels-on-letter = US Letter sheet
labels-on-roll = Roll, one label a page
labels-dpi-203 = 203 dpi, 8 dots a mm
labels-dpi-300 = 300 dpi, 12 dots a mm
labels-distance-10 = 10 cm
labels-distance-20 = 20 cm
labels-distance-30 = 30 cm
labels-roll-50 = 50 x 30 mm
labels-roll-30 = 30 x 20 mm
labels-roll-58 = 58 mm roll
labels-roll-80 = 80 mm roll
labels-columns = Columns
labels-rows = Rows
labels-width = Label width, mm
labels-height = Label height, mm
labels-margin-left = Left margin, mm
labels-margin-top = Top margin, mm
labels-gap-across = Gap across, mm
labels-gap-down = Gap down, mm
labels-on = What do you print on?
labels-distance = How far away is the phone when it scans?
labels-how-many = How many labels
# $count (count): 50
labels-how-many-roll = Left empty: { $count }.
labels-how-many-sheet = Left empty: one full sheet.
# $typed: 9999
# $most (count): 2000
labels-how-many-fault = Found { $typed }; 1 to { $most } can be made at once.
labels-format = Which kind of file?
# $count (count): 12
labels-make = Make { $count ->
    [one] { $count } label
   *[other] { $count } labels
}
labels-make-none = Make labels
labels-roll = Which labels are on it?
labels-dpi = How fine does the label printer print?
labels-measures = Measures of the sheet
labels-measures-lead = Left empty: as many labels of 26 x 32 mm as fit, with marks to cut along.
labels-precut = The sheet is cut into labels already: no marks
labels-fault = This can't be printed so
labels-force = Print them all the same: nothing may read them
labels-ask-again = Ask once more
labels-looking = Looking how it comes out.
labels-hard-to-read = Hard to read
labels-outcome = How it comes out
labels-outcome-one = One label. Its code here is none of those that are printed.
# $count (count): 54
labels-outcome-sheet = The sheet, { $count } labels.

## The sheet for the printer

# $number: 3
labels-file = Labels of batch { $number }
labels-save-file = Save as a file
labels-share-file = Share as a file
# $width: 210
# $height: 297
labels-window = In the print window choose paper of { $width } x { $height } mm, a scale of 100 % and no margins.
# $count (count): 2
labels-pages = { $count } pages.
# $number (count): 1
labels-page = Page { $number } with labels
# $count (count): 12
labels-print-them = Print { $count ->
    [one] it
   *[other] all { $count }
}
labels-bar = Then measure the bar at the foot: it is 100 mm long.
labels-before = These labels went to the printer before
labels-before-lead = A label on paper twice could end up on two sensors. If that print failed, open the batch: what is on no sensor can be printed again from there.
labels-open-batch = Open the batch
