"""The talk on a stick: its numbers are the live ones; in a real browser it opens from disk and asks for nothing."""

import base64
import gzip
import itertools
import json
import re

import browser
import pytest
import reader

from liftcalc.pages import talk
from liftcalc.pages.talk import stick
from liftcalc.pages.talk.reading import read_scenes, things_of
from liftcalc.panels.controls import SYSTEMS
from liftcalc.panels.scene_room import PRESETS, ROOM_KINDS
from liftcalc.panels.state import notebook_state

SCENES = read_scenes()
SIZES = [(1280, 720), (1920, 1080), (1024, 768)]


@pytest.fixture(scope="module")
def text():
    """Return the file, made once."""
    return stick.stick_html()


def script_of(text, name):
    """Return what one script element of the file holds."""
    return re.search(rf'<script type="[a-z/]+" id="{name}">(.*?)</script>', text, flags=re.DOTALL)[1]


@pytest.fixture(scope="module")
def told(text):
    """Return what the page holds unpacked."""
    return json.loads(script_of(text, "told"))


@pytest.fixture(scope="module")
def packed(text):
    """Return the states of the sliders, as the page unpacks them."""
    return json.loads(gzip.decompress(base64.b64decode(script_of(text, "packed"))))


@pytest.fixture(scope="module")
def panels():
    """Return the live panels by their names in the file, and the lift from the room."""
    things, found = things_of(SCENES), {}
    for scene in SCENES:
        made = iter(things[scene.id])
        for place, part in enumerate(scene.parts):
            thing = next(made) if part.is_code else None
            if hasattr(thing, "states"):
                found[f"{scene.id}-{place}"] = thing
    return found


@pytest.fixture
def live(panels):
    """Return the live panels; they follow the units again, which panels of the test before no longer do."""
    notebook = notebook_state()
    for panel in panels.values():
        notebook.join(panel)
    notebook.use_units("us")
    notebook.use_units("metric")
    return panels


@pytest.fixture(params=["metric", "us"])
def system(request, live):
    """Return a system of units that is in force."""
    notebook_state().use_units(request.param)
    return request.param


def without_role(markup):
    """Return what a live panel shows; in the file one region speaks for all."""
    return markup.replace(" role='status'", "")


# the numbers


def press(panel, name):
    """Press a preset of a live panel."""
    next(button for button in panel.children[0].children if button.description == name).click()


def test_presets_are_those_of_the_live_talk(told, live, system):
    assert set(told["panels"]) == {name for name, thing in live.items() if not hasattr(thing, "boxes")}
    for name, states in told["panels"].items():
        panel = live[name]
        if not panel.control_names:
            assert states[system] == [without_role(panel.picture.html.value)], name
            continue
        assert len(states[system]) == len(panel.presets)
        for preset, state in zip(panel.presets, states[system], strict=True):
            press(panel, preset)
            assert state == without_role(panel.picture.html.value), (name, preset)


def test_stops_of_the_sliders_are_those_of_the_live_talk(packed, live, system):
    assert set(packed) == {name for name, thing in live.items() if thing.control_names}
    for name, sliders in packed.items():
        panel = live[name]
        assert tuple(sliders) == panel.control_names
        for row in panel.rows:
            stops = sliders[row.control.name][system]
            scale = row.control.scale(system)
            numbers = [
                stick.Q(stop["at"], stick.Q(1, scale.unit).to_base_units().units).m_as(scale.unit) for stop in stops
            ]
            assert numbers == sorted(numbers)
            assert len(stops) >= 30, name
            assert [numbers[0], numbers[-1]] == pytest.approx([scale.low, scale.high], abs=scale.step / 2)
            assert {stop["preset"] for stop in stops} == {-1, *range(len(panel.presets))}, name
            for number, stop in list(zip(numbers, stops, strict=True))[::4]:
                if stop["preset"] < 0:
                    row.box.value = round(number, scale.digits)
                else:
                    press(panel, list(panel.presets)[stop["preset"]])
                assert stop["shown"] == without_role(panel.picture.html.value), (name, stop["text"])
                assert stop["text"] == panel.setting(row.control.name)


