"""The brief: equal to what the package computes, true for every kind of lift, hostile names as text, one sheet."""

import functools
import html
import re
from dataclasses import replace
from html.parser import HTMLParser

import browser
import pytest
from messages import refuses
from places import DATA

from liftcalc import Q
from liftcalc.cautions import DEFER, NEAR_THE_ROPE, ON_THE_ROPE
from liftcalc.fieldwork import read_track, read_track_speed
from liftcalc.fieldwork.minute_counts import counts_from_bytes, read_counts
from liftcalc.lifts.kinds import KINDS, ride_time_of
from liftcalc.lifts.sheet import read_sheet, sheet_from_bytes
from liftcalc.lifts.sheet_limits import sheet_limits
from liftcalc.lifts.sheet_line import known_of
from liftcalc.pages.brief import brief_links, make_brief, write_pdf
from liftcalc.pages.brief.__main__ import main
from liftcalc.pages.brief.helping import TENTHS
from liftcalc.pages.brief.pdf import NoBrowserError
from liftcalc.quantity_text import show
from liftcalc.vocabulary import words_of

HILL, KIND = sorted((DATA / "hill").glob("*.csv")), sorted((DATA / "kinds").glob("*.csv"))
HEADING = "quantity,value,unit,plus_minus,method,note\n"
COUNT = "from,minutes,persons,stop_seconds,people_waited,note\n"
PENNY = HILL[0]
TOW = ("kind,rope tow", "line speed,3.4,m/s,0.1", "spacing,6.8,m,0.5", "loading time,3,s,0.5")
SHEETS = {path.stem: read_sheet(path) for path in (*HILL, *KIND)}
BRIEFS = {name: make_brief(sheet) for name, sheet in SHEETS.items()}
PAGES = {name: brief.html() for name, brief in BRIEFS.items()}


@functools.cache
def ride():
    """Return what the track of the Penny Rope says."""
    return read_track_speed(read_track(DATA / "penny_rope_track.gpx"))


def sheet_of(*rows):
    """Return the sheet of rows, each a text such as "spacing,6.8,m"."""
    return sheet_from_bytes("sheet.csv", (HEADING + "\n".join(rows) + "\n").encode())


def minutes(*persons, waited="yes"):
    """Return a count of single minutes without a stop."""
    rows = "".join(f"10:{place:02d},1,{each},0,{waited},\n" for place, each in enumerate(persons))
    return counts_from_bytes("count.csv", (COUNT + rows).encode())


class Seen(HTMLParser):
    """Tags, attributes and text of a page."""

    def __init__(self, page):
        super().__init__()
        self.tags, self.attributes, self.texts = set(), set(), []
        self.feed(page)

    def handle_starttag(self, tag, attributes):
        self.tags.add(tag)
        self.attributes |= {name for name, _ in attributes}

    def handle_data(self, data):
        self.texts.append(data)

    @property
    def text(self):
        """The words of the page without its style, one space between two."""
        return " ".join("".join(text for text in self.texts if "@page" not in text).split())


def huge(page):
    """Return the lines that are read from afar."""
    return re.findall(r'<p class="huge[^>]*>(.*?)</p>', page)


# the numbers are those of the package


@pytest.mark.parametrize("name", [path.stem for path in HILL])
def test_every_figure_is_one_that_the_package_computes(name):
    limits, facts, text = sheet_limits(SHEETS[name]), BRIEFS[name].facts, Seen(PAGES[name]).text
    found = limits.governs
    assert (facts.at_most, facts.governs) == (found.capacity, found.limit.name)
    assert huge(PAGES[name]) == [
        f"at most {found.capacity.value.m_as('pph'):,.0f} an hour:",
        f"{found.limit.name.upper()} governs",
    ]
    assert [each.name for each in facts.limits if each.capacity is not None] == [each.name for each in found.in_order]
    for line in facts.limits:
        if line.capacity is None:
            assert all(words in line.sentence for words in limits.missing[line.name])
            assert line.sentence in text
        else:
            assert f"{show(line.capacity)}" in text
            assert line.ends is None or f"{line.ends[0].m_as('pph'):,.0f} to {show(line.ends[1])}" in text
    assert facts.ends[0] <= limits.ranges[found.limit.name][0] <= found.capacity.value <= limits.ranges["unload"][1]
    assert f"{found.next_limit.name}, {show(found.ahead)}" in text
    for reading in SHEETS[name].assumed:
        behind = [each for line in facts.limits for each in line.assumed if each.startswith(words_of(reading))]
        assert behind or any(words_of(reading) in line.sentence for line in facts.limits) or name.startswith("5_")


