"""What stands between the network and the app: connections wait here until their request is whole.

`Door` serves an app, over TLS where it is given a certificate; `CertificateFiles` is one in two files.
"""

from .certificate_files import CertificateFiles
from .server import Certificate
from .server import Door

__all__ = ["Certificate", "CertificateFiles", "Door"]