def large(markup):
    """Return the number in large letters."""
    return re.search(r"font-weight:bold;line-height:1.1'>([^ ]+) ", markup)[1]


def test_some_numbers_by_hand(told, packed):
    limits = next(sliders["loading_time"]["us"] for sliders in packed.values() if "loading_time" in sliders)
    by_time = {stop["text"]: large(stop["shown"]) for stop in limits}
    assert by_time["4 s"] == "900"  # 3,600 s / 4 s
    assert by_time["6 s"] == "600"
    assert [large(state) for state in told["panels"]["half-2"]["metric"]] == ["+0", "+0"]


def test_every_case_of_a_lift_from_the_room_is_that_of_the_live_talk(told, live, system):
    lift, room = live["room-1"], told["room"]
    assert room["presets"][system] == json.loads(json.dumps(lift.presets))
    assert room["persons"] == {name: persons for name, (_, persons) in ROOM_KINDS.items()}
    lift.choose("Lantern Double")  # two on a chair
    for case, (words, drawing) in room["states"].items():
        speed, every, loading, governs = case.split("/")
        lift.boxes["speed"].value = "2 m/s" if speed else ""
        slow = governs == "spacing"  # 2 persons every 8 s, or every 4 s, against 6 s: 900 or 1,800 against 1,200
        lift.boxes["every"].value = {"": "", "length": "16 m" if slow else "8 m", "time": "8 s" if slow else "4 s"}[
            every
        ]
        lift.boxes["loading"].value = "6" if loading else ""
        spacing, start = (
            (900 if slow else 1800) if every == "time" or every and speed else None,
            1200 if loading else None,
        )
        least, other = (spacing, start) if slow else (start, spacing)
        length = room["bar"]["full"] * least / other if least and other else 0
        words += drawing
        for mark, number in (("least", f"{least or 0:,}"), ("other", f"{other or 0:,}"), ("length", f"{length:.1f}")):
            words = words.replace(f"{{{mark}}}", number)
        words = words.replace("{end}", f"{room['bar']['left'] + length + room['bar']['gap']:.1f}")
        assert words == without_role(lift.picture.html.value), case


# the file


def test_it_is_small_and_names_no_address(text):
    assert len(text.encode()) < stick.MOST_BYTES
    assert set(re.findall(r"\bhttps?:[^\"' <\\]*", text)) == {"http://www.w3.org/2000/svg"}, (
        "the name of a kind of markup"
    )
    assert not re.search(r"url\(|@import|//[a-z0-9-]+\.[a-z]{2,}/(?!2000/svg)", text)
    assert set(re.findall(r"\b(?:src|href)=[\"']([^\"']*)", text)) == {"data:,"}
    assert "default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'; img-src data:;" in text


def test_it_holds_the_words_of_every_scene_and_no_word_for_the_speaker(text, live):
    assert text.count('<section class="scene"') == len(SCENES)
    for scene in SCENES:
        assert f">{scene.title}</h2>" in text
        assert f"<p>{scene.caution}</p>".replace("'", "&#39;") in text.replace("&#x27;", "&#39;").replace("'", "&#39;")
        assert scene.spoken[:40] not in text
    assert text.count("data-board=") == 3
    assert text.count("data-guesses=") == 2, "beside the half, which its own panel answers"


def test_it_is_alike_whenever_it_is_made(packed, text):
    assert stick.pack(packed) == script_of(text, "packed")


def test_the_command_writes_it_once(monkeypatch, tmp_path, capsys, text):
    monkeypatch.setattr(stick, "stick_html", lambda path: text)
    file = tmp_path / "talk.html"
    talk.main(["--to", str(file)])
    assert file.read_text(encoding="utf-8") == text
    assert capsys.readouterr().out == f"Written: {file}, {len(text.encode()) / 1000:,.0f} kB\n"
    with pytest.raises(SystemExit) as ended:
        talk.main(["--to", str(file)])
    assert ended.value.code == 2
    assert f"{file} is there already. Add --overwrite, or name another file." in capsys.readouterr().err
    talk.main(["--to", str(file), "--overwrite"])
    with pytest.raises(SystemExit):
        talk.main(["--to", str(tmp_path)])


