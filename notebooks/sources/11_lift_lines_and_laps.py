# %% [markdown]
# # How long is the line, and how many laps?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# A guest does not feel people an hour. A guest feels the line. On the invented day of this page the Penny Rope carries 1,000 an hour by the count, and its guests wait for 209 hours together. With the governed 1,200 they would wait for 31. A fifth more on the rope takes six sevenths of the waiting away. This page shows where a line comes from, who waits in it and how long, how many laps an hour leaves, and what the slope says to it.

# %% [markdown]
# ## Before you start
#
# **You will be able to** draw a line from who came and who got on; say when it is longest and when it is gone; tell a line from the wait that chance makes; reckon the laps of a crowd; hold a lift against its slope.
#
# **You need first** riders on the line, as in [03 Riders on the line](03_riders_on_the_line.ipynb), and the four figures of a lift, as in [10 Counted and ideal](10_counted_and_ideal.ipynb).
#
# **About 45 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# - On every lift a waiting line stands clear of the track, of rope, belt and carriers, and leaves the way out of the unload area free.
# - People an hour is no contest. A line is no reason to hurry a start: whoever is hurried misses, falls or is hurt.
# - Whoever counts arrivals stands at the end of the line, outside the track. An attendant on duty watches, and does no counting.
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## The opening rush
#
# A line is all who came, less all who got on. For the first 20 minutes people come at 1,800 an hour; after that at 600. The rope lets 1,200 an hour on, its governed figure, from the first minute.
#
# Choose a statement: then the panel opens. *Show me* opens it without a guess.

# %% folded
from liftcalc import Capacity, Q, show
from liftcalc.panels import LapsPanel, LiftLinePanel, Prediction, Shown, SlopePanel

line_panel = LiftLinePanel(rush_arrivals=Q(1800, "pph"), rush_length=Q(20, "minute"), later_arrivals=Q(600, "pph"))
Prediction(
    "The rush is over at 20 minutes, and 200 people stand in line. When is the line gone?",
    {
        "At once: fewer come than are carried": "That ends its growth, and nothing more. It is longest now: 600 came, 400 got on.",
        "At 30 minutes: the rope takes 200 in ten": "Whoever joins last in the rush waits those ten. But 600 an hour still join behind.",
        "At 40 minutes": "Of 1,200 places an hour 600 go to those who still come. The line gets the other 600: 20 minutes.",
    },
    right="At 40 minutes",
    opens=line_panel,
    marks={"At once: fewer come than are carried": Q(20, "minute"), "At 30 minutes: the rope takes 200 in ten": Q(30, "minute"), "At 40 minutes": Q(40, "minute")},
)

# %% [markdown]
# Two curves count people: who came, and who got on. The **line** is the gap between them read upright, at one time: so many stand there. The **wait** is the same gap read level, at one person: so long that person stands. The rush makes the line grow by 600 people an hour.

# %% folded
line_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Let the rush last 10 minutes. What halves: the longest line, the longest wait, the mean wait?
# 2. Put 20 minutes back. Let 800 an hour come later, and 800 be carried. What becomes of the line after the rush?
# 3. Put 1,200 carried and 600 later back, and 1,200 in the rush. How long is the line?

# %% folded
from liftcalc.simulation.waiting_words import line_of_first_hour
from liftcalc.tables import Folded

hour = dict(rush_arrivals=Q(1800, "pph"), rush_length=Q(20, "minute"), later_arrivals=Q(600, "pph"), hourly_capacity=Q(1200, "pph"))
changes = {}, dict(rush_length=Q(10, "minute")), dict(later_arrivals=Q(800, "pph"), hourly_capacity=Q(800, "pph"))
rush, short, even = (line_of_first_hour(**hour | change) for change in changes)
waits = [(show(each.longest_wait, "minute"), show(each.mean_wait, "minute")) for each in (rush, short)]
Folded(
    "Answers",
    f"1. Line and longest wait: {show(short.longest_line)} and {waits[1][0]}. The mean wait of all falls from {waits[0][1]} to {waits[1][1]}: the line is half as long, and stands half as long.",
    f"2. It stays: as many get on as come. {even.line.m_as('person')[-2]:.0f} stand there at 60 minutes, as at 20. A line does not go by itself.",
    "3. Zero in this picture, and not on the hill: people do not come evenly. More of that below.",
)

# %% folded
line_panel.at_settings("rush_arrivals", [Q(1200, "pph"), Q(1500, "pph"), Q(1800, "pph")])

