"""One name for one quantity: its words, its unit, and what it means, as formulas, readings and messages say it.

A formula's arguments bear these names, and ``help()`` of a formula takes their meaning from here.
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Word:
    """One quantity.

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
    """

    words: str
    unit: str | None
    meaning: str
    former: tuple = ()


VOCABULARY = {
    # the line
    "line_speed": Word("line speed", "m/s", "speed of the haul rope, or of the belt"),
    "spacing": Word("spacing", "m", "distance along the rope from one rider, or one carrier, to the next"),
    "spacings": Word("spacings", "m", "spacing behind each kind of rider in a mix"),
    "shares": Word("shares", "", "share of each kind in a mix, counted by rider, in the order of the spacings"),
    "equipment_length": Word("equipment length", "m", "length of a rider along the line, usually that of the skis"),
    "practical_gap": Word("practical gap", "m", "free snow from the tails of one rider to the tips of the next"),
    "headway": Word("headway", "s", "time from one rider to the next past one point", ("time_between_riders",)),
    "interval": Word("interval", "s", "time from one carrier to the next past one point"),
    "persons_per_carrier": Word(
        "persons per carrier", "person", "riders on one carrier, or side by side", ("persons_per_cabin", "seats")
    ),
    "ridden_length": Word("ridden length", "m", "length along the rope from grab to let-go, or from stop to stop"),
    "sheave_distance": Word("sheave distance", "m", "distance along the line from bottom sheave to top sheave"),
    "slope_length": Word("slope length", "m", "length along the slope"),
    "distance": Word("distance", "m", "distance along the rope"),
    "vertical_rise": Word("vertical rise", "m", "height gained"),
    "horizontal_run": Word("horizontal run", "m", "length on the map, which is always horizontal"),
    "grade": Word("grade", "", "rise over horizontal run, the tangent of the slope angle"),
    "angle": Word("angle", "degree", "angle of the slope to the horizontal"),
    "altitude": Word("altitude", "m", "height above the sea"),
    "ride_time": Word("ride time", "s", "time from grab to let-go, or from stop to stop", ("transit_time",)),
    "time_spent": Word("time spent", "s", "mean time that each person spends in the place"),
    "riders": Word("riders", "person", "riders counted"),
    "riders_on_line": Word("head count", "person", "riders on the line at once", ("head_count", "riders on the line")),
    "persons_counted": Word("persons counted", "person", "persons who passed in the counting time"),
    "counting_time": Word("counting time", "s", "how long the count lasted"),
    "spread_of_gaps": Word("spread of gaps", "", "standard deviation of the gaps over their mean"),
    "first_rider_away": Word("first rider away", "m", "distance of the first rider below the post at the start"),
    "hourly_capacity": Word("hourly capacity", "person/hour", "persons an hour past one point"),
    "carriers_on_loop": Word("carriers on the loop", "", "carriers on the whole loop, up and down", ("carriers",)),
    "carriers_out": Word("carriers out", "", "carriers that are out of service, so that their places run empty"),
    "dwell_time": Word("dwell time", "s", "how long the cabins stand in the stations between two trips"),
    "carrier_length": Word("carrier length", "m", "length of one carrier in the station"),
    "carrier_gap": Word("carrier gap", "m", "free length between two carriers in the station"),
    "station_speed": Word("station speed", "m/s", "speed of the carriers in the station"),
    "station_time": Word("station time", "s", "time of one carrier off the rope, in both stations together"),
    "carpet_speed": Word("carpet speed", "m/s", "speed of a loading carpet"),
    # loading and unloading
    "loading_time": Word("loading time", "s", "mean time between successful starts at one place"),
    "loading_places": Word("loading places", "", "places where riders start at once"),
    "clearing_time": Word("clearing time", "s", "time until one unloading place is clear again"),
    "unloading_places": Word("unloading places", "", "places where riders get clear at once"),
    "clear_length": Word("clear length", "m", "length that a rider must have moved to make room for the next"),
    "mean_time": Word("mean time", "s", "mean time until the next rider is ready, were there no floor"),
    "floor": Word("floor", "s", "least time from one start to the next, such as the headway of the rope"),
    "time_variation": Word("variation of the times", "", "standard deviation of the times over their mean"),
    "crowd": Word("crowd", "person", "people who ski this lift and nothing else"),
    "ride_and_descent": Word("ride and descent", "s", "time of one ride and one descent, without waiting and loading"),
    "rider_density": Word("rider density", "person/hectare", "riders on each hectare of slope at once"),
    "slope_area": Word("slope area", "hectare", "area of the slopes that the lift serves"),
    "descent_time": Word("descent time", "s", "mean time of one descent, stops on the slope included"),
    # stopping
    "stop_delay": Word("stop delay", "s", "time from the stop button, or the gate, until the rope begins to slow"),
    "reaction_time": Word("reaction time", "s", "time from the fall until the attendant presses the button"),
    "standing_gap": Word("standing gap", "m", "spacing of riders who stand still, one behind the other"),
    "deceleration": Word("deceleration", "m/s**2", "how hard the rope, or a rider, slows"),
    "rope_deceleration": Word("rope deceleration", "m/s**2", "how hard the rope slows"),
    "brake_force": Word("brake force", "N", "force of the brake along the rope"),
    # pull, work and power
    "rider_mass": Word("rider mass", "kg", "mass of one rider with clothes, skis and all", ("mean_mass",)),
    "mass_variation": Word("variation of the masses", "", "standard deviation of the riders' masses over their mean"),
    "snow_friction": Word("snow friction", "", "friction of skis on snow", ("friction",)),
    "glove_friction": Word("glove friction", "", "friction of glove on rope"),
    "tether_angle": Word("tether angle", "degree", "angle of a tether to the slope"),
    "sheave_drag_share": Word(
        "sheave drag share", "", "drag of the sheaves as a share of the load on them", ("sheave_share",)
    ),
    "hanging_mass": Word("hanging mass", "kg", "mass of the rope and all empty carriers"),
    "bed_friction": Word("bed friction", "", "friction of a belt on its bed"),
    "return_friction": Word("return friction", "", "friction of a belt on its way back"),
    "belt_mass_per_length": Word("belt mass per length", "kg/m", "mass of one metre of belt"),
    "pull": Word("pull", "N", "steady pull of one rider along the rope; of a tether, its part along the rope"),
    "idle_drag": Word("idle drag", "N", "drag of the whole empty rope or belt"),
    "strand_drag": Word(
        "strand drag", "N", "drag of one strand of the empty rope: half of the idle drag, if both are alike"
    ),
    "ride_work": Word("work of a ride", "J", "work of one ride at a steady speed"),
    "energy_per_rider": Word("energy per rider", "J", "energy that the drive gives to one rider"),
    "efficiency": Word("efficiency", "", "part of the motor's power that reaches the rope"),
    "motor_power": Word("motor power", "kW", "rated power of the motor", ("rated_power",)),
    "base_speed": Word("base speed", "m/s", "line speed at the motor's rated speed, of a drive at constant torque"),
    "pick_up_acceleration": Word("pick-up acceleration", "m/s**2", "how hard a rider speeds up"),
    "acceleration": Word("acceleration", "m/s**2", "how hard a cabin speeds up, and slows"),
    "starting_acceleration": Word(
        "starting acceleration", "m/s**2", "how hard the rope speeds up at a start with riders on it"
    ),
    "moving_mass": Word("moving mass", "kg", "mass of the rope, carriers and sheaves that move with it"),
    "moment_of_inertia": Word(
        "moment of inertia", "kg*m**2",
        "moment of inertia of a rotor, gear or brake disc about its own axle, from the maker's papers",
    ),
    "sheave_radius": Word("sheave radius", "m", "radius of the drive sheave at the rope"),
    "gear_ratio": Word("gear ratio", "", "turns of what is geared for one turn of the drive sheave"),
    # grip of the rope
    "drive_position": Word("drive position", None, "where the drive sheave stands: top or bottom"),
    "slack_tension": Word(
        "slack tension", "N", "tension of the slack side at the drive sheave, of the empty line running steadily",
        ("empty_slack_tension", "slack-side tension"),
    ),
    "counterweight": Word(
        "counterweight", "N", "force on the carriage of the sheave without a drive; the two strands share it",
        ("counterweight_force",),
    ),
    "rope_mass_per_length": Word("rope mass per length", "kg/m", "mass of one metre of rope"),
    "lining_friction": Word(
        "lining friction", "", "friction of rope on the lining of the drive sheave", ("rope_friction",)
    ),
    "groove_angle": Word("groove angle", "degree", "angle between the sides of the groove of the drive sheave"),
    "wrap_angle": Word("wrap angle", "degree", "angle over which the rope lies on the drive sheave"),
    "grip_safety_factor": Word(
        "grip safety factor", "", "how many times over the rope must hold", ("safety_factor",)
    ),
    "held_force": Word("held force", "N", "force of both hands together along the rope"),
}  # fmt: skip

_CALLED = {called: name for name, word in VOCABULARY.items() for called in (*word.former, word.words)}


def words_of(name):
    """Return how people say a quantity, from its name."""
    return VOCABULARY[name].words


def name_of(called):
    """Return the name of a quantity from its name, its words, or what it was called before; else the text itself."""
    return called if called in VOCABULARY else _CALLED.get(called, called)