# a real browser


@pytest.fixture(scope="module")
def file(tmp_path_factory, text):
    """Return the file on disk."""
    browser.skip_without_chromium()
    browser.leave_to_ci()
    written = tmp_path_factory.mktemp("stick") / "talk.html"
    written.write_text(text, encoding="utf-8")
    return written


@pytest.fixture
def room(file, page):
    """Return the talk opened from disk, with no network."""
    page.wrong = []
    page.on("pageerror", lambda error: page.wrong.append(str(error)))
    page.on("console", lambda said: page.wrong.append(said.text))
    page.context.set_offline(True)
    page.set_default_timeout(10_000)
    page.set_viewport_size(dict(zip(("width", "height"), SIZES[0], strict=True)))
    page.goto(file.as_uri())
    page.locator(".slide:not([hidden])").first.wait_for(state="attached")
    yield page
    assert {address.split("#")[0] for address in page.asked} == {file.as_uri()}
    assert page.wrong == []


SHOWN = """() => { const all = [...document.querySelectorAll('section.scene')];
  const shown = all.filter(scene => scene.getClientRects().length);
  return shown.length === 1 ? all.indexOf(shown[0]) : -1; }"""


def go_to(page, number):
    """Go to a scene by typing its number."""
    page.keyboard.type(str(number))
    page.keyboard.press("Enter")
    assert page.evaluate(SHOWN) == number


def the(page, part):
    """Return a part of the scene that is shown."""
    return page.locator(f"section.scene:not([hidden]) {part}")


def test_all_scenes_by_keys(room):
    for number in range(1, len(SCENES)):
        room.keyboard.press("PageDown")
        assert room.evaluate(SHOWN) == number
        assert room.url.endswith(f"#{number}")
    room.keyboard.press("Home")
    for key, number in ((" ", 1), ("ArrowRight", 2), ("ArrowUp", 1), ("PageUp", 0), ("End", 10)):
        room.keyboard.press(key)
        assert room.evaluate(SHOWN) == number, key
    go_to(room, 6)
    room.reload()
    assert room.evaluate(SHOWN) == 6
    for key in ("b", "."):
        room.keyboard.press(key)
        assert room.locator(".black").is_visible()
        room.keyboard.press(key)
        assert room.locator(".black").is_hidden()
    assert the(room, ".caution").inner_text() == SCENES[6].caution


def test_slider_presets_and_units(room):
    go_to(room, 6)
    slider, result = the(room, "input[type=range]"), the(room, ".shown")
    assert room.get_by_role("slider", name="Loading time").count() == 1
    assert slider.get_attribute("aria-valuetext") == "3 s"
    slider.focus()
    room.keyboard.press("End")
    result.get_by_text("600").first.wait_for()  # 3,600 s / 6 s
    assert slider.get_attribute("aria-valuetext") == "6 s"
    assert the(room, "button[aria-pressed=true]").count() == 0
    room.keyboard.press("ArrowLeft")
    assert float(slider.get_attribute("aria-valuetext").removesuffix(" s")) == pytest.approx(5.85, abs=0.06)
    assert room.evaluate(SHOWN) == 6
    room.keyboard.press("b")
    assert room.locator(".black").is_hidden(), "letters belong to the slider"
    room.locator(".announced").get_by_text("an hour, governed").wait_for()
    room.keyboard.press("PageDown")
    assert room.evaluate(SHOWN) == 7
    room.keyboard.press("PageUp")
    room.keyboard.press("r")
    result.get_by_text("1,200").first.wait_for()
    assert the(room, "button[aria-pressed=true]").inner_text() == "as measured"
    box = slider.bounding_box()
    room.mouse.click(box["x"] + box["width"] - 5, box["y"] + box["height"] / 2)
    result.get_by_text("600").first.wait_for()
    room.keyboard.press("PageDown")
    assert room.evaluate(SHOWN) == 7
    go_to(room, 8)
    the(room, "button").get_by_text("half the spacing").click()
    result.get_by_text("4", exact=False).first.wait_for()
    assert the(room, "output").inner_text() == "3.4 m"
    room.keyboard.press("u")
    assert the(room, "output").inner_text() == "11.2 ft"
    the(room, "svg text").get_by_text(re.compile(r"stop: 33\.\d ft")).wait_for()
    slider.focus()
    room.keyboard.press("ArrowRight")
    assert the(room, "output").inner_text().endswith(" ft")
    room.keyboard.press("Escape")
    room.keyboard.press("u")
    assert the(room, "output").inner_text().endswith(" m")