# %% [markdown]
# By hand: 1,800 × 20 min ÷ 60 min = 600 came, 1,200 × 20 ÷ 60 = 400 got on, and 200 stand in line. Whoever joins then waits 200 ÷ 1,200 h = 10 min. The line shrinks by 1,200 − 600 = 600 an hour, so 200 are gone in 20 min. The line is a triangle, 40 min × 200 ÷ 2 = 4,000 minutes of waiting, over the 1,000 who come in that hour, 600 and 400: 4 min each. (The last 200 of them meet no line.)
#
# ### Sixty people and a double chair
#
# Here a line stands already, at a lift with seats.

# %% folded
from liftcalc import wait_from_line

Prediction(
    "Sixty people stand before you. A double chair comes every 6 s, and every seat is taken. How long do you wait?",
    {
        "6 minutes": "Sixty times six seconds: that is one person a chair. Two go with each.",
        "3 minutes": f"Sixty people are thirty chairs: 1,200 an hour, and 60 ÷ 1,200 h = {show(wait_from_line(Q(60, 'person'), Q(1200, 'pph')), 'minute')}.",
        "Nobody can tell": "Line over people an hour is the wait, on any lift. With one seat in five left empty it is 3.75 minutes.",
    },
    right="3 minutes",
)

# %% [markdown]
# ## A morning of your own
#
# A table of arrivals has a row for each stretch of the day: from when, for how many minutes people came, and how many. Rows may overlap, and add up. A school bus comes all at once: its row has 0 minutes. Whoever rides again joins the line again, and is counted again.

# %% [markdown] lab-only
# The next cell names your file. The file is a CSV with the heading `from,minutes,persons,note` and rows such as `9:00,20,480,opening rush`; semicolons and decimal commas are read as well. The question and the numbers below it are those of the sample file: with your own, read the tables.

# %% [markdown] app-only
# Here the tables are those of the Penny Rope. A table of your own is read in JupyterLab; the README of this project says how to open it.

# %% no-output
# YOUR MORNING: change the name between the quotation marks, and the two numbers of people an hour
my_arrivals = "../data/days/penny_rope_arrivals.csv"
my_count, my_governed = 1000, 1200

# %% folded
from liftcalc.fieldwork.arrivals import read_arrivals
from liftcalc.simulation.waiting_words import morning_table

arrivals = read_arrivals(my_arrivals)
Prediction(
    "The Penny Rope carries 1,000 an hour, not the governed 1,200: a sixth less. How much more waiting is there?",
    {
        "A sixth more": "So it would be if a line only moved more slowly. But who is not carried stays, and the next come behind.",
        "Twice as much": "It grows faster: the line is longer, and it stands longer, too. Both go into the hours.",
        "Nearly seven times as much": "A line is what is left over. A sixth less on the rope leaves far more over, for longer.",
    },
    right="Nearly seven times as much",
    opens=Shown(morning_table(arrivals, Capacity(Q(my_count, "pph"), "counted"), Capacity(Q(my_governed, "pph"), "governed"))),
)

# %% [markdown]
# Whoever plans the day with 1,200 sees a line of 80 at 9:20, gone by 9:33. With the 1,000 that were counted, 147 stand there at 9:20, and a line stands until 10:53. Reckon a line with what was **counted** or simulated, by the clock, with the stops in it.
#
# The mean wait of all, 2.1 min, is nobody's wait. Three in ten walk straight on; those who meet a line wait 3 min, and the last of the rush nearly 9. At 13:30 the bus comes back while as many arrive as are carried: its 46 places in line stay until 14:30.

# %% [markdown]
# That line is a fluid: people come evenly, and the rope takes them evenly. Now the same day, run rider by rider as on [10 Counted and ideal](10_counted_and_ideal.ipynb), with quick and slow riders, misses, falls and stops. Whoever is dropped at a stop joins the line again. It is the Penny Rope that is run here, open seven hours.

# %% [markdown] lab-only
# For another lift, change `tow` and `day`.

# %%
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.simulation.day_tables import read_day
from liftcalc.simulation.waiting_words import run_day_table

tow, day = demo_line("Penny Rope")[0], read_day("../data/days/penny_rope_classes.csv", "../data/days/penny_rope_day.csv")
run_day_table(arrivals, tow, day)

# %% [markdown]
# The fluid at 1,000 an hour had 147 in line at most, and a mean wait of 2.1 min. On average the days have more, 167 and 2.8 min for each time in line: stops make lines where the fluid has none. And they are far apart. The same people come, and they wait 1.9 min on the calmest day, less than the fluid, and 4.8 on the worst. Nobody has done anything better or worse.