@pytest.mark.parametrize("name", ["3_duckling_belt", "4_lantern_double", "6_twin_penny_right"])
def test_what_would_help_is_what_a_sheet_with_that_reading_gives(name):
    sheet = SHEETS[name]
    before = sheet_limits(sheet, draws=10).governs.capacity.value
    for change in BRIEFS[name].facts.changes:
        readings = tuple(
            replace(each, value=each.value * TENTHS[change.name]) if each.name == change.name else each
            for each in sheet.readings
        )
        after = sheet_limits(replace(sheet, readings=readings), draws=10).governs
        assert change.gain.m_as("pph") == pytest.approx((after.capacity.value - before).m_as("pph"), abs=1e-6)
        assert (change.governs, change.helps) == (after.limit.name, after.capacity.value > before + Q(0.5, "pph"))


@pytest.mark.parametrize("source", ["own arithmetic: motion at constant speed, then at constant deceleration"])
def test_who_is_inside_the_stopping_distance_and_on_what_assumption(source):
    stop, text = BRIEFS["1_penny_rope"].facts.stop, Seen(PAGES["1_penny_rope"]).text
    speed = SHEETS["1_penny_rope"].mean("line_speed").m_as("m/s")
    distance = speed * (2 + 0.5) + speed**2 / (2 * 1)
    assert stop.distance.m_as("m") == pytest.approx(distance)
    spacing = SHEETS["1_penny_rope"].mean("spacing").m_as("m")
    assert stop.riders.m_as("person") == int(distance / spacing) + 1
    assert f"runs {distance:.1f} m; up to {show(stop.riders)} inside it" in text
    assert "Assumed, not measured: the attendant is looking and presses stop after 2.0 s" in text
    assert "and more where they are closer" in text
    chair = BRIEFS["4_lantern_double"].facts.stop
    assert (chair.places, chair.riders) == (1, Q(2, "person"))
    assert BRIEFS["10_reversible_tram"].facts.stop.riders is None


def test_headway_by_spacing_and_at_the_figure_that_governs():
    facts, text = BRIEFS["1_penny_rope"].facts, Seen(PAGES["1_penny_rope"]).text
    assert facts.interval.m_as("s") == pytest.approx(3600 / facts.at_most.value.m_as("pph"))
    said = f"a rider every {show(facts.headway)} by spacing and speed (ideal); at the figure above on average every"
    assert f"{said} {show(facts.interval)}." in text
    assert "a carrier of 2 every 7.0 s" in Seen(PAGES["4_lantern_double"]).text


def test_the_next_reading_is_what_makes_most_of_the_doubt():
    assert BRIEFS["1_penny_rope"].facts.take_next.startswith("Take the loading time again: it makes 100 %")
    assert "It is only assumed so far." in BRIEFS["6_twin_penny_right"].facts.take_next
    assert BRIEFS["06_fixed_chair"].facts.take_next.startswith("Take loading time: that gives the limit of")


# no ideal figure is large, and what was not read is said


@pytest.mark.parametrize("name", [path.stem for path in KIND])
def test_spacing_alone_gives_no_figure_to_be_read_from_afar(name):
    assert BRIEFS[name].facts.at_most is None
    assert huge(PAGES[name]) == ["No figure yet", "only SPACING was read"]
    ideal = sheet_limits(SHEETS[name], draws=10).governs.limit.capacity
    assert f"Spacing alone says {show(ideal)} (ideal)" in Seen(PAGES[name]).text


def test_a_spacing_of_another_level_is_no_bound():
    sheet = sheet_of("kind,rope tow", "level of spacing,counted", "line speed,3,m/s", "spacing,9,m", "loading time,1,s")
    brief = make_brief(sheet)
    assert brief.facts.at_most is None
    assert "1,200 pph (counted): what was carried" in brief.facts.why_none


