"""What a reader does on an open page, in whichever view, and what the page must show then."""

import pytest

from liftcalc import Q, governing, headway, hourly_capacity, persons_from_flow, ride_time_from_rest, show
from liftcalc.exercises import BANK, Posed
from liftcalc.exercises.drawing import learner_key
from liftcalc.lifts.demo_hill import demo_hill, demo_sheet
from liftcalc.lifts.limits_of_line import limits_of


def number_box(page, label):
    """Return the number box of a name; the slider beside it has the same."""
    return page.get_by_role("spinbutton", name=label, exact=True)


# of the scene that is shown: what is drawn outside the window, beside what runs out of a picture on purpose
OUTSIDE = """() => [...document.querySelectorAll('section.scene:not([hidden]) *, .where')].filter(element => {
  if (element.closest('svg') && !element.matches('svg, svg text')) return false;
  const box = element.getBoundingClientRect();
  const inside = box.left > -1 && box.top > -1 && box.right < innerWidth + 1 && box.bottom < innerHeight + 1;
  return box.width && box.height && !inside;
}).map(element => element.outerHTML.slice(0, 90))"""
ON_THE_FOOT = """() => { const scene = document.querySelector('section.scene:not([hidden])');
  const foot = scene.querySelector('.caution').getBoundingClientRect().top + 1;
  return [...scene.querySelectorAll('.part:not(.caution)')]
    .filter(part => part.getBoundingClientRect().bottom > foot).map(part => part.innerText.slice(0, 90)); }"""


def handle(page, label):
    """Return the slider that stands beside the number box of a name."""
    row = page.locator(".widget-hbox", has=number_box(page, label)).last
    return row.locator(".noUi-handle")


# colours of the handle's edge and of the track, each with the red, green and blue of what it stands on
SEEN = """handle => {
  const of = (element, which) => getComputedStyle(element)[which].match(/[\\d.]+/g).slice(0, 3).map(Number);
  const track = of(handle.closest('.noUi-target').querySelector('.noUi-connects'), 'backgroundColor');
  const ring = getComputedStyle(handle);
  const outline = ring.outlineStyle === 'solid' ? of(handle, 'outlineColor') : [255, 255, 255];
  return [of(handle, 'borderTopColor'), track, outline];
}"""


def contrast(colour, other=(255, 255, 255)):
    """Return how far two colours are apart, as WCAG 2.2 defines contrast."""
    light = []
    for red_green_blue in (colour, other):
        parts = [part / 255 for part in red_green_blue]
        linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
        light.append(0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2] + 0.05)
    return max(light) / min(light)


def check_slider(page, slider, name, value):
    """Check what is heard and seen of a slider that has the focus: name, value with its unit, handle, track, ring."""
    assert slider.get_attribute("aria-label") == name
    assert slider.get_attribute("aria-valuetext") == value
    for colour in slider.evaluate(SEEN):
        assert contrast(colour) >= 3, "what must be seen stands out from the page by 3 to 1"


