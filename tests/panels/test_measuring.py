"""The panels of 05: a track whose steady part can be moved, and a length by several methods."""

from datetime import datetime

import numpy as np
import pytest
from messages import refuses
from places import DATA
from reading_panels import status

from liftcalc import Q
from liftcalc.fieldwork import read_track
from liftcalc.lifts.sheet import sheet_from_bytes
from liftcalc.panels import LengthPanel, TrackPanel


def uploaded(name, content):
    """Return what the upload button hands over for one file."""
    return ({"name": name, "type": "", "size": len(content), "content": content, "last_modified": datetime.now()},)


def test_the_steady_part_can_be_dragged_and_typed():
    panel = TrackPanel(read_track(DATA / "penny_rope_track.gpx"))
    found = panel.describe()
    assert panel.ends.value == tuple(panel.given[name].m_as("s") for name in panel.control_names)
    assert panel.ends.max == panel.rows[0].slider.max == panel._last, "the slider ends where the track ends"
    panel.ends.value = (10.0, 76.0)
    assert panel.rows[0].box.value == 10
    assert panel.reading.start == 10
    assert panel.describe() != found
    panel.rows[0].box.value = 44
    assert panel.ends.value == (44.0, 76.0)
    assert panel.describe() == found
    panel.ends.value = (44.0, 46.0)  # no fix at 45 s
    assert panel.result == "not from this part"
    assert "holds 2 points" in status(panel)
    panel.rows[1].box.value = 20
    assert "The part would end at 20 s, before its start at 44 s. Move one end." in status(panel)


def test_a_track_of_ones_own_is_taken_or_refused_with_a_reason():
    panel = TrackPanel(read_track(DATA / "penny_rope_track.gpx"))
    panel.upload.value = uploaded("mine.gpx", (DATA / "long_platter_track.gpx").read_bytes())
    assert panel.track.name == "mine.gpx"
    assert panel.reading.speed.m_as("m/s") == pytest.approx(2.8, abs=0.1), "the invented speed of the Long Platter"
    assert panel.ends.max == panel._last == panel.rows[1].slider.max
    assert "mine.gpx: " in panel.picture.chart.title.get_text()
    words = panel.describe()
    panel.upload.value = uploaded("broken.gpx", b"<gpx><trk>")
    assert panel.describe() == words, "nothing is lost"
    assert "broken.gpx, line 1" in status(panel)
    refuses(lambda: TrackPanel("x.gpx"), "TrackPanel: the track must come from read_track, but got 'x.gpx'.")


def test_lengths_agree_only_when_they_are_one_length():
    panel = LengthPanel(
        map_length=Q(160, "m"), vertical_rise=Q(31.9, "m"), line_speed=Q(3.4, "m/s"), ride_time=Q(45.3, "s")
    )
    assert panel.results["do they agree"] == "no"
    assert panel.combined.odd_one == "map line and rise"
    panel.rows[0].box.value = 147
    assert panel.results["do they agree"] == "yes"


def test_the_words_of_a_track_stand_over_the_middle_of_the_band_and_inside_the_chart():
    panel = TrackPanel()
    left, right = panel.picture.chart.ax.get_xlim()
    for start, end in ((44, 76), (60, 140), (0, 20)):
        panel.picture.chart.move(title="", start=start, end=end, level=None, text="words")
        place, _ = panel.picture.chart.words.get_position()
        margin = 0.16 * (right - left)
        assert place == pytest.approx(np.clip((start + end) / 2, left + margin, right - margin))


HEADING = "quantity,value,unit,plus_minus,method,note\n"
BELT = (
    "kind,conveyor,,,,\nline speed,0.6,m/s,0.02,,\nridden length,80,m,1,,\nsheave distance,84,m,,,\n"
    "vertical rise,8,m,0.5,,\nride time,2:13,s,1,,\n"
)


def test_one_length_by_three_ways_for_a_sheet_of_ones_own():
    panel = LengthPanel(sheet_from_bytes("belt.csv", (HEADING + BELT).encode()))
    # by hand: a belt takes its riders along at once; whoever draws the line on a map clicks on both ends of the belt
    run = np.sqrt(80**2 - 8**2) * 84 / 80
    assert panel.given["map_length"].m_as("m") == pytest.approx(run)
    taped, mapped, timed = (estimate.value.m_as("m") for estimate in panel.methods)
    assert (taped, mapped, timed) == pytest.approx((80, 84, 0.6 * 133))
    assert "4.2 m for its two ends, assumed" in status(panel)


LACKS = [
    ("ride time,2:13,s,1,,\n", "", "ride time of belt was not read"),
    ("ride time,2:13,s,1,,\n", "ride time,2:13,s,,,\n", "ride time of belt has no plus-minus"),
]


@pytest.mark.parametrize(("row", "other", "words"), LACKS, ids=[case[2] for case in LACKS])
def test_what_one_length_by_three_ways_lacks_is_named(row, other, words):
    sheet = sheet_from_bytes("belt.csv", (HEADING + BELT.replace(row, other)).encode())
    needs = "ridden length, vertical rise, line speed, ride time, each with its plus-minus"
    refuses(lambda: LengthPanel(sheet), f"LengthPanel: {words}. One length by three ways needs {needs}.")