def test_a_guess_is_typed_locked_revealed_and_stays(room):
    go_to(room, 2)
    for letter, hands in zip("ABCD", ("12", "30", "25", "3"), strict=True):
        the(room, f"[data-hands={letter}]").fill(hands)
    the(room, "[data-called='1']").fill("1,500")
    room.keyboard.press("Escape")
    room.keyboard.press("l")
    assert the(room, "[data-hands=A]").is_disabled()
    room.reload()
    go_to(room, 4)
    for words in ("1,500", "30", "25", "1,800"):
        the(room, ".guesses svg").get_by_text(words, exact=True).first.wait_for()
    go_to(room, 5)
    the(room, "[data-hands=B]").fill("40")
    room.keyboard.press("Escape")
    room.keyboard.press("l")
    assert the(room, ".guesses").is_hidden()
    room.keyboard.press("l")
    the(room, ".result").get_by_text("990").wait_for()
    go_to(room, 7)
    assert the(room, ".shown").is_hidden()
    room.keyboard.press("l")
    room.keyboard.press("l")
    the(room, "button").get_by_text("half the spacing").click()
    the(room, ".shown").get_by_text("Spacing would allow 3,600").wait_for()
    assert the(room, ".shown").inner_text().startswith("+0")


TYPED = {
    "speed": ["", "3.4", "3.4 m/s", "500 ft/min", "7,6 mph", "12 km/h", "0.5", "2.35 m/s"],
    "every": ["", "6.8", "12,345 ft", "8 s", "23 ft", "32 s", "6.8m", "0.123 km", "12,5 m"],
    "loading": ["", "3", "7.2", "32 s", "0.1 min", "11"],
}
REFUSED = [
    ("speed", "fast"), ("speed", "1.234,567"), ("speed", "3.4 kg"), ("speed", "99"), ("speed", "3.4.5"),
    ("speed", "-3"),
    ("speed", "3 constructor"), ("every", "0.1"), ("every", "8 mph"), ("loading", "6 m"), ("loading", "1e3"),
    ("loading", "<b>3</b>"), ("loading", "10 min"),
]  # fmt: skip
FILL = """cases => cases.map(([kind, system, texts]) => {
  const scene = document.querySelector('[data-room]').closest('.scene');
  document.querySelector(`[data-system=${system}]`).click();
  scene.querySelector(`[data-kind="${kind}"]`).click();
  for (const [name, text] of Object.entries(texts)) {
    const box = scene.querySelector(`[data-box=${name}]`);
    box.value = text;
    box.dispatchEvent(new Event('input', { bubbles: true }));
  }
  return scene.querySelector('.shown').innerHTML;
})"""
AS_THE_BROWSER = """markups => markups.map(markup => {
  const place = document.createElement('div');
  place.innerHTML = markup;
  return place.innerHTML;
})"""


def test_a_lift_from_the_room_is_computed_as_the_package_does(room, live):
    lift, cases, expected = live["room-1"], [], []
    every_one = list(itertools.product(ROOM_KINDS, SYSTEMS, *TYPED.values()))
    for kind, system, *texts in every_one[::23]:
        notebook_state().use_units(system)
        typed = dict(zip(TYPED, texts, strict=True))
        lift.choose("Penny Rope")
        lift._kinds.value = kind
        for name, text in typed.items():
            lift.boxes[name].value = text
        cases.append((kind, system, typed))
        expected.append(without_role(lift.picture.html.value))
    found, wanted = room.evaluate(FILL, cases), room.evaluate(AS_THE_BROWSER, expected)
    assert [(case, a, b) for case, a, b in zip(cases, found, wanted, strict=True) if a != b] == []
    assert len(set(found)) > 100


