"""The printed set: text, numbers and kind of answer of every question, by its id.

All numbers are invented for the demo hill.
"""

from liftcalc.units import Q

PRINTED = {
    # 00: the whole job
    "0.1": (
        "A handle tow runs at {line_speed}. Its riders stand {spacing} apart. How many people an hour is that?",
        {"line_speed": Q(2.5, "m/s"), "spacing": Q(7.5, "m")},
        "whole pph",
    ),
    "0.2": (
        "On the same kind of tow, {ridden_length} are ridden and riders stand {spacing} apart. "
        "How many are on the line, on average?",
        {"ridden_length": Q(180, "m"), "spacing": Q(8, "m")},
        "persons, one digit after the point",
    ),
    "0.3": (
        "In one photo of a running tow you count {head_count}. One rider takes {ride_time} from grab to let-go. "
        "How many people an hour is that, and what is the level of this number?",
        {"head_count": Q(18, "person"), "ride_time": Q(54, "s")},
        "whole pph, and a level: packing, ideal, governed or counted",
    ),
    "0.4": (
        "The same tow is made {factor} times as long, with the same speed and spacing. "
        "What happens to the people an hour, and what to the riders on the line?",
        {"factor": Q(2, "")},
        "for each: doubles, halves, or stays; with a reason",
    ),
    "0.5": (
        "A tow lifts {capacity} over a rise of {vertical_rise}. What is its vertical transport?",
        {"capacity": Q(1200, "pph"), "vertical_rise": Q(80, "ft")},
        "whole VTFH",
    ),
    # 01: units
    "1.1": (
        "A phone shows {line_speed}. How many metres a second is that?",
        {"line_speed": Q(8.0, "mph")},
        "m/s, two digits after the point",
    ),
    "1.2": (
        "A mark on the rope passes {distance} between two poles in {time}. What is the line speed in feet a minute?",
        {"distance": Q(100, "ft"), "time": Q(9.5, "s")},
        "whole ft/min",
    ),
    "1.3": (
        "The plate on a motor made in Europe reads {motor_power}. How many kilowatts is that?",
        {"motor_power": Q(25, "metric_horsepower")},
        "kW, one digit after the point",
    ),
    "1.4": (
        "A rope runs at {line_speed} with {spacing} from rider to rider. Someone rounds riders a second to one digit "
        "after the point and multiplies by 3,600. By how many people an hour is the result off?",
        {"line_speed": Q(2.9, "m/s"), "spacing": Q(8.2, "m")},
        "whole pph, too high or too low",
    ),
    "1.5": (
        "A poster at the ticket hut says: 'our tow runs at {line_speed}, that is {printed}'. "
        "Which mistake was made in turning one unit into the other?",
        {"line_speed": Q(7.5, "mph"), "printed": Q(5.1, "ft/s")},
        "one sentence, and the right number in ft/s, one digit after the point",
    ),
    # 02: spacing
    "2.1": (
        "At {line_speed} riders stand {spacing} apart. What is the headway?",
        {"line_speed": Q(3.0, "m/s"), "spacing": Q(7.8, "m")},
        "s, one digit after the point",
    ),
    "2.2": (
        "A rider takes hold every {headway} on a rope at {line_speed}. What is the spacing?",
        {"headway": Q(3.5, "s"), "line_speed": Q(2.6, "m/s")},
        "m, one digit after the point",
    ),
    "2.3": (
        "In a photo you count {riders} between two marks {distance} apart, the first at one mark and the last at the "
        "other. What is the spacing?",
        {"riders": Q(9, "person"), "distance": Q(60, "m")},
        "m, one digit after the point",
    ),
    "2.4": (
        "At {line_speed} an attendant needs {reaction_time} to press stop, the rope begins to slow {stop_delay} later, "
        "and then slows by {rope_deceleration}. How far does the rope run after a fall?",
        {
            "line_speed": Q(3.0, "m/s"),
            "reaction_time": Q(1.8, "s"),
            "stop_delay": Q(0.4, "s"),
            "rope_deceleration": Q(1.25, "m/s**2"),
        },
        "m, one digit after the point",
    ),
    "2.5": (
        "A rider needs {clearing_time} to leave the unload area. The owner wants {spacing} at {line_speed}. "
        "How many riders are in the area at once, and would you agree to that spacing?",
        {"clearing_time": Q(7, "s"), "spacing": Q(5.0, "m"), "line_speed": Q(2.8, "m/s")},
        "persons, one digit after the point; yes or no, with a reason",
    ),
    # 03: riders on the line
    "3.1": (
        "A tow is ridden over {ridden_length} with {spacing} from rider to rider. How many are on it, on average, and "
        "how many at most at one moment?",
        {"ridden_length": Q(210, "m"), "spacing": Q(9, "m")},
        "persons, one digit after the point; and whole persons",
    ),
    "3.2": (
        "A tow carries {capacity} and a ride takes {ride_time}. How many are on the line, on average?",
        {"capacity": Q(900, "pph"), "ride_time": Q(72, "s")},
        "whole persons",
    ),
    "3.3": (
        "A platter lift has {sheave_distance} between its sheaves and a platter every {spacing} along the rope. "
        "How many platters hang on the loop?",
        {"sheave_distance": Q(385, "m"), "spacing": Q(17.5, "m")},
        "a whole number",
    ),
    "3.4": (
        "No more than {riders} should be on a tow at once, on average. It is ridden over {ridden_length}. "
        "What is the least spacing?",
        {"riders": Q(15, "person"), "ridden_length": Q(150, "m")},
        "m, one digit after the point",
    ),
    "3.5": (
        "A report says: 'Our lift of {ridden_length} has a rider every {spacing}, so {printed} ride at once, and in an "
        "hour {printed} times 60 get up.' Which two mistakes are in it?",
        {"ridden_length": Q(120, "m"), "spacing": Q(8, "m"), "printed": Q(16, "person")},
        "two sentences",
    ),
    # 04: hourly capacity
    "4.1": (
        "A rope runs at {line_speed} with {spacing} from rider to rider. How many people an hour, if every place is "
        "taken?",
        {"line_speed": Q(9.0, "ft/s"), "spacing": Q(25, "ft")},
        "whole pph",
    ),
    "4.2": (
        "A chair for {persons} comes every {interval}. What is its hourly capacity?",
        {"persons": Q(2, "person"), "interval": Q(6.5, "s")},
        "whole pph",
    ),
    "4.3": (
        "A club wants {capacity} from a rope at {line_speed}. What spacing does that ask for, and what headway?",
        {"capacity": Q(1000, "pph"), "line_speed": Q(2.7, "m/s")},
        "m and s, one digit after the point each",
    ),
    "4.4": (
        "Half of the riders stand {wide} apart and half {close}, on a rope at {line_speed}. What is the hourly "
        "capacity of the mix?",
        {"wide": Q(9.0, "m"), "close": Q(6.0, "m"), "line_speed": Q(3.0, "m/s")},
        "whole pph",
    ),
    "4.5": (
        "A tow is listed at {ideal}, from speed and spacing. A double chair beside it carried {counted}, counted at "
        "the top. Someone says the tow is the better lift. What is wrong with that?",
        {"ideal": Q(1500, "pph"), "counted": Q(850, "pph")},
        "one sentence",
    ),
}