# %% [markdown]
# ## Where no line stands, chance still makes people wait
#
# So far riders came evenly. They do not.

# %% folded
from liftcalc.simulation.waiting_words import chance_table

Prediction(
    "900 an hour come to the Penny Rope, and 1,200 can get on. Three of four places are taken. How long does a rider wait on average?",
    {
        "Not at all: there is room": "On average there is. But two come at once, then nobody for ten seconds, and the empty places are lost.",
        "Some 5 seconds": "Chance makes them wait: those who come close together, and those behind a slow starter.",
        "A minute or more": "Near to full it would be so. At three quarters the line is gone again soon.",
    },
    right="Some 5 seconds",
    opens=Shown(chance_table(Q(900, "pph"), tow, day)),
)

# %% [markdown]
# The names in brackets are those of the books. By hand, with even starts: 0.75 × 3 s ÷ (2 × 0.25) = 4.5 s. Exponential ones make twice that. Real riders stand between: slow ones hold up the others, and the wait grows with the mean **square** of the loading times. Misses and stops are left out; they make it longer.
#
# The nearer to full, the worse: with even starts 4.5 s at 900 an hour (75 %), 28.5 s at 1,140 (95 %). Do not add these seconds to the minutes of the rush: they are those of a steady day.
#
# ### Carriers come by the clock
#
# On a rope you start when you are ready. A chair, or a platter fixed to its rope, comes when it comes, and even on an empty hill you wait half an interval for it, on average.

# %%
from liftcalc.simulation.waiting_words import clock_table

clock_table(Q(6, "s"), 0.75)

# %% [markdown]
# By hand, for one seat: interval ÷ (2 × (1 − 0.75)) = 6 s ÷ 0.5 = 12 s. M/D/1 would say 9 s, half an interval too little. The law is for one seat, and for riders who come one by one, without order. More seats at the same share taken make a shorter wait. Groups that want to ride together wait longer than the table says.

# %% [markdown]
# ## A crowd that goes round and round
#
# So far people came from outside. On a small hill the same people come again: ride, descent, perhaps a rest, and the line.

# %% folded
laps_panel = LapsPanel(crowd=Q(120, "person"), governed_capacity=Q(1200, "pph"), ride_time=Q(45, "s"), descent_time=Q(75, "s"), rest_time=Q(60, "s"))
Prediction(
    "More people, more rides? 120 ski laps on one rope: 45 s up, 75 s down, 60 s of rest. A start takes 3 s. How many an hour get up?",
    {
        "About 2,360: a lap takes 183 s": "120 × 3,600 s ÷ 183 s: so it would be without a line. But one rider starts every 3 s.",
        "1,200, ten laps each": "One every 3 s, shared by 120. A lap takes 360 s then: 183 s as before, and 177 s in line.",
        "Fewer than 1,200: they are in each other's way": "A line that stands clear takes nothing from the rope: while somebody waits, no place goes empty.",
    },
    right="1,200, ten laps each",
    opens=laps_panel,
    marks={"About 2,360: a lap takes 183 s": Q(2361, "pph"), "1,200, ten laps each": Q(1200, "pph"), "Fewer than 1,200: they are in each other's way": Q(1000, "pph")},
)

# %% [markdown]
# The curve bends where the rope is full. Left of the bend one person more is up to 20 laps more an hour; right of it, one place more in line. Two bounds hold it, whatever the times: nobody ever waits (dashed), or each waits behind all the others (dotted). The curve takes loading times that differ much; evener ones stand between it and the upper bound. At 61 people: bound 1,200, curve 1,096, and 1,125 in a simulation with all starts alike and random times away.

# %% folded
laps_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Send half of the crowd home. How many rides an hour are lost?
# 2. Put 120 back, and let everybody rest 60 s longer. How many rides are lost now?
# 3. Put the rest back. A faster rope takes 40 s and not 45. Who gains?

# %% folded
from liftcalc.simulation.closed_crowd import closed_crowd

laps = {}
for name, people, away in (("all", 120, 180), ("half", 60, 180), ("rested", 120, 240), ("faster", 120, 175)):
    found = closed_crowd(Q(people, "person"), loading_time=Q(3, "s"), ride_and_descent=Q(away, "s"))
    laps[name] = [round(each) for each in (found.riders_an_hour[-1, 0].m_as("pph"), found.line[-1, 0].magnitude, found.laps_an_hour[-1].magnitude)]
