"""What stands between the network and the app: connections wait here until their request is whole.

`HttpServer` serves an app, over TLS where it is given a certificate; `CertificateFiles` is one in two
files. `connection_loop` is the one thread that holds all connections, `connection` the steps of one;
`entrance` lets clients in, `bell` wakes the thread. `request_reader` gathers a request, `worker_request` is
what a worker gets of it, and `answer` goes back. `hold` keeps an answer back until there is news, with no
thread that waits. `eviction` says which connection gives way when there are too many, `limits` has every
figure, `refusal` what a client reads that is turned away.
"""

from .certificate_files import CertificateFiles
from .server import Certificate
from .server import HttpServer

__all__ = ["Certificate", "CertificateFiles", "HttpServer"]