def test_of_a_nearly_empty_sheet_the_page_says_what_is_missing():
    page = Seen(make_brief(sheet_of("lift,Old Rope", "line speed,3,m/s", "spacing,8,m")).html()).text
    assert "No figure yet too little was read" in page
    assert page.count("not said") == 4  # date, who, snow, kind
    assert "People waited (ring one): yes, some, no" in page
    assert "kind of lift not said" in page
    assert "motor power, efficiency, kind" in page
    assert "check again by" in page
    assert "The local code and the permit say:" in page
    assert "Who may change speed, spacing, motor or stop gates here:" in page
    assert "Read and signed" in page


def test_a_sheet_without_any_reading_makes_a_brief():
    brief = make_brief(sheet_of("lift,Old Rope"))
    assert brief.facts.stop is None
    assert "no limit can be computed" in str(brief).lower()


# the count


def test_the_count_is_that_of_clean_minutes_with_the_clock_beside_it():
    sheet, counts = SHEETS["1_penny_rope"], read_counts(DATA / "days/penny_rope_count.csv")
    brief = make_brief(sheet, counts)
    cleaned = counts.after_stops(ride_time_of(sheet.kind, known_of(sheet)))
    counted = brief.facts.counted
    assert (counted.rate, counted.by_the_clock) == (cleaned.rate(clean=True), cleaned.rate())
    text = Seen(brief.html()).text
    assert f"{counted.rate.value.m_as('pph'):,.0f} ± {counted.doubt}" in text
    assert f"By the clock, stops in it: {counted.by_the_clock.value.m_as('pph'):,.0f} ±" in text
    assert "People waited: yes" in text
    assert (counted.verdict, brief.facts.warning) == ("below", "")


def test_a_count_of_the_sheet_stands_in_and_says_that_nobody_told_who_waited():
    sheet = sheet_of("kind,rope tow", "loading time,3,s", "persons counted,33,person", "counting time,2,min")
    brief = make_brief(sheet)
    assert brief.facts.counted.rate.value.m_as("pph") == pytest.approx(33 * 30)
    assert "People waited: not said" in Seen(brief.html()).text


ABOVE = [  # persons in each of twenty minutes, whether the warning stands; the limit is 20 a minute
    ("below", 18, False),
    ("above within its doubt", 21, False),
    ("above beyond its doubt", 27, True),
    ("more than fits", 140, True),
]


@pytest.mark.parametrize(("what", "persons", "warned"), ABOVE, ids=[row[0] for row in ABOVE])
def test_a_warning_stands_across_it_where_more_were_counted(what, persons, warned):
    page = make_brief(sheet_of(*TOW), minutes(*[persons - 6, persons + 6] * 10)).html()
    assert ("DO NOT RELY ON THIS FIGURE" in page) is warned
    assert ('role="alert"' in page) is warned
    assert ("people a minute came up when we counted" in page) is not warned
    assert ("Would help:</b> not said before the figure holds" in page) is warned


@pytest.mark.parametrize(("persons", "overlap"), [(10, False), (18, True)])
def test_a_count_below_the_limit_is_held_against_the_doubt_of_both(persons, overlap):
    brief = make_brief(sheet_of(*TOW), minutes(*[persons - 1, persons + 1] * 20))
    counted, low = brief.facts.counted, brief.facts.ends[0]
    assert counted.verdict == "below"
    assert bool(low <= counted.rate.value + counted.plus_minus[-1]) is overlap
    assert ("both may say the same" in counted.said) is overlap
    assert ("Missed grabs, empty places, falls and slow-downs can do that" in counted.said) is not overlap
    assert "stops" not in counted.said, "no stop is in clean minutes"


def test_a_guest_is_told_what_was_counted_by_the_clock_while_people_waited():
    sheet, counts = SHEETS["1_penny_rope"], read_counts(DATA / "days/penny_rope_count.csv")
    persons, time = (sum(getattr(row, name) for row in counts.rows) for name in ("persons", "minutes"))
    text = Seen(make_brief(sheet, counts).html()).text
    said = f"About {persons / time:.0f} people a minute came up when we counted, stops and all. With 60 people ahead of"
    assert f"{said} you that is about {60 / (persons / time):.0f} minutes." in text
    for other in (minutes(*[17, 19] * 10, waited="no"), minutes(17), None):  # not the lift, too little, nothing
        assert "At most about 20 people a minute get on here" in Seen(make_brief(sheet, other).html()).text


