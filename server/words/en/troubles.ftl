### What went wrong on the phone, and what to do.

troubles-no-start-heading = Swaptrail could not start
# $error: Error: no storage
troubles-no-start = What was recorded is not touched. Close the app and open it again. ({ $error })
troubles-no-record = Swaptrail cannot record here
troubles-not-secure = This address is not secure, so the browser keeps camera and offline storage shut, and nothing could be recorded. Open the app by its https address.
troubles-too-old = This browser is too old to keep your records. Update it, or use another one.

troubles-full = Not saved: this phone is full
troubles-not-written = Not saved: this phone could not write
troubles-not-written-do = What you entered is still here. Save again; if it fails again, close the app and open it.
