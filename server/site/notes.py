"""What whoever hosts the site has to know: printed by the command, and kept beside the files."""

NOTES = """\
Swaptrail as files: one person's tool, without a server.

Copy everything in this folder to a host that serves files over HTTPS. The app may stand at the root of its
address or in any folder of it. Keep the address: what a phone recorded, and its labels, belong to it.

HTTPS      is needed, or the phone opens neither camera nor offline storage.
Caching    sw.js, index.html, 404.html, manifest.webmanifest: Cache-Control: no-cache.
           Everything under app/: Cache-Control: public, max-age=31536000, immutable.
           Where the host sets its own times, the app still works: it checks each file by its hash.
_headers   says so to the hosts that read such a file. They read it at the root of an address only. In a
           folder, put that folder before each path in it.
404.html   leads back to the app: let the host answer with it where it has no file. Most do so by themselves.
           Labels open without it.
Framing    Only a header can forbid other pages to show the app in a frame. A host that reads no _headers file
           does not forbid it.
Workers    The policy in the page does not reach the two workers. They fetch nothing, and run only files of
           the app.
Shared     Pages of others under the same host name can read what the app stores. Use a host name of your own.
Secrets    There are none in these files.
Updates    Run the command again on this folder and copy all of it. The build before stays in it, for phones
           that are just loading it. Copy app/ first, index.html and sw.js last.
Licences   of what the app is made of stand in LICENSES.txt.
"""
