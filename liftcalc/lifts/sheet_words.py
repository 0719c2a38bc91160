"""What a sheet says in words: the routes to people an hour, the same by hand, the count, and what was not read."""

from liftcalc.formulas.capacity import hourly_capacity, hourly_capacity_from_head_count, hourly_flow_from_count
from liftcalc.levels import Capacity
from liftcalc.lifts.kinds import NOT_READ, kind_named, ride_time_of
from liftcalc.lifts.sheet_line import compared, known_of, level_of, made_from
from liftcalc.quantity_text import show
from liftcalc.tables import Lines, Table
from liftcalc.uncertainty import count_against_bound
from liftcalc.units import PlainError, Q
from liftcalc.vocabulary import ON_A_SHEET, words_of

CLOSEST = Q(1.5, "m")  # skis end to end, taken as the closest that fits: a closer spacing on the sheet goes before it
MORE_THAN_FULL = 5  # per cent by which heads in a photo may be above a full line, as readings go
FAR_OFF = 0.1  # as a part: a reading this far from what the line makes of it is worth another look
OF_CAPACITY = ("line_speed", "spacing", "persons_per_carrier")


def listed(words):
    """Return words as a list that is spoken: "a, b and c"."""
    return " and ".join(", ".join(words).rsplit(", ", 1))


def capacity_of(sheet):
    """Return people an hour by speed and spacing with their level; None where they do not follow from a sheet."""
    known = known_of(sheet)
    if any(name not in known for name in OF_CAPACITY):
        return None
    return Capacity(hourly_capacity(**{name: known[name] for name in OF_CAPACITY}), level_of(sheet))


def _first_route(sheet):
    """Return words for the readings that make the first route."""
    known = known_of(sheet)
    pitch = [name for name in made_from(sheet) if name not in ("ridden_length", "sheave_distance")]
    if sheet.has("interval") and "interval" in pitch:
        pitch = [name for name in pitch if name != "line_speed"]
    if not sheet.has("persons_per_carrier") or known["persons_per_carrier"] == Q(1, "person"):
        pitch = [name for name in pitch if name != "persons_per_carrier"]
    if sheet.has("dwell_time") and kind_named(sheet.kind or NOT_READ).reversible:
        pitch = ["persons_per_carrier", "ride_time", "dwell_time"]
    return listed([words_of(name) for name in pitch])


def routes(sheet):
    """Return the hourly figures that a sheet allows, each by its own readings and with its level."""
    found, capacity = [], capacity_of(sheet)
    if capacity is not None:
        found.append((_first_route(sheet), capacity, "the line full, no stop, no miss"))
    if sheet.has("riders_on_line", "ride_time"):
        flow = hourly_capacity_from_head_count(sheet.mean("riders_on_line"), sheet.mean("ride_time"))
        found.append(("head count and ride time", Capacity(flow, "counted"), "the line at the moment of the photos"))
    if sheet.counted:
        flow = hourly_flow_from_count(*sheet.counted)
        found.append(("count at the top", Capacity(flow, "counted"), "what really passed in that time"))
    rows = [(name, show(each.value), each.level, meaning) for name, each, meaning in found]
    if not rows:
        rows = [("none", "", "", "the sheet holds neither speed with spacing, nor heads with a ride time, nor a count")]
    return Table(f"People an hour from {sheet.name}", ("route", "people an hour", "level", "what it describes"), rows)


def routes_in_words(sheet):
    """Return what heads in a photo say beside the first route, in plain words."""
    capacity = capacity_of(sheet)
    if capacity is None:
        return Lines("People an hour do not follow from speed and spacing on this sheet: see what is left out above.")
    if not sheet.has("riders_on_line", "ride_time"):
        lacks = [name for name in ("riders_on_line", "ride_time") if not sheet.has(name)]
        return Lines(f"The route by heads and ride time is left out: {listed(map(words_of, lacks))} not read.")
    heads, ride = sheet.mean("riders_on_line"), sheet.mean("ride_time")
    flow = hourly_capacity_from_head_count(heads, ride)
    known, kind = known_of(sheet), sheet.kind or NOT_READ
    full = (capacity.value * (ride_time_of(kind, known) if "ridden_length" in known else ride)).to("person")
    many = (
        f"{show(heads)} on average in {len(sheet.of('riders_on_line'))} photos"
        if len(sheet.of("riders_on_line")) > 1
        else show(heads)
    )
    apart = 100 * ((flow / capacity.value).m_as("") - 1)
    how = "as many as" if abs(apart) < 0.5 else f"{abs(apart):.0f} in a hundred {'above' if apart > 0 else 'below'}"
    return Lines(
        f"By heads and ride time {show(flow)} pass, {how} the first route: the sheet has {many}, and a line as full as "
        f"the first route says holds {show(full)}. "
        + (
            "No line is fuller than full: look at heads, ride time, line speed and spacing again."
            if apart > MORE_THAN_FULL
            else "A photo shows one moment, and mostly a full one."
        )
    )


