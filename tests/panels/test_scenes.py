"""Scenes of the talk: their numbers are those of the formulas, and each can be had without a kernel behind it."""

import re

import pytest
from messages import refuses, table_of_messages

from liftcalc import Q, hourly_capacity, hourly_capacity_from_interval, loading_capacity
from liftcalc.figures import stage
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.panels import notebook_state
from liftcalc.panels.guess_board import BOARDS, GuessBoard, Guesses, RunningRope
from liftcalc.panels.scene_base import STATES
from liftcalc.panels.scene_room import BOXES, RoomLift, read_box
from liftcalc.panels.scene_spares import FasterRope, TheCost, TheWait, WhereSpacingGoverns
from liftcalc.panels.scenes import HalfTheSpacing, HowMeasured, OneLine, WhatHalfCosts, WhereTheRestStays

PANELS = [WhereTheRestStays, HalfTheSpacing, WhatHalfCosts, FasterRope, WhereSpacingGoverns, TheWait, TheCost]
each = pytest.mark.parametrize("kind", PANELS, ids=lambda kind: kind.__name__)


def plain(markup):
    """Return words without their marks."""
    return " ".join(re.sub(r"<[^>]+>", " ", markup).split())


# by hand from the readings of the sheets: 3,600 s / 3 s; 3,600 s / 2.5 s is above the motor's; 10.8 m of the rope in
# 3.4 m/s and 2 s of reaction, 0.5 s of delay, and the brake; 6 s at the top, one every second; the rest as in 09 and 12
SAID = [
    (WhereTheRestStays, "as measured", "1,200 people an hour, governed Loading governs: the narrowest of five."),
    (WhereTheRestStays, "half a second less", "1,291 people an hour, governed Motor governs: the narrowest of five."),
    (WhereTheRestStays, "one second more", "900 people an hour, governed Loading governs: the narrowest of five."),
    (
        HalfTheSpacing,
        "half the spacing",
        "+0 people an hour, governed Spacing would allow 3,600; loading lets 1,200 through.",
    ),
    (
        WhatHalfCosts,
        "as measured",
        "2 people inside the stopping distance Counting the one who fell; every place taken.",
    ),
    (
        WhatHalfCosts,
        "half the spacing",
        "4 people inside the stopping distance Counting the one who fell; every place taken.",
    ),
    (FasterRope, "slower", "+0 people an hour, governed At 2.4 m/s loading governs."),
    (FasterRope, "faster", "−10 people an hour, governed At 4.4 m/s motor governs."),
    (WhereSpacingGoverns, "half the spacing", "+39 people an hour, governed Now motor governs: 554."),
    (TheCost, "a usual season", "0.20 dollars a ride"),
    (TheCost, "half the rides", "0.40 dollars a ride"),
]


@pytest.mark.parametrize(("kind", "preset", "words"), SAID, ids=lambda given: getattr(given, "__name__", given))
def test_a_preset_says(kind, preset, words):
    scene = kind()
    scene.choose(preset)
    assert plain(scene.status()).startswith(words)
    found = {state.setting: plain(state.words) for state in scene.states()}
    assert found[preset].startswith(words)


@each
def test_states_over_a_slider_are_those_of_the_moved_slider_and_leave_it_where_it_was(kind):
    scene = kind()
    (name,) = scene.control_names
    before = scene.describe()
    states = scene.states(name)
    assert len(states) == STATES
    assert scene.describe() == before
    for state, end in ((states[0], "min"), (states[-1], "max")):
        scene.rows[0].slider.value = getattr(scene.rows[0].slider, end)
        assert scene.setting(name) == state.setting
        assert (scene.status(), scene.drawing()) == (state.words, state.drawing)
    assert len({state.words + state.drawing for state in states}) > STATES // 2, "it follows"


@each
def test_a_scene_is_large_and_leaves_the_others_alone(kind):
    scene, other = kind(), OneLine()
    assert "font-size:72px" in scene.status()
    sizes = [int(size) for size in re.findall(r'font-size="(\d+)"', scene.drawing())]
    assert min(sizes, default=22) >= 22
    values = dict(notebook_state().values)
    scene.rows[0].slider.value = scene.rows[0].slider.max
    assert notebook_state().values == values
    notebook_state().use_units("us")
    assert "22.3 ft ÷ 11.2 ft/s = 2 s" in plain(other.status())
    scale = scene.rows[0].control.us
    assert scene.rows[0].slider.max == scale.high


def test_the_ideal_and_the_readings_are_those_of_the_sheet():
    line, readings = demo_line("Penny Rope")
    assert "1,800 an hour, ideal" in plain(OneLine().status())
    assert hourly_capacity(line.line_speed, line.spacing).m_as("pph") == pytest.approx(1800, abs=0.5)
    said = plain(HowMeasured().status())
    for words in ("3.4 m/s", "6.8 m", "3 s"):
        assert words in said
    assert readings["loading_time"] == Q(3, "s")


RESULTS = [("ideal", "1,800", "an hour, ideal", 1800), ("half", "+0", "people an hour, governed", 0),
           ("counted", "990", "an hour, counted, people waited", 33 * 30)]  # fmt: skip


@pytest.mark.parametrize(("name", "number", "unit", "value"), RESULTS, ids=lambda given: str(given))
def test_what_a_guess_is_held_against(name, number, unit, value):
    found = BOARDS[name].result()
    assert found[:2] == (number, unit)
    assert found[2] == pytest.approx(value, abs=0.1)
    board, guesses = GuessBoard(name).html(), Guesses(name).html()
    assert board.count("data-hands") == 4
    assert board.count("data-called") == (0 if name == "half" else 6)
    assert f"data-text='{number}'" in guesses
    assert not re.search(r"data-result|990", board), "a board does not give away what is asked"


