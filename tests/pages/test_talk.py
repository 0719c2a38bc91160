"""The talk: its notes, and in a real browser its scenes by keys, guesses that stay, a lift from the room, its edges."""

import re

import browser
import pytest
import reader

from liftcalc.pages import talk
from liftcalc.pages.talk.notes import KEYS, notes_html
from liftcalc.pages.talk.reading import read_scenes, things_of

SCENES = read_scenes()
SIZES = [(1280, 720), (1920, 1080), (1024, 768)]


def test_the_scenes_are_those_of_a_talk_of_25_minutes():
    main = [scene for scene in SCENES if not scene.spare]
    assert [scene.number for scene in main] == list(range(11))
    assert [scene.minutes for scene in main] == [0, 1.5, 2.5, 1.5, 2, 2.5, 3, 2.5, 3, 4, 2]
    assert sum(scene.minutes for scene in main) <= 25
    assert len(SCENES) - len(main) == 4
    for scene in SCENES:
        assert scene.spoken, scene.id
        assert scene.caution, scene.id
        assert "\n" not in scene.caution, "one line"
        seen = [part.text for part in scene.parts if not part.is_code]
        assert len(re.findall(r"\w+", " ".join(seen))) <= 40, f"{scene.id}: a room reads it in five seconds"


def test_the_notes_hold_the_words_of_the_notebook_on_one_sheet(tmp_path, capsys):
    page = notes_html(SCENES)
    for scene in SCENES:
        for words in (scene.title, *scene.spoken.split("\n\n"), scene.caution):
            assert words.replace("'", "&#x27;") in page
    assert all(key in page for key, _ in KEYS)
    assert "<script" not in page
    assert "http" not in page
    file = tmp_path / "notes.html"
    talk.main(["--notes", str(file)])
    assert file.read_text(encoding="utf-8") == page
    with pytest.raises(SystemExit):
        talk.main(["--notes", str(file)])
    assert f"{file} is there already. Add --overwrite, or name another file." in capsys.readouterr().err


def test_whatever_shows_in_a_scene_can_be_made_from_its_line():
    things = things_of(SCENES)
    assert [len(things[scene.id]) for scene in SCENES] == [1, 1, 1, 1, 2, 2, 1, 2, 1, 1, 0, 1, 1, 1, 1]


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    """Return the address of the talk in the app view."""
    browser.skip_without_chromium()
    browser.leave_to_ci()
    with browser.app_view(tmp_path_factory.mktemp("talk")) as app:
        yield app(talk.TALK.name)


@pytest.fixture
def room(address, page):
    """Return the talk on a projector, its panels ready."""
    page.set_viewport_size(dict(zip(("width", "height"), SIZES[0], strict=True)))
    page.goto(address, wait_until="domcontentloaded")
    page.locator(".result-TheCost").wait_for(state="attached")
    page.locator("section.scene[data-scene=welcome]").wait_for()
    yield page
    assert browser.asked_outside(page) == []


def scene_of(page):
    """Return the number of the one scene that is shown."""
    return page.evaluate("""() => { const all = [...document.querySelectorAll('section.scene')];
      const shown = all.filter(scene => scene.getClientRects().length);
      return shown.length === 1 ? all.indexOf(shown[0]) : -1; }""")


def go_to(page, number):
    """Go to a scene by typing its number."""
    page.keyboard.type(str(number))
    page.keyboard.press("Enter")
    assert scene_of(page) == number


def the(page, part):
    """Return a part of the scene that is shown."""
    return page.locator(f"section.scene:not([hidden]) {part}")


def black(page):
    """Return whether the screen is black."""
    return page.locator(".black").is_visible()


def test_all_scenes_by_keys(room):
    for number in range(1, len(SCENES)):
        room.keyboard.press("PageDown")
        assert scene_of(room) == number
        assert room.url.endswith(f"#{number}")
    room.keyboard.press("PageDown")
    assert scene_of(room) == len(SCENES) - 1
    room.keyboard.press("Home")
    assert scene_of(room) == 0
    for key, number in ((" ", 1), ("ArrowRight", 2), ("ArrowDown", 3), ("ArrowLeft", 2), ("ArrowUp", 1), ("PageUp", 0)):
        room.keyboard.press(key)
        assert scene_of(room) == number, key
    go_to(room, 6)
    room.reload(wait_until="domcontentloaded")
    the(room, ".result-WhereTheRestStays").wait_for()
    assert scene_of(room) == 6
    for key in ("b", "."):
        room.keyboard.press(key)
        assert black(room)
        room.keyboard.press(key)
        assert not black(room)
    assert the(room, ".caution").inner_text() == SCENES[6].caution
    assert re.match(r"6 of 10\s+\d+:\d\d / 13:00", room.locator(".where").inner_text())


def test_keys_while_a_slider_a_box_or_a_button_has_the_focus(room):
    go_to(room, 6)
    slider, result = the(room, ".noUi-handle").first, the(room, "[role=status]")
    slider.focus()
    room.keyboard.press("ArrowRight")
    the(room, "[role=status]").get_by_text("1,161").wait_for()  # 3,600 s in 3.1 s
    assert scene_of(room) == 6
    room.keyboard.press("b")
    assert not black(room)
    room.keyboard.press("PageDown")
    assert scene_of(room) == 7
    room.keyboard.press("PageUp")
    room.keyboard.press("r")
    result.get_by_text("1,200").wait_for()
    go_to(room, 8)
    result = the(room, "[role=status]")
    box = the(room, "input[type=number]")
    box.fill("3.4")
    assert scene_of(room) == 8
    box.press("Tab")
    result.get_by_text("4 people inside").or_(result.get_by_text("4", exact=False)).first.wait_for()
    room.keyboard.press("Escape")
    room.keyboard.press("u")
    the(room, ".widget-label").get_by_text("Spacing (ft)").wait_for()
    room.keyboard.press("u")
    the(room, ".widget-label").get_by_text("Spacing (m)").wait_for()


