"""Registers on a real PostgreSQL."""

import pytest

from tests.postgres import Postgres


@pytest.fixture(scope="session")
def postgres():
    """Give one server for the whole run."""
    server = Postgres()
    yield server
    server.close()


@pytest.fixture
def empty_url(postgres):
    """Give the address of an empty database."""
    return postgres.new_database()


@pytest.fixture
def url(postgres):
    """Give the address of a register."""
    return postgres.new_register()
