"""The number of a row in an address: `<row:name>` in a route."""

from flask import Flask
from werkzeug.routing import IntegerConverter


class RowNumber(IntegerConverter):
    """A whole number that a table can hold; an address with a larger one leads nowhere."""

    def __init__(self, url_map: object, **options: int):
        """Bounds it by SQLite's largest integer (sqlite.org/datatype3.html, 64 bits signed)."""
        super().__init__(url_map, max=2**63 - 1, **options)  # type: ignore[arg-type]


def init_app(app: Flask) -> None:
    """Makes the form known to the app's routes; called before they are added."""
    app.url_map.converters["row"] = RowNumber
