# %% [markdown]
# # How can one formula serve every lift?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# Down the valley a new chair runs three times as fast as the old one. "It must carry three times as many," says the board, and asks why the club still has a rope tow. The new chair carries as many as the old one did. Its rope runs three times as fast, and the chairs hang three times as far apart. This page puts every kind of lift, from a rope tow to a tram, into one formula, shows what people feel of it, and sets the lifts of the hill side by side without cheating.

# %% [markdown]
# ## Before you start
#
# **You will be able to** put any lift into persons per carrier over the interval; say what a faster rope changes and what it does not; work a line out from whatever is known of it; read a table of unlike lifts.
#
# **You need first** [04 Hourly capacity](04_hourly_capacity.ipynb).
#
# **About 35 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# People are crushed where a carrier passes a post, a platform or a wall, where doors close, and where a counterweight or a tension carriage moves. Never stand or reach in between.
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. Line speed, interval, and the number and spacing of carriers are changed by licensed people, the maker and the authority; on many hills each such change is a modification that must be reviewed. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## Persons per carrier, every so many seconds
#
# Whatever the lift, someone stands beside its loading point with a watch, out of the way. Something comes: a bare piece of rope, a platter, a chair, a cabin. So many people go with it. Then a time passes, and the next one comes. That is all an **ideal** capacity is made of: what is intended, with every place taken. What gets on is a later question.
#
# **Predict.** A rope tow with a rider every 2 s, a double chair every 7 s, a gondola for eight every 12 s. Order them by people an hour.

# %% folded
from liftcalc import Q, capacity_with_carriers_out, detachable_carriers, headway, hourly_capacity
from liftcalc import least_station_interval, reversible_capacity, ride_time_rest_to_rest, show, solve_line
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.tables import comparison_table, hazards_table, kinds_table
from liftcalc.panels import HillPage, KindPanel

examples = read_hill("../data/kinds")
kinds = KindPanel(examples)
kinds

# %% [markdown]
# The upper ruler is the loading point: a column of dots each time a carrier comes, one dot a person; for the tram it shows half an hour, with one dot for twelve. The lower ruler is the rope, drawn to scale. A button puts all three sliders to an invented example of its kind. The sliders go further than any lift may be run.

# %% folded
kinds.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Choose the fixed chair and raise the line speed. The panel keeps the interval, as if the chairs were hung anew. Which of the two rulers changes, and which does not?
# 2. Choose the gondola. What interval gives it the 1,800 of the rope tow?
# 3. Choose the reversible tram. Forty people at once, and yet few an hour: which number is to blame?

# %% folded
kinds.at_settings("interval", [Q(6, "s"), Q(7, "s"), Q(9, "s")])

# %% [markdown]
# By hand: 3,600 s ÷ 12 s = 300 cabins an hour, times 8 persons = 2,400 pph. The rope tow has 1,800 pph and the double chair 1,029 pph. Neither speed nor length was asked for. The legend above is the chair's; other kinds have ranges of their own.

# %% folded
kinds_table(examples)

# %% [markdown]
# ## Three times as fast, three times as far apart
#
# A fixed chair for four runs at 2.0 m/s with a chair every 6 s. A detachable one runs at 6.0 m/s, and people want the same 6 s to board.
#
# **Predict.** How many more does the fast one carry?

# %%
for speed in (Q(2, "m/s"), Q(6, "m/s")):
    spacing = (speed * Q(6, "s")).to("m")
    carried = hourly_capacity(speed, spacing, Q(4, "person"))
    print(show(speed), "with a chair every", show(spacing), "carries", show(carried), "(ideal)")

# %% [markdown]
# By hand: 2.0 m/s × 6 s = 12 m, and 6.0 m/s × 6 s = 36 m. The rope brings three times as much length in an hour, with a third of the chairs on each metre. What the speed does buy is time: the ride is a third as long, a third as many people hang on the rope, and a third as many chairs hang on it.
#
# On a chair as it hangs, with its spacing fixed, a faster rope brings each chair sooner and harder instead. That is another thing, and not for a page to try.

