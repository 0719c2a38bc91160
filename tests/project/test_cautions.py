"""Which caution stands where: pages on which someone may act on a lift, the printed blank, the brief, the README."""

import html
import re

import pytest
from notebook_files import PATHS, ROOT, cells_of, source_of

from liftcalc.cautions import DEFER, MATTER_MOST, NEAR_THE_ROPE, ON_THE_ROPE, ONE_LINE, THE_THREE
from liftcalc.exercises import BANK, Posed
from liftcalc.fieldwork.sheet import FieldSheet
from liftcalc.lifts.kinds import KINDS
from liftcalc.pages.blank_sheet import blank_sheet_html
from liftcalc.pages.brief import make_brief
from liftcalc.pages.talk.reading import read_scenes


def on_a_page(path):
    """Return the cautions of a notebook, as its source has them."""
    (cell,) = [cell for cell in cells_of(source_of(path)).cells if cell.source.startswith("## Cautions\n")]
    return cell.source


def in_the_box(page):
    """Return the words of the box of cautions on a page of paper."""
    box = re.search(r'<div class="cautions">(.*?)</div>', page, flags=re.DOTALL)[1]
    box = re.sub("</?strong>", "**", box).replace("<li>", "\n- ")
    return html.unescape(re.sub(r"<[^>]+>", " ", box))


def in_the_readme():
    """Return the section of the README."""
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    return text[text.index("## Cautions") :].partition("\n## ")[0].replace("\n  ", " ")


def plain(text):
    """Return words alone: one space between two, no marks for bold."""
    return " ".join(text.replace("**", "").split())


STANDS = {path.stem[:2]: on_a_page(path) for path in PATHS} | {
    "blank": in_the_box(blank_sheet_html()),
    "brief": in_the_box(make_brief(FieldSheet("sheet.csv", {}, ())).html()),  # its kind not read: it holds all of them
    "README": in_the_readme(),
}
MEASURING = ("00", "02", "05", "13", "blank", "brief", "README")

MUST_STAND = [
    ("Never step over a rope, moving or stopped, unless it is locked out.", MEASURING),
    ("Know who holds the key of the lock-out.", MEASURING),
    ("report clear to that person. No restart until the track is seen to be clear.", MEASURING),
    ("Never alone, and only with the operator's permission.", MEASURING),
    ("grooming machine is out", MEASURING),
    ("winch rope", MEASURING),
    ("Motor plate, rope tension and drag: ask the operator. Never read them at the drive.", (*MEASURING, "08")),
    ("Count, time and photograph from outside the track and the unload area.", MEASURING),
    ("No phone, tape or watch in your hand while you hold a rope, a handle or a bar", MEASURING),
    ("Ask guests before you photograph them, or let nobody be recognisable in the photo.", MEASURING),
    ("exhaust kills where it cannot get away", ("08",)),
    ("fill an engine, and only when it is stopped and cool", ("08",)),
    ("Guards stay on", ("08",)),
    ("People are crushed where", ("07",)),
    (
        "On a tow held by hand, let go when the rope stops, clear the track, and stay clear.",
        ("02", "08", "09", "13", "brief", "README"),
    ),
    (
        "On any other lift, stay on when it stops, and wait for the attendant. Whoever has fallen on the snow and is "
        "unhurt clears the track.",
        ("02", "08", "09", "13", "brief", "README"),
    ),
    ("Nobody wraps a rope round a hand or an arm.", ("02", "08", "09", "13", "brief", "README")),
    ("licensed people decide.", ("01", "03", "04", "06", "07", "08", "09", "10", *MEASURING)),
    ("Nothing here is a design, a permit or an instruction to change a lift.", MEASURING),
    ("Planning figures only, no design:", ("01", "03", "04", "06", "07", "08", "09", "10")),
    ("A stop is there for whoever has fallen. It is never a loss to argue away", ("10", "13")),
    ("An attendant on duty watches people and does not count.", ("10", "13")),
    ("People an hour is no contest.", ("10", "13")),
    ("licensed people decide.", ("11",)),
    ("Planning figures only, no design:", ("11",)),
    ("An attendant on duty watches, and does no counting.", ("11",)),
    ("People an hour is no contest.", ("11",)),
    (
        "On every lift a waiting line stands clear of the track, of rope, belt and carriers, and leaves the way out of "
        "the unload area free.",
        ("11",),
    ),
    ("Planning figures only, no design:", ("12",)),
    ("Attendants stand where the code, the authority and the sight lines ask for them.", ("12",)),
    ("Saving a post is no way to cheaper rides.", ("12",)),
    ("Prices, rates and grants are for the owner, and the books for whoever keeps them.", ("12",)),
    ("licensed people decide.", ("14",)),
    ("Planning figures only, no design:", ("14",)),
    ("A stop is there for whoever has fallen. It is never a loss to argue away", ("14",)),
    ("An attendant on duty watches people and does not count.", ("14",)),
    ("People an hour is no contest.", ("14",)),
    (
        "Only licensed people, the maker and the authority change spacing, line speed and stop gates.",
        ("02", "08", "09", "13", "brief"),
    ),
]


@pytest.mark.parametrize(
    ("words", "places"), MUST_STAND, ids=[f"{words[:50]} {places[0]}" for words, places in MUST_STAND]
)
def test_stands_wherever_someone_may_act_on_a_lift(words, places):
    assert [place for place in places if words not in plain(STANDS[place])] == []


