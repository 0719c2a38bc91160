"""One name for one quantity: its words, its unit, its bounds, what it means, and how it is taken on a hill.

Formulas' arguments bear these names, and ``help()`` of a formula takes meaning and bound from here; so do the sheet of
a lift, its printed blank, the sliders and the messages.
"""

from dataclasses import dataclass

# who may take a reading, as the blank and the table of a sheet say it
WHO = {
    "visitor": "you, from outside the track and the unload area",
    "locked": "the operator, with the lift stopped and locked out",
    "asked": "ask the operator; never go in to read it",
    "map": "a map",
    "papers": "the lift's papers",
    "assumed": "assumed at the desk",
    "rule": "a rule; its source stands in the column method",
}
# the same beside a row of the printed blank, where there is little room
WHO_IN_BRIEF = {
    "visitor": "you, from outside",
    "locked": "operator, lift locked out",
    "asked": "ask the operator",
    "map": "a map",
    "papers": "the papers",
    "assumed": "assumed",
    "rule": "a rule",
}


@dataclass(frozen=True)
class Taken:
    """How a quantity is taken on a hill, and what of it is believable on the sheet of a lift.

    Parameters
    ----------
    least, most : float
        The range that a reading is believed in, in the quantity's unit: beyond it a digit or a unit is wrong.
    who : tuple of str
        Who may take it: keys of ``WHO``.
    how : str
        How it is taken, in a few words; empty where the meaning says it.
    of : str
        Which lifts have it: a key of ``BELONGS`` in ``liftcalc.lifts.sheet``.
    boxes : int
        Boxes for it on the printed blank; none where it is not taken on the hill.
    units : str
        Units printed beside them.
    """

    least: float
    most: float
    who: tuple
    how: str = ""
    of: str = "all"
    boxes: int = 0
    units: str = ""


@dataclass(frozen=True)
class Word:
    """One quantity, or one fact that is a word.

    Parameters
    ----------
    words : str
        How people say it.
    unit : str or None
        Unit that stands for its kind; empty for a pure number, None for what is said in a word.
    meaning : str
        What it is, in a few words.
    former : tuple of str
        Names and words that it had before, so that an older table still reads.
    zero : bool
        Whether it may be zero wherever it stands; else a formula says so where it lets it.
    whole : bool
        Whether it is counted, and so a whole number.
    among : tuple of str
        The words that a fact may be; none for any text.
    said : tuple of str
        What each of them means, in the same order, where the blank must say it; none where the words say it.
    taken : Taken or None
        How it is taken on a hill; None for what stands on no sheet.
    """

    words: str
    unit: str | None
    meaning: str
    former: tuple = ()
    zero: bool = False
    whole: bool = False
    among: tuple = ()
    said: tuple = ()
    taken: Taken | None = None