def test_how_to_take_the_loading_time_is_how_the_others_were_taken():
    rows = ("kind,rope tow", "line speed,3.4,m/s,0.1", "loading time,3,s,0.5")
    for fact, words in (("starts", "from one successful start to the next"), ("readiness", "from the place free to")):
        assert words in make_brief(sheet_of(f"loading timed as,{fact}", *rows)).facts.take_next


def test_what_is_left_out_is_said_beside_the_figure():
    assert "Left out, and perhaps smaller: traction." in Seen(PAGES["4_lantern_double"]).text
    assert "perhaps smaller" not in PAGES["1_penny_rope"]


def test_a_count_is_held_against_spacing_alone_where_nothing_else_was_read():
    brief = make_brief(SHEETS["01_rope_tow"], minutes(*[34, 46] * 10))
    assert "The count is above 1,800 pph (ideal) by more than its doubt." in brief.facts.counted.said
    assert (brief.facts.at_most, brief.facts.warning) == (None, "")


def test_a_count_without_people_waiting_is_not_held_to_be_the_lift():
    text = Seen(make_brief(sheet_of(*TOW), minutes(*[9, 11] * 10, waited="no")).html()).text
    assert "Nobody waited: this is how many came, and not what the lift can carry." in text
    assert "People waited: no" in text


# a track, another lift


def test_a_track_stands_beside_the_line_speed_or_in_for_it():
    track, sheet = ride(), SHEETS["1_penny_rope"]
    assert "they agree" in make_brief(sheet, track=track).facts.track
    slower = sheet_of("kind,rope tow", "line speed,2.4,m/s,0.1")
    assert "they differ by more than their doubts" in make_brief(slower, track=track).facts.track
    without = sheet_of("kind,rope tow", "spacing,6.8,m,0.5", "loading time,1,s")
    facts = make_brief(without, track=track).facts
    assert facts.at_most.value.m_as("pph") == pytest.approx(3600 * track.speed.m_as("m/s") / 6.8)
    assert "it stands in for the line speed" in facts.track


def test_another_lift_stands_beside_it_like_for_like():
    name, said = make_brief(SHEETS["4_lantern_double"], compare=SHEETS["2_long_platter"]).facts.beside
    one, other = (sheet_limits(SHEETS[each]).governs.capacity for each in ("4_lantern_double", "2_long_platter"))
    assert name == "Long Platter"
    assert said.startswith(f"at most {other}, spacing governs.")
    assert f"{one.value.m_as('pph') / other.value.m_as('pph'):.2f} to 1, both governed" in said
    assert make_brief(SHEETS["4_lantern_double"], compare=SHEETS["09_gondola"]).facts.beside[1].startswith("nothing to")


# true for every kind of lift


@pytest.mark.parametrize("name", [path.stem for path in KIND])
def test_each_kind_says_what_its_own_riders_do_on_a_stop(name):
    text, kind = Seen(PAGES[name]).text, KINDS[SHEETS[name].kind]
    held = kind.name in ("rope tow", "handle tow")
    assert text.count("On this tow, let go when the rope stops") == 2 * held  # a caution, and the words for a guest
    assert text.count("On this lift, stay on when it stops") == 2 * (not held)
    assert ("Nobody wraps a rope round a hand" in text) is held
    assert f"own hazards: {kind.hazards[0].lower()}{kind.hazards[1:]}" in text
    assert "Only licensed people, the maker and the authority change spacing, line speed and stop gates." in text


@pytest.mark.parametrize("name", sorted(PAGES))
def test_the_cautions_stand_whole_and_nothing_outside_is_asked_for(name):
    page = html.unescape(re.sub("</?strong>", "**", PAGES[name]))
    places = [page.index(text) for text in (*NEAR_THE_ROPE, DEFER)]
    assert places == sorted(places)
    assert not re.search(r"(src|href|srcset|data|action)=|https?:|url\(|@import|<script|<link|\bon\w+=", PAGES[name])
    assert "target" not in " ".join(huge(PAGES[name]))