def check_start_page(page):
    """Move the line speed by keyboard: words and picture must show what the package computes."""
    panel = page.locator(".widget-vbox", has=page.locator(".result-StartPanel")).last
    status, picture = panel.locator("[role=status]"), panel.locator("svg.line-view")
    sheet = demo_sheet()
    spacing, length = sheet.mean("spacing"), sheet.mean("ridden length")
    capacity = hourly_capacity(sheet.mean("line speed"), spacing)
    status.get_by_text(f"{show(capacity, 'pph')} (ideal)", exact=True).wait_for()
    assert picture.get_attribute("role") == "img"
    speed = handle(page, "Line speed (m/s)")
    assert speed.get_attribute("role") == "slider"
    for _ in range(5):
        speed.press("ArrowRight")
    faster = Q(3.9, "m/s")
    check_slider(page, speed, "Line speed (m/s)", "3.9 m/s")
    capacity = hourly_capacity(faster, spacing)
    status.get_by_text(f"{show(capacity, 'pph')} (ideal)", exact=True).wait_for()
    pick_up = sheet.mean("pick-up acceleration")
    on_line = persons_from_flow(capacity, ride_time_from_rest(length, faster, pick_up))
    status.get_by_text(show(on_line), exact=True).wait_for()
    picture.get_by_text(f"one past the post every {show(headway(faster, spacing))}").wait_for()
    assert "rope at 3.90 m/s" in picture.get_attribute("aria-label")
    assert number_box(page, "Line speed (m/s)").input_value() == "3.9"
    # a number typed into the box, by keyboard
    spacing_box = number_box(page, "Spacing (m)")
    spacing_box.focus()  # not a click: on a busy machine the page may still shift under the mouse
    spacing_box.press("Control+a")
    spacing_box.press_sequentially("10")
    spacing_box.press("Tab")
    capacity = hourly_capacity(faster, Q(10, "m"))
    status.get_by_text(f"{show(capacity, 'pph')} (ideal)", exact=True).wait_for()
    picture.get_by_text("10.0 m from rider to rider").wait_for()
    # the rope runs, stops, and the page turns to US units
    page.get_by_role("button", name="Let the rope run").click()
    page.get_by_role("button", name="Stop the rope").wait_for()
    riders = picture.locator(".riders")
    moving = "group => getComputedStyle(group).animationPlayState + getComputedStyle(group).animationName"
    assert riders.evaluate(moving) == "runningline-view-climb"
    places = [riders.bounding_box()["x"]]
    page.wait_for_timeout(300)
    places.append(riders.bounding_box()["x"])
    assert places[0] != places[1], "the riders move"
    page.get_by_role("button", name="Stop the rope").click()
    said = page.locator(".liftcalc-said")
    said.get_by_text(f"people an hour: {show(hourly_capacity(faster, Q(10, 'm')), 'pph')} (ideal)").wait_for()
    page.get_by_role("button", name="US units", pressed=False).first.click()
    number_box(page, "Line speed (mph)").wait_for()
    status.get_by_text(f"{show(capacity, 'pph')} (ideal)", exact=True).wait_for()


def enter_number(page, id, number, unit, keys):
    """Answer with a number: by keyboard alone from field to field, or with the mouse on the button."""
    field, box = page.get_by_label(f"Answer {id}"), page.get_by_label(f"Unit {id}")
    field.focus() if keys else field.click()
    page.keyboard.press("Control+a")
    page.keyboard.type(number)
    page.keyboard.press("Tab") if keys else box.click()
    page.keyboard.press("Control+a")
    page.keyboard.type(unit)
    if keys:
        page.keyboard.press("Tab")
        page.keyboard.press("Enter")
    else:
        page.get_by_role("button", name=f"Check {id}").click()


def choose_statement(page, id, letter, keys):
    """Answer with a statement: by Tab and Space and Enter, or with the mouse."""
    check = page.get_by_role("button", name=f"Check {id}")
    posed = Posed(BANK[id])
    statements = page.locator(".exercise-box", has=check).locator(".exercise-statement")
    place = list(posed.options).index(letter)
    if keys:
        statements.nth(place).focus()
        page.keyboard.press("Space")
    else:
        statements.nth(place).click()
    statements.nth(place).get_by_text(f"✓ {letter}) {posed.statements[letter]}").wait_for()
    if keys:
        for _ in range(len(posed.options) - place):
            page.keyboard.press("Tab")
        page.keyboard.press("Enter")
    else:
        check.click()