def test_the_rope_runs_to_scale_at_its_true_speed_and_shows_no_number():
    drawing = RunningRope().html()
    way, step, time = (float(re.search(rf"--{name}:([\d.]+)", drawing)[1]) for name in ("way", "step", "time"))
    assert step / stage.METRE == pytest.approx(6.8, abs=0.01)
    assert way / stage.METRE / time == pytest.approx(3.4, abs=0.01)
    assert not re.search(r"[0-9]", plain(drawing))


def room(kind, speed="", every="", loading=""):
    """Return what the scene says of a lift that was called out."""
    scene = RoomLift()
    scene._kinds.value = kind
    for name, text in zip(BOXES, (speed, every, loading), strict=True):
        scene.boxes[name].value = text
    return plain(scene.status())


def test_a_lift_from_the_room():
    by_spacing = hourly_capacity(Q(500, "ft/minute"), Q(30, "ft"), Q(2, "person")).m_as("pph")
    assert by_spacing == pytest.approx(2000)
    assert room("double chair", "500 ft/min", "30 ft", "3").startswith(
        "2,000 an hour at most, governed Spacing governs"
    )
    at_once = loading_capacity(Q(7, "s"), Q(4, "person")).m_as("pph")
    assert room("quad chair", "2,5", "6 s", "7 s").startswith(f"{at_once:,.0f} an hour at most, governed Loading")
    alone = hourly_capacity_from_interval(Q(8, "s"), Q(2, "person")).m_as("pph")
    assert room("T-bar", every="8 s") == (
        f"{alone:,.0f} an hour at most, governed By spacing alone. Still to call out: loading time."
    ), "an interval needs no speed"
    assert room("platter") == "Call out: spacing and speed, or the interval; loading time."
    assert room("platter", speed="2") == "Call out: spacing or interval; loading time."
    assert room("platter", every="20 m", loading="6").endswith("By loading alone. Still to call out: speed.")
    scene = RoomLift()
    assert [plain(state.words)[:5] for state in scene.states()] == ["1,200", "514 a", "1,029"]
    notebook_state().use_units("us")
    scene.choose("Penny Rope")
    assert [box.value for box in scene.boxes.values()] == ["7.6 mph", "22.3 ft", "3 s"]


BAD = [
    (lambda: read_box("speed", "<b>fast</b>", "us"), "Speed: '<b>fast</b>' is no number. Type digits, such as 3.4."),
    (lambda: read_box("loading", "9**9**9", "us"), "Loading time: '9**9**9' is no number. Type digits, such as 3.4."),
    (lambda: read_box("speed", "340", "metric"), "Speed: 340.00 m/s is outside 0.1 to 12 m/s. Say it once more."),
    (lambda: read_box("every", "0", "us"), "Spacing or interval: 0.0 ft is outside 0.5 to 300 m. Say it once more."),
]  # fmt: skip


@table_of_messages(BAD)
def test_nonsense_from_the_room_is_refused_in_plain_words(call, message, kind):
    refuses(call, message, kind)


def words_of(drawing):
    """Return the words in a drawing, from top to bottom."""
    return re.findall(r"<text[^>]*>([^<]*)</text>", drawing)


def test_a_frame_waits_for_what_was_not_called_out():
    scene = RoomLift()
    scene._kinds.value = "T-bar"
    assert words_of(scene.drawing()) == ["spacing", "?", "loading", "?"]
    scene.boxes["loading"].value = "9"
    assert words_of(scene.drawing()) == ["spacing", "?", "loading", "800"]  # 2 persons every 9 s
    assert scene.drawing().count("stroke-dasharray") == 1


# by hand: 3.4 m or 6.8 m in 3.4 m/s; 6 s to clear the top, in these steps
PRICES = [
    ("as measured", ["stop: 10.2 m", "to take hold", "2 s", "at the top, mean", "3 people"], 0),
    ("half the spacing", ["stop: 10.2 m", "to take hold", "1 s, was 2", "at the top, mean", "6 people, was 3"], 2),
]


@pytest.mark.parametrize(("preset", "words", "frames"), PRICES, ids=[preset for preset, *_ in PRICES])
def test_the_price_is_drawn_beside_what_it_was(preset, words, frames):
    scene = WhatHalfCosts()
    scene.choose(preset)
    assert words_of(scene.drawing()) == words
    assert scene.drawing().count("stroke-dasharray") == frames
    assert (scene.given["spacing"] == scene.first["spacing"]) is (frames == 0), "what was drawn left it as it was"


def test_readings_are_drawn_and_the_gap_stands_in_the_units_of_the_room():
    assert HowMeasured().status().count("<svg") == 3
    notebook_state().use_units("us")
    assert words_of(OneLine().drawing()) == ["22.3 ft", "2 s", "11.2 ft/s"]


def test_a_count_says_what_it_comes_from():
    assert "33 people in 2 min, at the top" in plain(Guesses("counted").html())
    assert "traced" not in Guesses("ideal").html()


def test_what_was_called_out_is_shown_as_text():
    scene = RoomLift()
    scene.boxes["speed"].value = "<img src=x>"
    assert "<img" not in scene.picture.html.value
    assert "&lt;img" in scene.picture.html.value
