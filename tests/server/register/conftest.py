"""Registers on a real PostgreSQL."""

import pytest


@pytest.fixture
def empty_url(postgres):
    """Give the address of an empty database."""
    return postgres.new_database()


@pytest.fixture
def url(postgres):
    """Give the address of a register."""
    return postgres.new_register()