@pytest.mark.parametrize("place", MEASURING)
def test_the_three_that_matter_most_come_first_and_alone_are_bold(place):
    lines = [line for line in STANDS[place].splitlines() if line.startswith("- ")]
    assert [plain(line) for line in lines[:3]] == [f"- {short} {more}" for short, more in MATTER_MOST]
    assert [line.startswith("- **") for line in lines] == [True] * 3 + [False] * (len(lines) - 3)


def test_the_readme_cautions_word_for_word_before_it_sends_anybody_onto_the_hill():
    cautions = plain(STANDS["README"])
    assert [text for text in (*NEAR_THE_ROPE, *ON_THE_ROPE, DEFER) if plain(text) not in cautions] == []
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    assert readme.index("## Cautions") < readme.index("## Your own readings")


@pytest.mark.parametrize("path", PATHS, ids=lambda path: path.stem)
def test_every_page_has_the_three_and_no_page_repeats_a_caution(path):
    page = plain("\n".join(cell.source for cell in cells_of(source_of(path)).cells if cell.cell_type == "markdown"))
    assert [page.count(short) for short, _ in MATTER_MOST] == [1, 1, 1]
    cautions = (*NEAR_THE_ROPE, *ON_THE_ROPE, DEFER, ONE_LINE)
    assert [text for text in cautions if page.count(plain(text)) > 1] == []
    if path.stem[:2] not in MEASURING:
        assert STANDS[path.stem[:2]].splitlines()[2].startswith(THE_THREE), "first, and bold"


AT_THE_FOOT = [
    ("measured", "Operator's leave first. Marks and tape on a locked-out lift only. Never at the drive."),
    ("counted", "Whoever counts is not on duty, and stands outside the track and the unload area."),
    ("limits", "no start is hurried for it. A stop is never a loss to argue away."),
    ("half", "Load closer, run faster, move a stop gate? Only as maker, authority and licensed people say."),
    ("price", "A real stop is tried as maker and code say."),
    ("room", "Motor, rope, brake, towers and evacuation cap a lift too."),
    (
        "home",
        "Not alone, not on duty, with leave; outside track, load and unload areas. Code and licensed people decide.",
    ),
    ("platter", "a change for the maker and the authority."),
    ("wait", "A waiting line stands clear of the track, and leaves the way out of the unload area free."),
    ("cost", "Saving a post is no way to cheaper rides."),
]


@pytest.mark.parametrize(("scene", "words"), AT_THE_FOOT, ids=[scene for scene, _ in AT_THE_FOOT])
def test_a_scene_of_the_talk_has_its_caution_at_its_foot(scene, words):
    (shown,) = (each for each in read_scenes() if each.id == scene)
    assert words in shown.caution


def test_the_watch_of_05_times_others_from_outside_the_track():
    text = cells_of(source_of(next(path for path in PATHS if path.stem.startswith("05"))))
    page = plain("\n".join(cell.source for cell in text.cells if cell.cell_type == "markdown"))
    assert "three rides with a watch" not in page
    opening, watch = page.partition("## Before you start")[0], page.partition("## A watch, and a length")[2]
    assert "other people's rides timed with a watch from outside their path" in opening
    assert "stand outside the path of the riders, with both ends in sight, and time other people's rides" in watch[:300]


CRUSHED = [
    ("rope tow", "towards the sheave"),
    ("handle tow", "towards the sheave"),
    ("conveyor", "drawn in at the ends of the belt"),
    ("fixed chair", "crushes"),
    ("fixed chair with carpet", "As a fixed chair"),
    ("detachable chair", "crushing between chairs"),
    ("gondola", "Crushing by doors"),
    ("reversible tram", "between cabin and platform"),
]


@pytest.mark.parametrize(("kind", "words"), CRUSHED)
def test_a_kind_names_the_place_where_it_crushes_or_draws_in(kind, words):
    assert words in KINDS[kind].hazards


def test_a_platter_lift_that_starts_full_is_not_told_to_clear_its_track():
    posed = Posed(BANK["8.6"])
    last = BANK["8.6"].steps(posed.numbers)[-1]
    assert "clear" not in last
    assert "No restart until nobody who fell is seen on the whole track." in last


FACTOR = [
    ("08", "The rope is to hold 1.25 times over. This safety factor is invented for this page and no rule."),
    ("09", "The rope is to hold 1.25 times over. This safety factor is invented for this page and no rule."),
    ("data", "the safety factor of 1.25 is invented for this hill and no rule"),
    ("8.7", "invented for this exercise and no rule"),
]


@pytest.mark.parametrize(("place", "words"), FACTOR, ids=[place for place, _ in FACTOR])
def test_a_safety_factor_is_called_invented_where_it_shows(place, words):
    if place == "data":
        text = (ROOT / "data" / "README.md").read_text(encoding="utf-8")
    elif place in BANK:
        text = Posed(BANK[place]).text
    else:
        text = source_of(next(path for path in PATHS if path.stem.startswith(place))).read_text(encoding="utf-8")
    assert words in plain(text)


def test_the_operator_has_the_plan_for_bringing_people_down():
    says = next(option.says for option in BANK["7.7"].options if option.mistake is None)
    assert "the operator has a plan for bringing people down; the authority says what it must hold." in says
    page = plain(source_of(next(path for path in PATHS if path.stem.startswith("07"))).read_text(encoding="utf-8"))
    assert "The plan to bring those down is the operator's, and the authority says what it must hold." in page
