"""What pages, formulas and exercises say of carriers that nobody may add, take off or bring closer on paper."""

from pathlib import Path

import pytest

PAGE = (Path(__file__).resolve().parents[1] / "notebooks/sources/07_every_kind_of_lift.py").read_text(encoding="utf-8")


def section(heading):
    """Return one section of the page."""
    return PAGE.split(f"# ## {heading}\n", 1)[1].split("\n# ## ", 1)[0]


@pytest.mark.parametrize("source", ["own arithmetic: two halves of a motion at constant acceleration"])
def test_the_page_gives_a_tram_its_start_and_its_stop(source):
    told = section("To and fro")
    assert "ride_time_rest_to_rest(length" in told
    ride = 2 * 16 + (800 - 2 * 64) / 8  # 64 m and 16 s for the start, as much for the stop, the rest at full speed
    assert f"= {ride:.0f} s." in told
    assert f"every {ride + 60:.0f} s: 3,600 s × 40 ÷ {ride + 60:.0f} s = {3600 * 40 / (ride + 60):.0f} pph" in told