def test_a_guess_is_typed_locked_revealed_and_stays(room):
    go_to(room, 4)
    the(room, ".instead").wait_for()
    assert room.evaluate(reader.ON_THE_FOOT) == [], "a drawing stands where no guess was locked"
    go_to(room, 2)
    the(room, "[data-board]").wait_for()
    room.keyboard.press("Tab")
    for hands in ("12", "30", "25", "3"):
        room.keyboard.type(hands)
        room.keyboard.press("Enter")
    assert the(room, "[data-hands=D]").input_value() == "3"
    the(room, "[data-called='1']").fill("1,500")
    the(room, "[data-called='2']").fill("<b>9</b>")
    room.keyboard.press("Escape")
    room.keyboard.press("l")
    the(room, ".said").get_by_text("Write a whole number, such as 12.").wait_for()
    assert scene_of(room) == 2
    the(room, "[data-called='2']").fill("980")
    the(room, "[data-lock]").focus()
    room.keyboard.press("Enter")
    assert the(room, "[data-hands=A]").is_disabled()
    go_to(room, 4)
    chart = the(room, ".guesses svg")
    for words in ("1,500", "980", "30", "25", "1,800"):
        chart.get_by_text(words, exact=True).first.wait_for()
    assert the(room, ".instead").is_hidden()
    room.reload(wait_until="domcontentloaded")
    chart.get_by_text("1,500", exact=True).wait_for()
    go_to(room, 5)
    the(room, "[data-hands=B]").fill("40")
    room.keyboard.press("Escape")
    assert the(room, ".guesses").is_hidden()
    room.keyboard.press("l")
    assert the(room, ".guesses").is_hidden()
    room.keyboard.press("l")
    the(room, ".result").get_by_text("990").wait_for()
    the(room, ".result").get_by_text("an hour, counted, people waited").wait_for()
    go_to(room, 7)
    the(room, "[data-hands=A]").fill("50")
    room.keyboard.press("Escape")
    assert the(room, ".result-HalfTheSpacing").is_hidden()
    room.keyboard.press("l")
    room.keyboard.press("l")
    the(
        room,
        "button",
    ).get_by_text("half the spacing").click()
    the(room, ".result-HalfTheSpacing").get_by_text("Spacing would allow 3,600").wait_for()
    assert the(room, ".result-HalfTheSpacing").inner_text().startswith("+0")
    room.keyboard.press("r")
    the(room, ".result-HalfTheSpacing").get_by_text("Spacing would allow 1,800").wait_for()
    room.keyboard.press("R")
    assert the(room, ".result-HalfTheSpacing").is_hidden()
    assert the(room, "[data-hands=A]").input_value() == "50"


def test_a_lift_from_the_room(room):
    go_to(room, 9)
    result = the(room, ".result-RoomLift")
    result.get_by_text("1,200").wait_for()
    the(room, "button").get_by_text("T-bar").click()
    result.get_by_text("Call out: spacing and speed, or the interval; loading time.").wait_for()
    speed, every, loading = (the(room, "input[type=text]").nth(place) for place in range(3))
    speed.fill("500 ft/min")
    every.fill("8 s")
    loading.fill("7")
    result.get_by_text("900").wait_for()  # 2 persons every 8 s
    loading.fill("fast")
    result.get_by_text("Loading time: 'fast' is no number. Type digits, such as 3.4.").wait_for()
    loading.fill("9")
    result.get_by_text("800").wait_for()  # 2 persons every 9 s
    assert scene_of(room) == 9
    room.keyboard.press("PageUp")
    assert scene_of(room) == 8


RIDERS = "riders => [getComputedStyle(riders).animationPlayState, getComputedStyle(riders).transform]"


def test_the_rope_runs_when_its_scene_comes_and_by_steps_where_movement_is_unwanted(room):
    def riders():
        return the(room, ".riders").evaluate(RIDERS)

    go_to(room, 1)
    assert riders()[0] == "running"
    the(room, ".hold-rope").check()
    assert riders()[0] == "paused"
    room.emulate_media(reduced_motion="reduce")
    room.keyboard.press("Home")
    go_to(room, 1)
    assert riders()[1] == "none"
    the(room, "[data-step]").click()
    step = float(the(room, ".riders").evaluate("riders => getComputedStyle(riders).getPropertyValue('--step')")[:-2])
    assert float(riders()[1].split(",")[4]) == pytest.approx(step / 4, abs=0.5)


CUT = """() => [...document.querySelectorAll('section.scene:not([hidden]) :is(.widget-label, button, h2, p)')]
  .filter(words => words.scrollWidth > words.clientWidth + 2 && words.clientWidth).map(words => words.innerText)"""


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_nothing_is_cut_on_any_screen(room, size):
    room.set_viewport_size(dict(zip(("width", "height"), size, strict=True)))
    for scene in SCENES:
        go_to(room, scene.number)
        if the(room, "[data-lock]").count():
            for number, box in enumerate(the(room, "[data-board] input").all()):
                box.fill(str(1200 + 10 * number))  # close together: each called number takes a row of its own
            room.keyboard.press("Escape")
            assert room.evaluate(reader.OUTSIDE) == [], scene.id
            room.keyboard.press("l")
            room.keyboard.press("l")
        assert room.evaluate(reader.OUTSIDE) == [], scene.id
        assert room.evaluate(reader.ON_THE_FOOT) == [], scene.id
        assert room.evaluate(CUT) == [], scene.id
        assert the(room, ".caution").bounding_box()["height"] < 60 * size[1] / 720