def test_what_is_read_from_afar_is_at_least_10_mm_high():
    capital = 0.69  # of the size of the letters: the least of the fonts that the page names
    for rule in ("h1 {", ".huge {", ".huge.long {", ".warned .huge {"):
        size = float(re.search(r"font-size: ([0-9.]+)mm", PAGES["1_penny_rope"].split(rule, 1)[1])[1])
        assert size * capital >= 10, rule


# names from anywhere

HOSTILE = {
    "markup": "<script>alert(1)</script><b onclick='x'>",
    "quotes": "\"' & &amp; {{ 7*7 }} {% raw %} */ </style>",
    "long": "W" * 10_000,
    "right to left": "\u05e9\u05dc\u05d5\u05dd \u202eabc\u2066",
    "emoji": "\U0001f3bf\u26f7\ufe0f and \U0001f468\u200d\U0001f469",
}


@pytest.mark.parametrize("what", HOSTILE)
def test_a_hostile_name_is_text(what):
    name, sheet = HOSTILE[what], sheet_of("kind,rope tow", "loading time,3,s")
    sheet = replace(sheet, facts=sheet.facts | dict.fromkeys(("lift", "line", "taken_by", "snow", "date"), "name"))
    facts = sheet.facts | dict.fromkeys(("lift", "line", "taken_by", "snow", "date"), name)
    hostile = replace(sheet, name=f"{name}.csv", facts=facts)
    page = make_brief(hostile, compare=hostile).html()
    seen, plain = Seen(page), Seen(make_brief(sheet, compare=sheet).html())
    assert (seen.tags, seen.attributes) == (plain.tags, plain.attributes)
    shown = " ".join("".join(" " if mark in "\u202e\u2066" else mark for mark in name).split())
    assert seen.text.count(shown if what != "long" else f"{'W' * 160}…") >= 5
    assert not re.search("[\u202a-\u202e\u2066-\u2069]", page)
    assert len(page) < 30_000


# the command


def run(capsys, *arguments):
    """Return the exit status of the command, and what it wrote to both."""
    status = main([str(each) for each in arguments])
    said = capsys.readouterr()
    return status, said.out, said.err


def test_one_command_writes_the_page_and_says_what_stands_on_it(tmp_path, capsys):
    target = tmp_path / "brief.html"
    files = ("--count", DATA / "days/penny_rope_count.csv", "--track", DATA / "penny_rope_track.gpx")
    status, said, _ = run(capsys, PENNY, *files, "--compare", HILL[1], "--to", target)
    assert status == 0
    assert said.startswith("Penny Rope: at most 1,200 an hour: LOADING governs\n")
    text = Seen(target.read_text(encoding="utf-8")).text
    assert "Files: 1_penny_rope.csv, penny_rope_count.csv, penny_rope_track.gpx, 2_long_platter.csv." in text
    status, _, error = run(capsys, HILL[1], "--to", target)
    assert (status, error) == (
        2, "brief.html is there already, and stays as it is. Write another name, or add --replace.\n",
    )  # fmt: skip
    assert Seen(target.read_text(encoding="utf-8")).text == text
    assert run(capsys, HILL[1], "--to", target, "--replace")[0] == 0
    assert "Long Platter" in target.read_text(encoding="utf-8")


REFUSED = [
    (("missing.csv",), "brief.html", "missing.csv: the file cannot be opened (No such file or directory). Check the "
     "name and the folder."),
    ((PENNY,), "brief.doc", "brief.doc: the brief is written as .html or .pdf. Write --to brief.html."),
    ((PENNY, "--count", PENNY), "brief.html", "1_penny_rope.csv"),
    ((PENNY, "--track", DATA / "costs.csv"), "brief.html", "costs.csv"),
    ((PENNY,), "nowhere/brief.html", "there is no such folder. Make it first, or write another."),
]  # fmt: skip


@pytest.mark.parametrize(("arguments", "to", "message"), REFUSED, ids=[row[2][:30] for row in REFUSED])
def test_what_cannot_be_met_is_said_in_one_line(tmp_path, capsys, arguments, to, message):
    status, said, error = run(capsys, *arguments, "--to", tmp_path / to)
    assert (status, said, len(error.splitlines())) == (2, "", 1)
    assert message in error
    assert not list(tmp_path.iterdir())