# %% [markdown]
# ## The interval is what people feel
#
# Nobody at the loading point feels 36 m. They feel 6 s, and how fast the carrier comes at them. A fixed chair comes at line speed. A loading carpet runs along with the chair, so that the chair gains on the rider by the difference only. A detachable carrier leaves the rope and creeps in at station speed. A tram stands still.
#
# Creeping has its price. Carriers close up in the station, and there they cannot follow closer than they fit. That is a **packing** figure, and no interval to run. Boarding, the distance that a carrier needs to brake, the load on rope and towers, the number of carriers and the permit set floors of their own, and any of them may be longer.
#
# **Predict.** Cabins of 2.4 m creep at 0.5 m/s and must keep 1.0 m free between them. How close do they fit?

# %%
closest = least_station_interval(carrier_length=Q(2.4, "m"), carrier_gap=Q(1, "m"), station_speed=Q(0.5, "m/s"))
print("the closest that fits:", show(closest))
print("beginners' belt, 0.6 m/s, skis 1.1 m and gap 1.9 m:", show(headway(Q(0.6, "m/s"), Q(3, "m"))))

# %% [markdown]
# By hand: (2.4 m + 1.0 m) ÷ 0.5 m/s = 6.8 s. A conveyor obeys the same line, skis and gap over the speed of the belt, and that is a packing figure, too.
#
# Carriers in the stations are off the rope, but the club owns them all the same. They count with the time they spend there, here 120 s in both stations together, on a line of 1,800 m at 5 m/s with a carrier every 12 s.

# %%
on_the_rope = detachable_carriers(Q(1800, "m"), Q(5, "m/s"), station_time=Q(0, "s"), interval=Q(12, "s"))
owned = detachable_carriers(Q(1800, "m"), Q(5, "m/s"), station_time=Q(120, "s"), interval=Q(12, "s"))
print("carriers: on the rope", show(on_the_rope), "and with both stations", show(owned))

# %% [markdown]
# By hand: 2 × 1,800 m ÷ 5 m/s = 720 s, ÷ 12 s = 60 carriers on the rope. With 120 s more, 840 s ÷ 12 s = 70.

# %% [markdown]
# ## To and fro
#
# Two cabins on one rope pass each other halfway. A cabin arrives at the top once in every ride and the standing time after it. It is the same formula with a long interval, and the one lift with its length in this formula. A cabin also starts and ends each ride at rest; here it speeds up and slows by 0.5 m/s², an invented figure.
#
# **Predict.** At 8 m/s, 800 m take 100 s. How much do the start and the stop add to that?

# %%
for length in (Q(800, "m"), Q(1600, "m")):
    ride = ride_time_rest_to_rest(length, Q(8, "m/s"), Q(0.5, "m/s**2"))
    carried = reversible_capacity(ride_time=ride, dwell_time=Q(60, "s"), persons_per_carrier=Q(40, "person"))
    print(show(length), "of rope: a ride of", show(ride), "and", show(carried), "(ideal)")

# %% [markdown]
# By hand: speeding up takes 8 m/s ÷ 0.5 m/s² = 16 s, slowing as long, and in each of the two the cabin covers half of what it would at full speed. So they add 8 s each: 800 m ÷ 8 m/s + 8 m/s ÷ 0.5 m/s² = 116 s. With 60 s of standing a cabin comes every 176 s: 3,600 s × 40 ÷ 176 s = 818 pph. Twice the rope is less than twice the interval, and carries more than half as many.

# %% [markdown]
# ## From whatever you know
#
# Visitors never hand you speed and spacing. They say: "Eighty-three chairs, two to a chair, five minutes up." Speed, spacing, interval, persons per carrier, carriers on the loop, lengths, ride time, riders on the line and people an hour hang together; from enough of them the others follow.
#
# **Predict.** Is that sentence enough for people an hour?

# %%
known = solve_line(ride_time=Q(291, "s"), riders_on_line=Q(83, "person"), persons_per_carrier=Q(2, "person"))
known

# %% [markdown]
# It is, if the ride runs from sheave to sheave. Then half of the chairs are on the way up at any moment: 41.5 of them, with the 83 riders that were given. A stopwatch makes the five minutes 291 s, and 83 riders in 291 s are 1,027 pph. The table keeps ride and sheave distance apart, so it does not count the chairs by itself; of metres nothing is known, and it names the reading that would give each.
#
# A figure to spare is a check. With one to spare you can see that a set disagrees, but not which figure is wrong; with two or more the culprit may show. Say the old plate on a double chair claims 1,200 pph:

# %%
from liftcalc import DisagreementError
from liftcalc.tables import Lines

try:
    chairs = {"line_speed": Q(2.2, "m/s"), "spacing": Q(15.4, "m"), "persons_per_carrier": Q(2, "person")}
    solve_line(**chairs, hourly_capacity=Q(1200, "pph"))