Folded(
    "Answers",
    f"1. {laps['all'][0] - laps['half'][0]} of {laps['all'][0]:,}. Half of the people make nine tenths of the rides: {laps['half'][2]} laps an hour each, in place of {laps['all'][2]}.",
    f"2. None, as long as a line is left: {laps['all'][1] - laps['rested'][1]} people fewer stand in it, and the rest is taken out of the wait.",
    f"3. Nobody, with a start every 3 s as before. {laps['faster'][0]:,} an hour, and {laps['faster'][1]} in line, not {laps['all'][1]}: they save 5 s on the rope and stand them out below.",
)

# %% folded
laps_panel.at_settings("crowd", [Q(30, "person"), Q(60, "person"), Q(120, "person")])

# %% [markdown]
# By hand, and everywhere by the same law: people in a place = people an hour × time there (Little's law). One start every 3 s puts 45 s ÷ 3 s = 15 on the rope, 75 ÷ 3 = 25 on the slope, 60 ÷ 3 = 20 at rest and 1 at the loading point. That makes 61. The other 59 of the 120 stand in line, and wait 59 × 3 s = 177 s.
#
# ### Two lifts, one crowd
#
# Beside the rope stands the Long Platter, with a carrier every 7 s and 300 s of ride, descent and rest.

# %% folded
from liftcalc.simulation.waiting_words import crowd_on_lifts

lifts = {"Penny Rope": (Q(3, "s"), Q(180, "s")), "Long Platter": (Q(7, "s"), Q(300, "s"))}
Prediction(
    "The 120 people divide their rides evenly. At which lift is the line?",
    {
        "At both": "As many come to both. But the rope takes one every 3 s, the platter one every 7 s.",
        "At the Long Platter": "As many come to it as to the rope, and it is the slower one: all who are to spare stand there.",
        "At the Penny Rope": "It could carry more than twice as many. Nobody is left over there.",
    },
    right="At the Long Platter",
    opens=Shown(crowd_on_lifts(Q(120, "person"), lifts, [(0.5, 0.5), (0.7, 0.3), None])),
)

# %% [markdown]
# The line stands where share × loading time is largest, not where most people go: 0.5 × 7 s against 0.5 × 3 s, and the rope carries less than half of its 1,200. Riders who see both lines go to the shorter wait, and that mends it: with 72 of 100 rides on the rope both waits are 47 s, and 600 rides an hour more are made than at half and half. A sign with the two waits helps. (Loading times are taken as exponential at both; carriers by the clock are evener.)

# %% [markdown]
# ## And the slope?
#
# Every person an hour whom a lift brings up comes down again. Little's law holds on the slope, too.

# %% folded
slope_panel = SlopePanel(people_an_hour=Q(1000, "pph"), slope_area=Q(0.4, "hectare"))
Prediction(
    "A second rope stands beside the first. With the same people on the hill the two bring up 1,640 an hour (simulated, as on the page of cost) in place of 1,000. What becomes of the slope?",
    {
        "As full as before: the same people are there": "The same people are on the hill. But fewer of them stand in line, and they are on the slope instead.",
        "Fuller, by nearly two thirds": "Each of them is on the slope for 75 s: people an hour × 75 s stand on it at once.",
        "Emptier: more are on the ropes": "A few more hang on two ropes, too. All of them come down.",
    },
    right="Fuller, by nearly two thirds",
    opens=slope_panel,
    marks={"As full as before: the same people are there": Q(52, "person/hectare"), "Fuller, by nearly two thirds": Q(85, "person/hectare"), "Emptier: more are on the ropes": Q(45, "person/hectare")},
)

# %% [markdown]
# The slope of the Penny Rope has 0.4 hectares. Guidelines of planners say how many riders a hectare people find pleasant: 35 to 75 for beginners, by the All Seasons Resort Guidelines of British Columbia as the FIS wiki quotes them. Enter your own, and say whose it is.

# %% folded
slope_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. At how many people an hour does the slope reach 75 riders a hectare? Does the rope with 1,000 stay below, and do the two with 1,640?
# 2. Everybody skis twice as fast: 38 s. The number halves. Is the slope safer?
# 3. Put 75 s back, and enter the guideline for novices, 30 to 60. Does 1,130 an hour still fit, which a helper at the loading point would make of the 1,000?

# %% folded
from liftcalc import slope_capacity, slope_density

