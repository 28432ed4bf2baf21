### Slips that a printer at the counter prints: said by the server.

# $found: zpl
slips-no-printer = { $found } names no printer. It reads zpl:PLACE or escpos:PLACE; PLACE is a file, a device or tcp://HOST:PORT.
slips-no-escpos = ESC/POS needs the package python-escpos. Install swaptrail with it: pip install 'swaptrail[escpos]'
# $found: tcp://printer
slips-no-address = { $found } is no address of a printer. It reads tcp://HOST:PORT; most printers listen at 9100.
# $place: /dev/usb/lp7
# $folder: /dev/usb
slips-no-folder = { $place } cannot be printed to: there is no folder { $folder }.
# $place: /dev/usb
slips-is-folder = { $place } is a folder. Name a file or a device in it.
# $place: /dev/usb/lp0
slips-not-writable = { $place } may not be written to by this user.
# $place: /dev/sda
slips-is-disk = { $place } is a disk, no printer.
slips-none = This server has no printer: start it with --printer.
slips-decided-wanted = the id of a sensor that was decided on at the counter
slips-too-many = fewer slips that wait; see to the printer
# $part: 0263-K
slips-part = Part { $part }
# $serial: SN-0815
slips-serial = Serial { $serial }
# $why: serial number
slips-why = For: { $why }
# $name: Jo
# $moment: 2026-11-28 09:05
slips-signed = { $name }, { $moment }
