"""Files for running Swaptrail as a service: a systemd unit, a Containerfile, a reverse proxy's site."""
