"""Servers and browser of the tests of pages: started once for each module."""

import browser
import pytest


@pytest.fixture(scope="module")
def chromium():
    """Return a running Chromium."""
    with browser.headless() as started:
        yield started


@pytest.fixture
def page(chromium):
    """Return an empty page of a reader who was never here."""
    with browser.page_of(chromium) as opened:
        yield opened