def check_exercises(page):
    """Answer exercises of each sort, wrong then right, by keyboard alone and by mouse; then the rest of a box."""
    for id, road, keys in (("2.1", 0, True), ("2.2", 0, True), ("2.4", 0, False), ("2.5", 1, False)):
        posed = Posed(BANK[id])
        taken = posed.exercise.roads[road]
        box = page.locator(".exercise-box", has=page.get_by_label(f"Answer {id}"))
        enter_number(page, id, f"{taken.answer(posed.numbers).magnitude:.2f}", posed.exercise.unit, keys)
        box.get_by_text(f"Off. “{taken.mistake.name}”: {taken.mistake.says}").wait_for()
        enter_number(page, id, f"{posed.right.magnitude:.2f}", posed.exercise.unit, keys)
        box.get_by_text("Right.").wait_for()
    for keys in (True, False):
        for id in ("2.6", "2.7"):
            posed = Posed(BANK[id])
            wrong = next(letter for letter in posed.options if letter != posed.right)
            box = page.locator(".exercise-box", has=page.get_by_role("button", name=f"Check {id}"))
            choose_statement(page, id, wrong, keys)
            box.get_by_text(f"Off. “{posed.options[wrong].mistake.name}”").wait_for()
            choose_statement(page, id, posed.right, keys)
            box.get_by_text(f"Right. {posed.fill(posed.options[posed.right].says)}").wait_for()
    # the Enter key in the number, a clue, and the solution that asks for an attempt first
    posed = Posed(BANK["2.3"])
    number = page.get_by_label("Answer 2.3")
    box = page.locator(".exercise-box", has=number)
    page.get_by_role("button", name="Clue 2.3").click()
    box.get_by_text("Clue 1 of 3.").wait_for()
    page.get_by_role("button", name="Solution 2.3").click()
    box.get_by_text("2.3: one attempt first.").wait_for()
    number.focus()
    page.keyboard.type(f"{posed.right.magnitude:.1f} metres")
    page.keyboard.press("Enter")
    box.get_by_text("Right.").wait_for()
    page.get_by_role("button", name="Solution 2.3").click()
    box.get_by_text("2.3, worked out:").wait_for()
    # what is done stands at the end, and another learner has other numbers
    page.get_by_text("The printed numbers: 7 of 7 right, 7 tried").wait_for()
    page.get_by_label("Your name or number").fill("Maja K.")
    page.get_by_role("button", name="Take my numbers").click()
    mine = Posed(BANK["2.1"], learner_key("Maja K."))
    page.locator(".exercise-box").get_by_text(mine.text).wait_for()
    assert page.get_by_label("Answer 2.1").input_value() == ""


def check_limits(page):
    """Take a lift by its button, move grade and drive: words, picture and sliders follow."""
    panel = page.locator(".widget-vbox", has=page.locator(".result-LimitsPanel")).last
    status, picture = panel.locator("[role=status]"), panel.locator("svg").first
    for name, words in (("Penny Rope", "loading"), ("Duckling Belt", "unload"), ("Long Platter", "spacing")):
        button = panel.get_by_role("button", name=name, exact=True)
        button.focus()  # not a click: the page may still shift under the mouse
        button.press("Enter")
        line, readings = demo_hill().line(name)
        found = governing(limits_of(line, readings))
        assert found.limit.name == words
        status.get_by_text(str(found.capacity), exact=True).wait_for()
        picture.get_by_text(f"{name}: {words} governs, at most {show(found.limit.capacity)}", exact=True).wait_for()
        speed = line.line_speed.m_as("m/s")
        assert float(number_box(panel, "Line speed (m/s)").input_value()) == pytest.approx(speed, abs=0.005)
        at = "([slider, speed]) => Math.abs(slider.getAttribute('aria-valuenow') - speed) < 0.01"
        page.wait_for_function(at, arg=[handle(page, "Line speed (m/s)").element_handle(), speed])
    grade = number_box(panel, "Grade (%)")
    grade.focus()
    grade.press("Control+a")
    grade.press_sequentially("24")
    grade.press("Tab")
    picture.get_by_text("Long Platter: motor governs", exact=False).wait_for()
    torque = panel.get_by_role("button", name="constant torque")
    torque.focus()
    torque.press("Enter")
    status.get_by_text("constant torque below 2.80 m/s", exact=False).wait_for()
    before = picture.get_attribute("aria-label")
    for _ in range(3):
        handle(page, "Line speed (m/s)").press("ArrowLeft")
    panel.locator("svg").first.and_(page.locator(f"svg:not([aria-label='{before}'])")).wait_for()
    speed = number_box(panel, "Line speed (m/s)").element_handle()
    page.wait_for_function("box => box.value === '2.5'", arg=speed)


def bring(page, path, button):
    """Bring a file of one's own by a button."""
    with page.expect_file_chooser() as chooser:
        page.get_by_role("button", name=button).click()
    chooser.value.set_files(path)
