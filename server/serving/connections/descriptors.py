"""How many connections the process may hold open at once: each is a file to the system."""

from contextlib import suppress

try:
    import resource
except ImportError:  # Windows, which has no such limit on sockets
    resource = None  # type: ignore[assignment]

_FOR_THE_APP = 200  # databases, photos, temporary files


def files_allowed(wanted: int) -> int:
    """Returns how many of `wanted` connections there can be, after asking the system for that many."""
    if resource is None:
        return wanted
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    if soft == resource.RLIM_INFINITY:
        return wanted
    needed = wanted + _FOR_THE_APP
    if soft < needed:
        most = needed if hard == resource.RLIM_INFINITY else min(needed, hard)
        with suppress(ValueError, OSError):
            resource.setrlimit(resource.RLIMIT_NOFILE, (most, hard))
            soft = most
    return max(min(wanted, soft - _FOR_THE_APP), soft // 2)
