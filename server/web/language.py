"""The language in which a request is answered: the phone's, as it names it in Accept-Language."""

from flask import Flask
from flask import request

from server.words.speech import FIRST
from server.words.spoken import nearest
from server.words.spoken import speak


def init_app(app: Flask) -> None:
    """Has each request answered in its language; English where it asks for none that is there."""

    @app.before_request
    def choose() -> None:
        wanted = (nearest(language) for language in request.accept_languages.values())
        speak(next(filter(None, wanted), FIRST))
