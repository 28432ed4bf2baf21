### The camera: labels, symbols, pictures.

scan-again = Scan again
scan-mixed = I mixed them up
scan-type = Type the code
scan-check = Check the code
scan-use-camera = Use the camera
scan-written = It is written
scan-another-way = Another way
scan-nothing-typed = Nothing typed yet
scan-nothing-typed-do = Read the label and type its five characters.
scan-unchecked = The label could not be checked
scan-hold = About 20 cm away
scan-hold-marks = Label it, show its marks
# $wanted: yes
scan-pictured = { $wanted ->
    [no] Keep a picture
   *[yes] No picture
}
scan-write = Write a code by hand
scan-close = Close the camera
scan-code = Code on the label
scan-code-note = Five characters. The hyphen may be left out. Of a damaged code, type two you can read.
# $count (count): 2
scan-near = { $count ->
    [one] Is it this one?
   *[other] Is it one of these?
}
scan-near-ask = Tap it only if all you can still read is the same.
# $count (count): 3
scan-near-more = { $count ->
    [one] { $count } more has this too: type one more character.
   *[other] { $count } more have this too: type one more character.
}
scan-no-label = There is no label: write a code by hand
scan-write-lead = Write this code on a piece of tape with a felt pen, and stick it on now.
scan-write-note = Nothing else has it. Compare it once, character by character, before you put the part down.
# $count (count): 2
scan-which = { $count } labels are in view
scan-which-ask = Which one is on the part in your hand?

## The maker's symbol.

scan-maker-again = Read the symbol again
scan-maker = Read the maker's symbol
scan-maker-where = The maker's symbol, on the part or its bag
scan-maker-aim = Bars, or a square of dots
scan-maker-close = Close the camera and type
scan-maker-unchecked = The symbol could not be checked
scan-maker-none = None of these
scan-nothing-opened = Nothing was opened, and nothing was recorded.

## Pictures.

scan-no-picture = There is no picture yet. Wait until you see one, or use a file.
scan-keep = Keep this picture
scan-take-again = Take it again
scan-take = Take the picture
scan-go-back = Go back

## The camera itself.

scan-hold-code = Hold the code about 20 cm away
scan-from-picture = From a picture
scan-show-position = Show the whole position
scan-use-picture = Use a picture
scan-no-reading = Codes cannot be read on this phone. Type the code that is printed beside it.
scan-reading = Reading the picture
scan-no-code = No code found in this picture. Take it closer, or type the code.
scan-not-opened = This picture could not be opened. Take another, or type the code.
scan-start = Start the camera again
scan-light-off = Light off
scan-light-on = Light on
scan-other-camera = Other camera
scan-closer = Closer
scan-camera-not-allowed = The camera is not allowed
scan-camera-not-allowed-do = Allow the camera for this page in the settings of the browser, then start it again.
scan-camera-none = No camera found
scan-camera-none-do = This device shows no camera to the browser.
scan-camera-silent = The camera does not answer
scan-camera-silent-do = Another app may be using it. Close that app, then start it again.
scan-camera-unfit = This camera does not fit
scan-camera-unfit-do = Choose another camera, then start it again.
scan-camera-insecure = The browser keeps the camera shut
scan-camera-insecure-do = Cameras work only on a secure address. Open the app by its https address.
scan-camera-stopped = The camera stopped while starting
scan-camera-stopped-do = Start it again.
scan-camera-not-in-front = The page was not in front
scan-camera-not-in-front-do = Start the camera again.
scan-camera-not-offered = This browser offers no camera
scan-camera-not-offered-do = Open the app by its https address in an up-to-date browser.
scan-camera-unknown = The camera did not start
scan-camera-unknown-do = Start it again.