VOCABULARY = {
    # facts of a lift, which are words
    "lift": Word("lift", None, "name of the lift; two lines that are run as one lift are two sheets with one lift"),
    "line": Word("line", None, "name of this line"),
    "kind": Word("kind", None, "kind of the lift"),
    "state": Word("state", None, "whether it runs, or is proposed", among=("running", "proposal")),
    "level_of_spacing": Word(
        "level of spacing", None, "level of the spacing, and so of the capacity; ideal if it is not said",
        among=("packing", "ideal", "governed", "counted"),
    ),
    "drive_position": Word(
        "drive position", None, "where the drive sheave stands: top or bottom", among=("top", "bottom"),
    ),
    "date": Word("date", None, "day on which the readings were taken"),
    "taken_by": Word("taken by", None, "who took the readings"),
    "snow": Word("snow", None, "what the snow was like"),
    "people_waited": Word(
        "people waited", None, "whether people stood waiting while they were counted", among=("yes", "no", "some"),
    ),
    "loading_timed_as": Word(
        "loading timed as", None,
        "what the loading time was timed as: from start to start, or until ready with the place free",
        among=("readiness", "starts"), said=("place free to away, misses left out", "from start to start"),
    ),
    # the line
    "line_speed": Word(
        "line speed", "m/s", "speed of the haul rope, or of the belt", ("rope speed",),
        taken=Taken(
            0.2, 15, ("visitor", "locked", "asked"),
            "time a mark on the rope between two poles; the operator sets mark and poles", boxes=3,
            units="m/s  mph  ft/s",
        ),
    ),
    "spacing": Word(
        "spacing", "m", "distance along the rope from one rider, or one carrier, to the next",
        taken=Taken(
            0.8, 250, ("visitor", "locked"),
            "riders: photo with poles of known distance; carriers: tape, lift locked out", of="not tram",
            boxes=3, units="m  ft",
        ),
    ),
    "spacings": Word("spacings", "m", "spacing behind each kind of rider in a mix"),
    "shares": Word(
        "shares", "", "share of each kind in a mix, counted by rider, in the order of the spacings", zero=True,
    ),
    "equipment_length": Word("equipment length", "m", "length of a rider along the line, usually that of the skis"),
    "practical_gap": Word(
        "practical gap", "m", "free snow from the tails of one rider to the tips of the next", zero=True,
    ),
    "headway": Word("headway", "s", "time from one rider to the next past one point", ("time_between_riders",)),
    "interval": Word(
        "interval", "s", "time from one carrier to the next past one point",
        taken=Taken(
            1, 900, ("visitor",), "or time carrier to carrier", of="carriers", boxes=3,
            units="s",
        ),
    ),
    "persons_per_carrier": Word(
        "persons per carrier", "person", "riders on one carrier, or side by side", ("persons_per_cabin", "seats"),
        whole=True,
        taken=Taken(1, 250, ("visitor",), "1 on a rope", boxes=1, units="person"),
    ),
    "ridden_length": Word(
        "ridden length", "m", "length along the rope from grab to let-go, or from stop to stop",
        taken=Taken(
            5, 6_000, ("locked", "map"), "grab to let-go, along the slope: a tape, or a map with the rise", boxes=3,
            units="m  ft",
        ),
    ),
    "sheave_distance": Word(
        "sheave distance", "m", "distance along the line from bottom sheave to top sheave",
        taken=Taken(5, 6_000, ("asked", "map"), "bottom sheave to top sheave", boxes=1, units="m  ft"),
    ),
    "slope_length": Word("slope length", "m", "length along the slope"),
    "distance": Word("distance", "m", "distance along the rope"),
    "vertical_rise": Word(
        "vertical rise", "m", "height gained",
        taken=Taken(0.3, 2_500, ("map", "papers"), boxes=3, units="m  ft"),
    ),
    "horizontal_run": Word("horizontal run", "m", "length on the map, which is always horizontal"),
    "grade": Word("grade", "", "rise over horizontal run, the tangent of the slope angle", zero=True),
    "angle": Word("angle", "degree", "angle of the slope to the horizontal", zero=True),
    "altitude": Word("altitude", "m", "height above the sea", zero=True),
    "ride_time": Word(
        "ride time", "s", "time from grab to let-go, or from stop to stop", ("transit_time",),
        taken=Taken(3, 3_600, ("visitor",), "one rider, grab to let-go", boxes=3, units="s  min"),
    ),
    "time_spent": Word("time spent", "s", "mean time that each person spends in the place"),
    "riders": Word("riders", "person", "riders counted"),
    "riders_on_line": Word(
        "head count", "person", "riders on the line at once", ("head_count", "riders on the line"),
        whole=True,
        taken=Taken(
            0, 2_000, ("visitor",), "heads on the running line, in one photo", of="not tram", boxes=3, units="person",
        ),
    ),
    "persons_counted": Word(
        "persons counted", "person", "persons who passed in the counting time", whole=True,
        taken=Taken(
            0, 20_000, ("visitor",), "past the top, from outside the unload area", boxes=3, units="person",
        ),
    ),
    "counting_time": Word(
        "counting time", "s", "how long the count lasted",
        taken=Taken(20, 36_000, ("visitor",), "and the minutes that it took", boxes=3, units="min"),
    ),
    "spread_of_gaps": Word("spread of gaps", "", "standard deviation of the gaps over their mean"),
    "first_rider_away": Word(
        "first rider away", "m", "distance of the first rider below the post at the start", zero=True,
    ),
    "hourly_capacity": Word(
        "hourly capacity", "person/hour", "persons an hour past one point",
        taken=Taken(
            10, 8_000, ("papers",), "a figure of the maker; its level stands in the column method", units="pph",
        ),
    ),
    "carriers_on_loop": Word(
        "carriers on the loop", "", "carriers on the whole loop, up and down", ("carriers",), whole=True,
        taken=Taken(2, 600, ("visitor", "asked"), "up and down together", of="carriers", boxes=1),
    ),
    "carriers_out": Word(
        "carriers out", "", "carriers that are out of service, so that their places run empty", zero=True,
    ),
    "dwell_time": Word(
        "dwell time", "s", "how long the cabins stand in the stations between two trips", zero=True,
        taken=Taken(5, 1_800, ("visitor",), of="tram", units="s"),
    ),
    "carrier_length": Word(
        "carrier length", "m", "length of one carrier in the station",
        taken=Taken(0.3, 15, ("papers",), of="detachable", units="m  ft"),
    ),
    "carrier_gap": Word(
        "carrier gap", "m", "free length between two carriers in the station", zero=True,
        taken=Taken(0, 20, ("papers",), of="detachable", units="m  ft"),
    ),
    "station_speed": Word(
        "station speed", "m/s", "speed of the carriers in the station",
        taken=Taken(0.05, 3, ("visitor", "papers"), of="detachable", units="m/s  ft/s"),
    ),
    "station_time": Word(
        "station time", "s", "time of one carrier off the rope, in both stations together", zero=True,
        taken=Taken(1, 900, ("visitor",), of="detachable", units="s"),
    ),
    "carpet_speed": Word(
        "carpet speed", "m/s", "speed of a loading carpet", zero=True,
        taken=Taken(0, 2, ("asked",), of="carpet", units="m/s  ft/s"),
    ),
    # loading and unloading
    "loading_time": Word(
        "loading time", "s", "mean time between successful starts at one place",
        taken=Taken(0.5, 120, ("visitor",), "at one place", boxes=3, units="s"),
    ),
    "loading_places": Word(
        "loading places", "", "places where riders start at once", whole=True,
        taken=Taken(1, 20, ("visitor",), boxes=1),
    ),
    "clearing_time": Word(
        "clearing time", "s", "time until one unloading place is clear again",
        taken=Taken(
            0.5, 120, ("visitor",),
            "a rider's arrival until the place is clear", boxes=3, units="s",
        ),
    ),
    "unloading_places": Word(
        "unloading places", "", "places where riders get clear at once", whole=True,
        taken=Taken(1, 20, ("visitor",), boxes=1),
    ),
    "clear_length": Word("clear length", "m", "length that a rider must have moved to make room for the next"),
    "mean_time": Word("mean time", "s", "mean time until the next rider is ready, were there no floor"),
    "floor": Word("floor", "s", "least time from one start to the next, such as the headway of the rope"),
    "time_variation": Word("variation of the times", "", "standard deviation of the times over their mean"),
    "crowd": Word("crowd", "person", "people who ski this lift and nothing else"),
    "ride_and_descent": Word("ride and descent", "s", "time of one ride and one descent, without waiting and loading"),
    # the waiting line
    "arrival_rate": Word("arrival rate", "person/hour", "persons an hour who join the line"),
    "second_moment": Word("second moment of the times", "s**2", "mean of the squares of the loading times"),
    "people_in_line": Word("people in line", "person", "persons who stand in the line and wait", zero=True),
    # the slope
    "rider_density": Word("rider density", "person/hectare", "riders on each hectare of slope at once"),
    "slope_area": Word("slope area", "hectare", "area of the slopes that the lift serves"),
    "descent_time": Word("descent time", "s", "mean time of one descent, stops on the slope included"),
    "vertical_transport": Word(
        "vertical transport", "person*ft/hour", "persons an hour times the vertical rise, those of all lifts added up",
    ),
    "time_open": Word("time open", "hour", "how long the lifts run in a day"),
    "vertical_demand": Word("vertical demand", "ft", "vertical rise that one guest wants to ride in a day"),
    "guests": Word("guests", "person", "guests on the hill in a day"),
    # stopping
    "stop_delay": Word(
        "stop delay", "s", "time from the stop button, or the gate, until the rope begins to slow", zero=True,
    ),
    "reaction_time": Word("reaction time", "s", "time from the fall until the attendant presses the button", zero=True),
    "standing_gap": Word("standing gap", "m", "spacing of riders who stand still, one behind the other"),
    "deceleration": Word("deceleration", "m/s**2", "how hard the rope, or a rider, slows"),
    "rope_deceleration": Word("rope deceleration", "m/s**2", "how hard the rope slows"),
    "brake_force": Word("brake force", "N", "force of the brake along the rope", zero=True),
    # pull, work and power
    "rider_mass": Word(
        "rider mass", "kg", "mass of one rider with clothes, skis and all", ("mean_mass",),
        taken=Taken(20, 150, ("assumed",), units="kg  lb"),
    ),
    "mass_variation": Word(
        "variation of the masses", "", "standard deviation of the riders' masses over their mean", zero=True,
    ),
    "snow_friction": Word(
        "snow friction", "", "friction of skis on snow", ("friction",), zero=True,
        taken=Taken(0.01, 0.3, ("assumed",), of="on skis"),
    ),
    "glove_friction": Word("glove friction", "", "friction of glove on rope"),
    "tether_angle": Word(
        "tether angle", "degree", "angle of a tether to the slope", zero=True,
        taken=Taken(0, 80, ("visitor",), "from a photo from the side", of="tether", units="degree"),
    ),
    "sheave_drag_share": Word(
        "sheave drag share", "", "drag of the sheaves as a share of the load on them", ("sheave_share",), zero=True,
        taken=Taken(0.005, 0.15, ("assumed",), of="carried", units="%"),
    ),
    "hanging_mass": Word(
        "hanging mass", "kg", "mass of the rope and all empty carriers",
        taken=Taken(50, 500_000, ("papers",), of="carried", units="kg  lb"),
    ),
    "bed_friction": Word(
        "bed friction", "", "friction of a belt on its bed", zero=True,
        taken=Taken(0.05, 0.8, ("assumed",), of="conveyor"),
    ),
    "return_friction": Word(
        "return friction", "", "friction of a belt on its way back", zero=True,
        taken=Taken(0.01, 0.5, ("assumed",), of="conveyor"),
    ),
    "belt_mass_per_length": Word(
        "belt mass per length", "kg/m", "mass of one metre of belt",
        taken=Taken(1, 60, ("papers",), of="conveyor", units="kg/m  lb/ft"),
    ),
    "pull": Word("pull", "N", "steady pull of one rider along the rope; of a tether, its part along the rope"),
    "idle_drag": Word(
        "idle drag", "N", "drag of the whole empty rope or belt", zero=True,
        taken=Taken(10, 200_000, ("asked",), boxes=1, units="N  lbf"),
    ),
    "strand_drag": Word(
        "strand drag", "N", "drag of one strand of the empty rope: half of the idle drag, if both are alike",
        zero=True,
    ),
    "ride_work": Word("work of a ride", "J", "work of one ride at a steady speed"),
    "energy_per_rider": Word("energy per rider", "J", "energy that the drive gives to one rider"),
    "efficiency": Word(
        "efficiency", "", "part of the motor's power that reaches the rope",
        taken=Taken(0.3, 0.99, ("assumed",), units="%"),
    ),
    "motor_power": Word(
        "motor power", "kW", "rated power of the motor", ("rated_power",),
        taken=Taken(0.5, 5_000, ("asked",), boxes=1, units="kW  hp"),
    ),
    "base_speed": Word(
        "base speed", "m/s", "line speed at the motor's rated speed, of a drive at constant torque",
        taken=Taken(0.2, 15, ("asked",), units="m/s  mph"),
    ),
    "pick_up_acceleration": Word(
        "pick-up acceleration", "m/s**2", "how hard a rider speeds up",
        taken=Taken(0.1, 10, ("assumed",), of="from rest", units="m/s²"),
    ),
    "acceleration": Word(
        "acceleration", "m/s**2", "how hard a cabin speeds up, and slows",
        taken=Taken(0.05, 2, ("papers",), of="tram", units="m/s²"),
    ),
    "starting_acceleration": Word(
        "starting acceleration", "m/s**2", "how hard the rope speeds up at a start with riders on it", zero=True,
        taken=Taken(0.01, 3, ("asked",), units="m/s²"),
    ),
    "moving_mass": Word(
        "moving mass", "kg", "mass of the rope, carriers and sheaves that move with it",
        taken=Taken(20, 1_000_000, ("papers",), units="kg  lb"),
    ),
    "drive_inertia_mass": Word(
        "drive inertia as mass at the rope", "kg", "inertia of rotor, gear and brake disc, as a mass at the rope",
        zero=True,
        taken=Taken(0, 100_000, ("papers",), units="kg  lb"),
    ),
    "moment_of_inertia": Word(
        "moment of inertia", "kg*m**2",
        "moment of inertia of a rotor, gear or brake disc about its own axle, from the maker's papers",
    ),
    "sheave_radius": Word("sheave radius", "m", "radius of the drive sheave at the rope"),
    "gear_ratio": Word("gear ratio", "", "turns of what is geared for one turn of the drive sheave"),
    # grip of the rope
    "slack_tension": Word(
        "slack tension", "N", "tension of the slack side at the drive sheave, of the empty line running steadily",
        ("empty_slack_tension", "slack-side tension"), zero=True,
        taken=Taken(100, 1_000_000, ("asked",), "or counterweight", boxes=1, units="N  lbf"),
    ),
    "counterweight": Word(
        "counterweight", "N", "force on the carriage of the sheave without a drive; the two strands share it",
        ("counterweight_force",),
        taken=Taken(200, 2_000_000, ("asked",), "or slack tension", of="rope", boxes=1, units="N  lbf"),
    ),
    "rope_mass_per_length": Word(
        "rope mass per length", "kg/m", "mass of one metre of rope",
        taken=Taken(0.1, 30, ("papers",), "with the empty carriers spread over it", of="rope", units="kg/m  lb/ft"),
    ),
    "lining_friction": Word(
        "lining friction", "", "friction of rope on the lining of the drive sheave", ("rope_friction",), zero=True,
        taken=Taken(0.03, 0.8, ("assumed",)),
    ),
    "groove_angle": Word(
        "groove angle", "degree", "angle between the sides of the groove of the drive sheave",
        taken=Taken(20, 180, ("asked",), of="rope", boxes=1, units="degree"),
    ),
    "wrap_angle": Word(
        "wrap angle", "degree", "angle over which the rope lies on the drive sheave",
        taken=Taken(90, 900, ("asked",), boxes=1, units="degree"),
    ),
    "grip_safety_factor": Word(
        "grip safety factor", "", "how many times over the rope must hold", ("safety_factor",),
        taken=Taken(1, 5, ("rule",)),
    ),
    "held_force": Word("held force", "N", "force of both hands together along the rope", zero=True),
    # cost; a season is what a lift does in one year
    "price": Word("price", "dollar", "what is paid for the lift, ready to run", zero=True),
    "salvage": Word("salvage", "dollar", "what the lift still brings at the end of its life", zero=True),
    "life": Word("life", "season", "seasons until it is replaced"),
    "interest": Word("interest", "", "interest of a year, as a part of the money", zero=True),
    "replacement_price": Word("replacement price", "dollar", "what a new rope or belt costs, fitted", zero=True),
    "running_hours": Word("running hours", "hour/season", "hours a season in which the lift runs"),
    "shut_hours": Word("shut hours", "hour/season", "hours a season that are paid while the lift stands", zero=True),
    "posts": Word("posts", "", "places that are staffed whenever the lift runs"),
    "break_share": Word("break share", "", "paid hours for breaks, as a part of the other paid hours", zero=True),
    "wage": Word("wage", "dollar/hour", "cost of a paid hour with all that goes with it; volunteers: zero", zero=True),
    "rides": Word("rides", "person/season", "rides carried a season, one person each"),
    "idle_power": Word("idle power", "kW", "power of the motor while nobody rides", zero=True),
    "energy_price": Word("energy price", "dollar/kilowatt_hour", "price of a kilowatt-hour", zero=True),
    "billed_power": Word("billed power", "kW", "peak that the meter bills", zero=True),
    "demand_price": Word("demand price", "dollar/kW", "price of a billed kilowatt a month", zero=True),
    "billed_months": Word("billed months", "", "months a season for which the peak is billed", zero=True),
    "season_cost": Word("cost of a season", "dollar/season", "all that the lift costs a season"),
    "ticket_price": Word("ticket price", "dollar", "price of one guest's ticket for a day", zero=True),
}  # fmt: skip

FACTS = tuple(name for name, word in VOCABULARY.items() if word.unit is None)
ON_A_SHEET = (*FACTS, *(name for name, word in VOCABULARY.items() if word.taken))  # what the sheet of a lift may hold


def _plainly(called):
    """Return a name or words without what people write in several ways: capitals, hyphens, low lines, blanks."""
    return " ".join(called.casefold().replace("_", " ").replace("-", " ").split())


_CALLED = {_plainly(called): name for name, word in VOCABULARY.items() for called in (*word.former, word.words, name)}


def words_of(name):
    """Return how people say a quantity, from its name; of a name that stands not here, the name as words."""
    return VOCABULARY[name].words if name in VOCABULARY else name.replace("_", " ")


def name_of(called):
    """Return the name of a quantity from its name, its words, or what it was called before; else the text itself."""
    return _CALLED.get(_plainly(called), called)