area, down = Q(0.4, "hectare"), Q(75, "s")
full = slope_capacity(Q(75, "person/hectare"), area, down)
rope, helper, twin = (slope_density(Q(pph, "pph"), area, down).magnitude for pph in (1000, 1130, 1640))
Folded(
    "Answers",
    f"1. At {show(full)}: lift and slope are in balance there. One rope stays below with {rope:.0f}, two are above with {twin:.0f}.",
    "2. The number does not say so. Fast riders need more room, and a hectare of fast ones is no beginners' slope.",
    f"3. Just: {helper:.0f} of 60.",
)

# %% folded
slope_panel.at_settings("people_an_hour", [Q(1000, "pph"), Q(1130, "pph"), Q(1640, "pph")])

# %% [markdown]
# By hand: 1,000 × 75 s ÷ 3,600 s = 20.8 riders on the slope at once, on 0.4 ha: 52 a hectare. Back from the guideline: 75 × 0.4 × 3,600 ÷ 75 s = 1,440 an hour. Lift and slope are **in balance** where the two figures meet. A lift that carries more moves the crowding from the line to the slope.
#
# ### A day, as planners reckon it
#
# People an hour × rise is the vertical transport (vertical transport feet an hour, VTFH). Multiply by the hours open and divide by the guests: the feet that each may ride in a day. Divide instead by the feet that one guest wants: the guests of a day, the **comfortable carrying capacity**. Assumed: 1,000 an hour (counted), 7 hours, 20 rides of 96.5 ft (29.4 m) a guest.

# %%
from liftcalc import comfortable_carrying_capacity, daily_vertical, vertical_transport

carried, open_for = vertical_transport(Q(1000, "pph"), Q(96.5, "ft")), Q(7, "hour")
print("each of 300 guests may ride", show(daily_vertical(carried, open_for, Q(300, "person"))))
print("guests a day, at 1,930 ft each:", show(comfortable_carrying_capacity(carried, open_for, Q(1930, "ft"))))

# %% [markdown]
# A planning figure, and an upper one: it takes every place of seven hours. It knows no opening rush, no lunch, no slope and no car park.

# %% [markdown]
# ## Exercises
#
# Work each out on paper, write the number, choose its unit, and press **Check**. If a usual mistake leads to your answer, the reply names it. **Clue** helps a step at a time; **Solution** opens after one attempt. With your name you get numbers of your own; without one, the printed ones.

# %% [markdown] lab-only
# Whoever prefers code writes `try_answer`, an exercise and a quantity in a cell of their own; the README shows how.

# %% folded
from liftcalc.panels import AnswerBox, LearnerBox, RecordBox

LearnerBox()

# %% [markdown]
# ### Exercise 11.1

# %% folded
AnswerBox("11.1")

# %% [markdown]
# ### Exercise 11.2

# %% folded
AnswerBox("11.2")

# %% [markdown]
# ### Exercise 11.3

# %% folded
AnswerBox("11.3")

# %% [markdown]
# ### Exercise 11.4

# %% folded
AnswerBox("11.4")

# %% [markdown]
# ### Exercise 11.5

# %% folded
AnswerBox("11.5")

# %% [markdown]
# ### Exercise 11.6

# %% folded
AnswerBox("11.6")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("11")

# %% [markdown]
# ## In short
#
# - The line is all who came less all who got on, read upright; the wait is the same gap, read level. Reckon with what is counted.
# - A full lift gives a larger crowd no more rides, only a longer line; while a line stands, a rest is taken out of the wait and costs no ride.
# - What leaves the line goes to the slope: hold people an hour against its guideline before you buy a second rope.
#
# **Formula card.** Growth r − C; wait L ÷ C; gone after L ÷ (C − r); by chance ρ · S ÷ (2 · (1 − ρ)) with even starts, t ÷ (2 · (1 − ρ)) for one seat by the clock; crowd N ÷ (Z + N · S) ≤ C ≤ N ÷ (Z + S) and 1 ÷ S; riders a hectare C · T ÷ A. Times in hours; r arrivals, C people an hour, L in line, S loading time, t interval, ρ = r · S or r · t; N the crowd, Z ride, descent and rest, T descent, A hectares.

# %% [markdown]
# ## Where to next
#
# Back to [10 Counted and ideal](10_counted_and_ideal.ipynb), for what stops and misses take from the 1,200. [12 Cost per ride](12_cost_per_ride.ipynb): what each ride costs, and what the board makes of it.
