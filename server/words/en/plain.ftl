### The page that works where the app does not start: it carries these itself, in every language. No arguments.

plain-heading = Save what is on this phone
plain-lead = This page works without the rest of the app. It changes nothing that was recorded.
plain-looking = Looking into this phone
plain-nothing = Nothing was recorded on this phone.
plain-no-storage = What this phone keeps can't be opened. Close all other tabs of the app, then load this page again.
plain-unsent = Not sent yet
plain-all = All that is on this phone
plain-entries = entries
plain-pictures = pictures
plain-save-unsent = Save what was not sent
plain-save-all = Save everything
plain-made = The file is ready. Any phone with Swaptrail takes it in, and so does the server.
plain-damaged = Pictures that changed on this phone are left out.
plain-not-made = The file could not be made.
plain-pass-on = Pass it on
plain-start = Start the app
plain-no-script = Allow JavaScript for this page, then load it again.