def test_help_names_every_option(capsys):
    with pytest.raises(SystemExit) as ended:
        main(["--help"])
    assert ended.value.code == 0
    said = capsys.readouterr().out
    assert [
        each for each in ("--count", "--track", "--compare", "--to", "--paper", "--replace") if each not in said
    ] == []


def test_without_a_chromium_a_pdf_is_refused_in_plain_words(tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("PATH", str(tmp_path))
    message = (
        "there is no Chromium on this computer, and a PDF is printed by one. Write brief.html, open it in any browser "
        "and print it from there: it fits one sheet."
    )
    refuses(lambda: write_pdf("", tmp_path / "brief.pdf"), message, NoBrowserError)
    assert run(capsys, KIND[0], "--to", tmp_path / "brief.pdf") == (2, "", f"{message}\n")
    refuses(lambda: write_pdf("", "brief.pdf", "A5"), "write_pdf: paper must be A4 or Letter, but got 'A5'.")


def test_a_notebook_saves_it_by_a_link_that_holds_the_page():
    links = brief_links(BRIEFS["1_penny_rope"])
    assert 'download="brief.html" href="data:text/html;base64,' in links._repr_html_()
    assert repr(links).startswith("brief.html: ")


# one sheet of paper

CUT = """() => {
  const [main, columns] = ['main', '.columns'].map(name => document.querySelector(name));
  const cut = [...document.querySelectorAll('.two, .three, .four, .five')]
    .filter(each => each.scrollHeight > each.clientHeight + 1);
  cut.push(...[...document.querySelectorAll('.huge')].filter(each => each.scrollWidth > each.clientWidth));
  const over = [main, columns].filter(
    each => each.scrollHeight > each.clientHeight + 1 || each.scrollWidth > each.clientWidth + 1);
  return [over.length, cut.map(each => each.textContent.slice(0, 40))];
}"""
PAPER = {"A4": (734, 1069), "Letter": (755, 1002)}  # within the margins, in pixels of 1/96 inch


def full_pages():
    """Return pages with all that may stand on one, by what they are."""
    track = ride()
    penny, platter = SHEETS["1_penny_rope"], SHEETS["2_long_platter"]
    count = read_counts(DATA / "days/penny_rope_count.csv")
    name = "".join(HOSTILE.values())
    hostile = replace(penny, name=name, facts=penny.facts | dict.fromkeys(("lift", "line", "snow", "taken_by"), name))
    return PAGES | {
        "all of it": make_brief(penny, count, track, platter).html(),
        "above": make_brief(penny, minutes(*[27, 31] * 10), track, platter).html(),
        "nearly empty": make_brief(sheet_of("lift,Old Rope", "line speed,3,m/s", "spacing,8,m")).html(),
        "hostile": make_brief(hostile, count, track, hostile).html(),
    }


def test_every_brief_is_one_sheet_of_either_paper_and_nothing_is_cut(tmp_path):
    browser.leave_to_ci()
    with browser.headless() as started, browser.page_of(started) as page:
        page.emulate_media(media="print")
        for name, text in full_pages().items():
            page.set_content(text)
            for paper, (width, height) in PAPER.items():
                page.set_viewport_size({"width": width, "height": height})
                over, cut = page.evaluate(CUT)
                assert over == 0, f"{name}, {paper}"
                assert name == "hostile" or cut == [], f"{name}, {paper}"
                printed = page.pdf(format=paper, prefer_css_page_size=False)
                assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1, f"{name}, {paper}"
        assert page.asked == []
    for paper, box in (("A4", rb"594\.9\d+ 841\.9"), ("Letter", rb"612 792")):
        write_pdf(PAGES["1_penny_rope"], tmp_path / "brief.pdf", paper)
        printed = (tmp_path / "brief.pdf").read_bytes()
        assert len(re.findall(rb"/Type\s*/Page\b", printed)) == 1
        assert re.search(rb"/MediaBox\s*\[\s*0 0 " + box, printed), paper


def test_the_cautions_of_no_kind_are_those_of_all():
    text = html.unescape(re.sub("</?strong>", "", make_brief(sheet_of("lift,Old Rope")).html()))
    assert [caution for caution in ON_THE_ROPE if caution not in text] == []
