"""Swaptrail: the Flask app and, in `core`, the domain that phone and server share."""