def test_a_lift_from_the_room_refuses_what_the_package_refuses(room, live):
    go_to(room, 9)
    lift = live["room-1"]
    for name, text in REFUSED:
        lift.choose("Penny Rope")
        lift.boxes[name].value = text
        assert "border-left" in lift.picture.html.value, (name, text)
        the(room, "button").get_by_text("Penny Rope").click()
        the(room, f"[data-box={name}]").fill(text)
        words = the(room, "[data-complaint]").inner_text()
        assert words.startswith(lift.picture.html.value.split("padding:2px 12px'>")[1].split(":")[0] + ": "), text
        assert the(room, f"[data-box={name}]").get_attribute("aria-invalid") == "true"
    the(room, "[data-box=loading]").fill("fast")
    assert words != the(room, "[data-complaint]").inner_text()
    assert the(room, "[data-complaint]").inner_text() == "Loading time: 'fast' is no number. Type digits, such as 3.4."
    for name in PRESETS:
        the(room, "button").get_by_text(name).click()
        lift.choose(name)
        number = large(lift.picture.html.value)
        assert the(room, ".shown").inner_text().startswith(number), name
    room.keyboard.press("PageUp")
    assert room.evaluate(SHOWN) == 8


def test_nothing_can_be_sent_from_it(file, page):
    page.goto(file.as_uri())
    page.evaluate("addEventListener('securitypolicyviolation', event => { window.refused = event.violatedDirective; })")
    assert page.evaluate("fetch('http://127.0.0.1:9/').then(() => 'sent', () => 'refused')") == "refused"
    page.wait_for_function("window.refused === 'connect-src'")


def test_without_the_unpacker_stills_stand_in_their_place(file, page):
    page.add_init_script("delete window.DecompressionStream")
    page.goto(f"{file.as_uri()}#6")
    the(page, ".stills-only").wait_for()
    assert the(page, ".slide").is_hidden()
    the(page, ".shown").get_by_text("1,200").first.wait_for()
    the(page, "button").get_by_text("one second more").click()
    the(page, ".shown").get_by_text("900").first.wait_for()
    page.keyboard.press("PageDown")
    assert page.evaluate(SHOWN) == 7


def test_a_browser_that_keeps_nothing_for_a_file_shows_the_talk_all_the_same(file, page):
    page.add_init_script("""for (const name of ['sessionStorage', 'localStorage'])
      Object.defineProperty(window, name, { get() { throw new DOMException('refused', 'SecurityError'); } });
      history.replaceState = () => { throw new DOMException('refused', 'SecurityError'); };""")
    page.goto(file.as_uri())
    go_to(page, 5)
    assert page.url.endswith("#5")
    the(page, "[data-hands=B]").fill("40")
    page.keyboard.press("Escape")
    page.keyboard.press("l")
    page.keyboard.press("l")
    the(page, ".result").get_by_text("990").wait_for()
    the(page, ".guesses svg").get_by_text("40", exact=True).wait_for()


CUT = """() => [...document.querySelectorAll('section.scene:not([hidden]) :is(label, output, button, h2, p)')]
  .filter(words => words.scrollWidth > words.clientWidth + 2 && words.clientWidth).map(words => words.innerText)"""


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_nothing_is_cut_on_any_screen(room, size):
    room.set_viewport_size(dict(zip(("width", "height"), size, strict=True)))
    for scene in SCENES:
        go_to(room, scene.number)
        if the(room, "[data-lock]").count():
            for box in the(room, "[data-board] input").all():
                box.fill("1200")
            room.keyboard.press("Escape")
            assert room.evaluate(reader.OUTSIDE) == [], scene.id
            room.keyboard.press("l")
            room.keyboard.press("l")
        for _ in range(2):
            for end in ("Home", "End") if the(room, "input[type=range]").count() else ("",):
                if end:
                    the(room, "input[type=range]").focus()
                    room.keyboard.press(end)
                    room.keyboard.press("Escape")
                for fault in (reader.OUTSIDE, reader.ON_THE_FOOT, CUT):
                    assert room.evaluate(fault) == [], (scene.id, end)
            room.keyboard.press("u")
        assert the(room, ".caution").bounding_box()["height"] < 60 * size[1] / 720
