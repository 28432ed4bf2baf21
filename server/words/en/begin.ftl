### What is read before the words have come: the page itself carries it, in every language. No arguments.

## The language by its own name.

# at most 24 characters
begin-language = English

begin-purpose = Finds the bad parking sensor by exchanging it, and keeps the proof.
begin-reading = Reading what is on this phone
begin-as-it-was = As it was. Checking it now.
begin-broken-heading = The app did not come over whole
begin-broken = The line broke off. What was recorded is not touched.
begin-again = Load it again
begin-plain = Save what is on this phone
begin-long = This takes long. What was recorded is safe.
begin-no-script = Swaptrail runs in the browser and needs JavaScript. Allow it for this page, then load it again.