def _far_apart(sheet):
    """Return a sentence on each quantity whose repeats lie far apart."""
    return [
        f"{words_of(name)}: the repeats lie far apart, from {show(low)} to {show(high)}. One of them may be of "
        "something else, or in another unit: look at them again."
        for name, (low, high) in sheet.far_apart().items()
    ]


def to_look_at(sheet):
    """Return a sentence on each reading of a sheet that does not agree with the others; none where all agree."""
    return _far_apart(sheet) + [f"{each}. Look at both again." for each in compared(sheet) if abs(each.apart) > FAR_OFF]


def agreement_in_words(sheet):
    """Return whether the readings of a sheet agree: repeats with each other, and the rest with what makes the line."""
    beside = compared(sheet)
    lines = _far_apart(sheet) + [
        f"{each}.{' Look at both again.' if abs(each.apart) > FAR_OFF else ''}" for each in beside
    ]
    made = listed([words_of(name) for name in made_from(sheet)])
    head = f"The line is made from {made}."
    rest = "Nothing else was read to hold against it." if not beside else "What else was read is held against it:"
    return Lines(f"{head} {rest}", *lines)


def by_hand(sheet):
    """Return people an hour by hand, step by step, from readings rounded to what one would write down."""
    known = known_of(sheet)
    lacks = [name for name in OF_CAPACITY if name not in known]
    if lacks:
        return Lines(f"By hand, too, something is missing: {listed(map(words_of, lacks))} not read.")
    kind = kind_named(sheet.kind or NOT_READ)
    one = "carrier" if kind.has_carriers else "rider"
    speed, spacing, persons = (_rounded(known[name]) for name in OF_CAPACITY)
    each = _written((spacing / speed).m_as("s"), "s")
    steps = [_first_step(sheet, one, speed, spacing, each)]
    an_hour = _written(3600 / each.m_as("s"), "")
    steps.append(f"How many such steps are in an hour? 3,600 s ÷ {_digits(each)} s = {_digits(an_hour)}.")
    each_step = "One person" if persons.magnitude == 1 else show(persons)
    carried = an_hour.magnitude * persons.m_as("person")
    steps.append(f"{each_step} each step: {carried:,.0f} people an hour.")
    if "ridden_length" in known:
        ride, words = _ride(kind, known, speed)
        steps.append(f"How long is a ride? {words}")
        riders = ride / each.m_as("s") * persons.m_as("person")
        steps.append(
            f"How many are on the line, on average? {each_step} every {_digits(each)} s: {ride:.2f} s ÷ "
            f"{_digits(each)} s{'' if persons.magnitude == 1 else f' × {show(persons)}'} = {riders:.1f}."
        )
    said = capacity_of(sheet)
    return Lines(
        *(f"{number}. {step}" for number, step in enumerate(steps, start=1)),
        f"The package works with the means as they are, not rounded, and says {show(said.value)}.",
    )


def _rounded(value):
    """Return a quantity with the digits that one would write down."""
    text = show(value).split(" ")[0].replace(",", "").rstrip("%")
    return Q(float(text), value.units)


def _written(number, unit):
    """Return a number as one writes it down on the way, with four figures or so: the next step takes it like this."""
    return Q(round(number, 0 if number >= 1000 else 1 if number >= 100 else 2), unit)


def _digits(quantity):
    """Return the digits of a number that was written down, one after the point at least where it is a time."""
    number = quantity.magnitude
    if number == round(number, 1):
        return f"{number:,.1f}" if quantity.units == Q(1, "s").units else f"{number:,g}"
    return f"{number:,.2f}"


def _first_step(sheet, one, speed, spacing, each):
    asked = f"How long until the next {one}?"
    if "interval" in made_from(sheet):
        return f"{asked} {_digits(each)} s: the interval was timed."
    if "spacing" in made_from(sheet):
        return f"{asked} {show(spacing)} ÷ {show(speed)} = {_digits(each)} s."
    return f"{asked} {_digits(each)} s: it follows from {_first_route(sheet)}."


