"""The named mistakes that several exercises share: what learners really get wrong, and what to say to them.

The words name the road that was taken. They never hold the answer.
"""

from liftcalc.exercises.exercise import Mistake

PER_MINUTE = Mistake(
    "per minute for per hour", "This is how many pass in a minute. The question asks for an hour: sixty of them."
)
HOUR_AS_MINUTE = Mistake(
    "hour taken as minute", "The hourly figure was used as if it were one for a minute. An hour has 3,600 seconds."
)
UPSIDE_DOWN = Mistake(
    "formula upside down", "What should stand above the line stands below it. Write the units beside the numbers: they "
    "show which way up it goes.",
)  # fmt: skip
SPACING_TIMES_SPEED = Mistake(
    "spacing times speed", "The two were multiplied. A wider spacing means fewer riders and a longer headway: which of "
    "the two must be divided by the other?",
)  # fmt: skip
FEET_FOR_METRES = Mistake(
    "feet for metres", "One number was entered in feet and the other in metres. Bring both to one unit of length first."
)
METRES_LEFT = Mistake(
    "metres left where feet are asked", "The height was entered in metres. The unit asked counts in feet."
)
# where riders or carriers are counted, one post more and one fewer are roads, too
FENCE_POST = Mistake(
    "fence post", "Posts and gaps were mixed up. Along a stretch with a rider at each end there is one gap fewer than "
    "there are riders.",
)  # fmt: skip
ONE_TOO_MANY = Mistake(
    "fence post in the average", "This is the most at one moment, with a rider at each end. The average has "
    "no rider to "
    "add.",
)  # fmt: skip
POST_ADDED = Mistake(
    "fence post added", "One was added, as for the posts of a fence. Riders were counted, not gaps: none is added."
)
POST_TAKEN_OFF = Mistake(
    "fence post taken off",
    "One place was taken off, as for the gaps of a fence. Riders are asked for, not gaps: none is taken off.",
)
POST_ON_A_LOOP = Mistake(
    "fence post on a loop", "A loop closes on itself: it has as many posts as gaps, and none to add."
)
POST_OFF_A_LOOP = Mistake(
    "fence post taken off a loop", "A loop closes on itself: it has as many gaps as posts, and none to take off."
)
ONE_GAP_FEWER = Mistake(
    "one gap fewer",
    "One was taken off the riders, as for a fence. That keeps the most at one moment within the number; "
    "the question speaks of the average.",
)
ONE_MORE_ALLOWED = Mistake(
    "one rider more allowed",
    "One was added to the riders allowed, as for a fence. How many may be there at once, on average?",
)
WHOLE_LOOP = Mistake(
    "whole loop for one way",
    "Both sides of the rope were counted. Riders are on the up side only: from grab to let-go.",
)
ONE_WAY = Mistake("one way for the whole loop", "Only the up side was counted. Carriers hang on the down side as well.")
SEATS_FORGOTTEN = Mistake(
    "carriers for persons",
    "This counts carriers. Each of them carries more than one person: where do the seats come in?",
)
GAP_FOR_PITCH = Mistake(
    "gap for pitch",
    "Only the free snow was counted. From one rider to the same point of the next there are the skis, too.",
)
SKIS_TAKEN_OFF = Mistake(
    "skis taken off", "The skis were taken off the gap. The gap is the free snow already; the skis come on top of it."
)
MPH_AS_FEET = Mistake(
    "mph and ft/s confused",
    "Miles an hour and feet a second were treated as the same number. One mile an hour is nearly one and a half feet a "
    "second.",
)
MPH_AS_METRES = Mistake(
    "mph used as m/s",
    "The number of miles an hour was used as if it were metres a second. Turn the speed into m/s first.",
)
FACTOR_UPSIDE_DOWN = Mistake(
    "factor upside down", "The factor between the two units was used the wrong way up. Which of the two units is the "
    "larger one, and so which number must be the smaller?",
)  # fmt: skip
MILE_AS_KILOMETRE = Mistake(
    "mile taken for a kilometre", "The mile was taken for a kilometre. A mile is 5,280 ft, or 1,609 m."
)
METRIC_HP_FOR_HP = Mistake(
    "horsepower for metric horsepower", "The factor of the other horsepower was used: 550 foot-pounds a "
    "second. A metric "
    "horsepower is 75 kilogram-metres a second.",
)  # fmt: skip
UNIT_IGNORED = Mistake(
    "number copied, unit changed",
    "The number was left as it was and only the unit was changed. The two units differ in size.",
)
ROUNDED_EARLY = Mistake(
    "rounded too early",
    "The road is right, but a number halfway was rounded. Carry all digits and round once, at the end.",
)
MEAN_OF_CAPACITIES = Mistake(
    "mean of capacities", "The two capacities were averaged. Close riders take up less than half of the "
    "rope: average the "
    "spacings, then divide.",
)  # fmt: skip
PACKING_FOR_CAPACITY = Mistake(
    "packing taken for capacity",
    "That is what fits on the rope, not what people can load and leave. A figure on paper needs time to load at the "
    "bottom and room to leave at the top.",
)
FASTER_IS_MORE = Mistake(
    "faster is more", "Speed alone does not decide. Look at what happens to the seconds between two riders."
)
LONGER_IS_MORE = Mistake(
    "longer is more", "A longer rope holds more riders, but they come off at the top no faster than they get on."
)
GRADE_AS_DEGREES = Mistake(
    "grade in percent taken as degrees", "The percent were used as degrees. A grade of 100 % is an angle of 45 degrees."
)
TANGENT_FOR_SINE = Mistake(
    "tangent for sine",
    "Grade is rise over map length. Here it was multiplied by the slope length, which is the long side of "
    "the triangle.",
)
HEADWAY_FOR_SPACING = Mistake(
    "headway for spacing", "This is a number of seconds written as metres: the time between two riders. How "
    "far does the rope run in that time?"
)  # fmt: skip
LEVELS_MIXED = Mistake(
    "levels mixed",
    "An ideal figure beside a counted one is a wish beside a fact. Compare ideal with ideal, count with count.",
)
HALF_WIDTH_FOR_STANDARD = Mistake(
    "half-width for standard", "This is the furthest it can be off. The standard uncertainty is smaller."
)
STANDARD_FOR_EXPANDED = Mistake(
    "standard for expanded",
    "This is one standard uncertainty: it covers about two in three. The question asks for 95 of 100.",
)
STANDARD_FOR_EXPANDED_TURNED = Mistake(
    "expanded for standard", "This is the doubt at a coverage factor of 2. One standard uncertainty is asked."
)
ADDED_STRAIGHT = Mistake(
    "plus-minus added straight",
    "The parts were added as they stand. Independent doubts seldom err the same way at once: add their squares.",
)
VARIANCE_FOR_DEVIATION = Mistake("variance for deviation", "This is a square. A plus-minus is a root of it.")
CORRELATED_AS_INDEPENDENT = Mistake(
    "correlated taken as independent",
    "The squares were added, as for doubts that know nothing of each other. These two come from one and the "
    "same cause.",
)
MAP_FOR_SLOPE = Mistake(
    "map length for slope length",
    "The map length was taken as it stands. A slope is longer than its picture from above.",
)
PLAN_FOR_SLOPE = Mistake(
    "plan for slope", "The speed on the plan was taken as it stands. Riders also go up, in the same time."
)
ONE_OR_ROUNDED_UP = Mistake(
    "one rider too many",
    "Either the number was rounded up to a whole rider, or one was added as for a fence. An average takes neither.",
)