except DisagreementError as trouble:
    what_came = Lines(str(trouble))
what_came

# %% [markdown]
# ## Carriers out of service
#
# Two of the 42 places on the Long Platter's loop hang empty. They pass by all the same. What is left is 514 pph × 40 ÷ 42. Whether a loop may run with places empty is another question: it needs the leave of the operator, and the maker's manual and the authority must allow it.

# %%
print("ideal, with two places empty:", show(capacity_with_carriers_out(Q(514, "pph"), carriers_on_loop=Q(42, ""), carriers_out=Q(2, ""))))

# %% [markdown]
# ## The lifts of the hill, side by side
#
# **Predict.** Which lift of the hill asks for the most kilowatts for each thousand people an hour? Does it waste them?

# %% [markdown]
# Lifts of your own come behind those of Owlpenny Hill by the button, a sheet for each line.

# %% [markdown] lab-only
# Or name a folder of sheets in the next cell and run all cells: then the table speaks of that folder alone.

# %% no-output
# YOUR HILL: change the folder between the quotation marks
my_hill = "../data/hill"

# %% folded
hill = HillPage(my_hill)
hill.button()

# %% [markdown]
# Each row holds one line by itself, and where several lines are run as one lift a row holds them together.

# %% folded
hill.show(comparison_table)

# %% [markdown]
# On Owlpenny Hill all are at their ideal level: what the spacing intends, which flatters the ropes most. Needed power is what the motor must give to carry that many. For all three rope tows it is more than the motor has, so there the ideal is a wish; [09 What limits the lift](09_what_limits_the_lift.ipynb) sorts that out. The Lantern Double takes the most for a thousand people, and lifts each of them nearly five times as high as the Penny Rope does.
#
# The last column matters more than any of the numbers. On a stop some riders stand on snow or belt, others hang in the air. The plan to bring those down is the operator's, and the authority says what it must hold. Being on the ground does not make a lift safe: each kind has hazards of its own.

# %% folded
hazards_table()

# %% [markdown]
# ### Rules seen elsewhere
#
# Examples of rules with figures, each from one country or state. They show what rules look like; they are no advice, and yours may differ.
#
# | where | what | figure | source |
# |---|---|---|---|
# | France | fixed chair for two, skiers, line speed at most | 2.5 m/s; with a loading carpet 2.8 m/s | STRMTG, "Chairlift" |
# | France | gondola, speed while boarding at most | 0.5 m/s | STRMTG, "Gondola lift" |
# | France | conveyor, line speed at most | 0.7 m/s, a faster class to 1.2 m/s | order of 17 January 2017, as reported in the trade press |
# | Pennsylvania | T-bar for two, interval at least | 5 s, and the time until the skier moves | 34 Pa. Code s. 7.466 |
# | New York | a change of number or spacing of carriers, or of design speed | is a modification that needs review | 12 NYCRR 32.3(d) |

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
# ### Exercise 7.1

# %% folded
AnswerBox("7.1")

# %% [markdown]
# ### Exercise 7.2

# %% folded
AnswerBox("7.2")

# %% [markdown]
# ### Exercise 7.3

# %% folded
AnswerBox("7.3")

# %% [markdown]
# ### Exercise 7.4

# %% folded
AnswerBox("7.4")

# %% [markdown]
# ### Exercise 7.5

# %% folded
AnswerBox("7.5")

# %% [markdown]
# ### Exercise 7.6

# %% folded
AnswerBox("7.6")

# %% [markdown]
# ### Exercise 7.7

# %% folded
AnswerBox("7.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("07")

# %% [markdown]
# ## In short
#
# - Every lift is persons per carrier over an interval. Three times the speed at three times the spacing carries the same.
# - People feel the interval and the speed at which the carrier comes. How close carriers fit in a station is a packing figure, and no interval to run.
# - Compare lifts at one level, line by line, with their rise, their power, and where riders are on a stop.
#
# **Formula card.** C = 3,600 · n ÷ t; s = v · t; to and fro: t = L ÷ v + v ÷ a + standing; closest that fits: t = (carrier + gap) ÷ station speed; carriers = (2 · D ÷ v + station time) ÷ t; with k of K out of service: C · (K − k) ÷ K.

# %% [markdown]
# ## Where to next
#
# [08 Pull and power](08_pull_and_power.ipynb): is the motor big enough for all these people?