def _ride(kind, known, speed):
    """Return the time of a ride [s] by hand, and its words."""
    length = _rounded(known["ridden_length"])
    at_speed = (length / speed).m_as("s")
    words = f"{show(length)} ÷ {show(speed)} = {at_speed:.2f} s at the speed of the rope"
    start = known.get(kind.start_reading)
    if kind.start_reading is None:
        return at_speed, f"{words}."
    if start is None:
        return (
            at_speed,
            f"{words}. {words_of(kind.start_reading).capitalize()} not read: the start from rest is left out.",
        )
    parts = 1 if kind.reversible else 2
    more = (speed / start).m_as("s") / parts
    divided = f"{show(speed)} ÷ {'' if kind.reversible else '(2 × '}{show(start)}{'' if kind.reversible else ')'}"
    what = "to start from rest and to stop" if kind.reversible else "more, since a rider stands still at the grab"
    return at_speed + more, f"{words}; {divided} = {more:.2f} s {what}. Together {at_speed + more:.2f} s."


WAITED = {
    "yes": "People stood waiting while they were counted, so the count tells of the lift.",
    "no": "Nobody stood waiting, so the count tells how many came, and not what the lift can carry.",
    "some": "People stood waiting for part of the time, so the count tells at least what the lift carried, and perhaps "
    "not what it can.",
    None: "The sheet does not say whether people stood waiting. Without a waiting line a count tells how many came.",
}


def count_in_words(sheet):
    """Return what the count of a sheet says in plain words: its doubt, how it stands to speed over spacing, who waited.

    Parameters
    ----------
    sheet : FieldSheet
        Readings. Several counts are taken together.

    Returns
    -------
    Lines
        Two to four lines; one that says what is missing where the sheet holds no count.
    """
    if sheet.counted is None:
        return Lines("No count on this sheet: it needs a row of persons counted and one of counting time.")
    bound, known = capacity_of(sheet), known_of(sheet)
    at_ends = known.get("persons_per_carrier", Q(1, "person"))
    if bound is None or bound.level not in ("ideal", "governed"):
        found = count_against_bound(*sheet.counted, persons_per_carrier=at_ends)
        why = (
            "Line speed or spacing is not on the sheet: there is nothing to hold it against."
            if bound is None
            else f"The spacing of the sheet is {bound.level}: that is no bound to hold a count against."
        )
        lines = [*found.sentences, why]
    else:
        closest = known["spacing"]
        if not kind_named(sheet.kind or NOT_READ).has_carriers:
            closest = min(CLOSEST, closest)
        packing = Capacity(hourly_capacity(known["line_speed"], closest, at_ends), "packing")
        found = count_against_bound(*sheet.counted, bound, packing=packing, persons_per_carrier=at_ends)
        lines = list(found.sentences)
        if found.verdict == "impossible":
            lines.append(f"The closest that fits is taken as {show(closest)} from one to the next.")
    counts = len(sheet.of("persons_counted"))
    if counts > 1:
        lines[0] = lines[0].replace(": ", f", {counts} counts together: ", 1)
    return Lines(*lines, WAITED[sheet.facts.get("people_waited")])


def left_out_in_words(sheet):
    """Return what does not follow from a sheet, with the readings that would give it."""
    try:
        known = known_of(sheet)
    except PlainError as error:
        return Lines(f"These readings make no line: {error}")
    start = kind_named(sheet.kind or NOT_READ).start_reading
    gives = {
        "people an hour": OF_CAPACITY,
        "riders on the line and ride time": ("ridden_length",),
        "vertical transport": ("vertical_rise",),
        "the start of a ride": (start,) if start and sheet.kind else (),
        "the route by heads and ride time": ("riders_on_line", "ride_time"),
        "the count at the top": ("persons_counted", "counting_time"),
    }
    missing = {
        what: [name for name in names if name not in known and not (name in ON_A_SHEET and sheet.has(name))]
        for what, names in gives.items()
    }
    told = [f"{what} ({listed(map(words_of, names))} not read)" for what, names in missing.items() if names]
    if sheet.kind is None:
        told.append("what its kind would tell (kind not read)")
    if sheet.counted and "people_waited" not in sheet.facts:
        told.append("what the count tells of the lift (people waited not read)")
    return Lines(f"Left out: {'; '.join(told)}." if told else "Nothing that this page uses is missing.")
