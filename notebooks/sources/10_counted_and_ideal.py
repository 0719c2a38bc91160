# %% [markdown]
# # Why were fewer counted?
#
# To run this page, choose *Run*, then *Run All Cells*. To move a slider, drag it, or click its number and type.
#
# Somebody counts at the top of the Penny Rope for about an hour: 996 people an hour. The rope has room for 1,800, and the loading point lets 1,200 through. Who is wrong? Nobody. The three numbers answer three questions, and between 1,200 and 996 lies a working day: riders who are quick and riders who are slow, hands that miss, falls, and a rope that stands until somebody is up again. This page simulates such a day, says what each cause takes, and shows how far a count can be trusted.

# %% [markdown]
# ## Before you start
#
# **You will be able to** tell an ideal, a governed, a simulated and a counted figure apart; say what each cause takes, in a stated order; read a count with its doubt, by the clock and of clean minutes; say how long to count.
#
# **You need first** [09 What limits the lift](09_what_limits_the_lift.ipynb); for the doubt of a count [06 How sure are we](06_how_sure_are_we.ipynb).
#
# **About 40 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# - A stop is there for whoever has fallen. It is never a loss to argue away, and nobody is asked to stop less.
# - An attendant on duty watches people and does not count. Somebody else counts, from outside the track and the unload area.
# - People an hour is no contest. A figure that goes up because starts are hurried is bought with falls.
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## Four figures of one lift
#
# - **Ideal.** The spacing that is intended, with every place taken.
# - **Governed.** The smallest of the limits. Here the loading point: a start takes 3 s on average.
# - **Simulated.** What a modelled day makes of it, with its misses, falls and stops.
# - **Counted.** Who passed the top while somebody counted.
#
# From 1,800 to 1,200 nothing is lost: that is another limit. What is lost begins below 1,200.
#
# **Predict.** The loading point lets 1,200 an hour through on average. How many get to the top on a day with its usual stops: nearly all, nine in ten, or fewer?

# %%
from liftcalc.fieldwork.minute_counts import read_counts
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.simulation.day_tables import counts_on, loading_day, read_day
from liftcalc.simulation.day_words import day_against_sheet, losses_table, side_by_side

tow, of_the_tow = demo_line("Penny Rope")
tables = read_day("../data/days/penny_rope_classes.csv", "../data/days/penny_rope_day.csv")
counts = counts_on(tow, read_counts("../data/days/penny_rope_count.csv"))
side_by_side(tow, of_the_tow, tables, counts)

# %% [markdown]
# Simulated and counted agree within the doubt of the count. That is no proof of the model: day and count are both invented for this page. What is true on your hill, your count says.
#
# Nothing in the table says *why* 996 came. A count has no causes in it. The simulated day has, because somebody put them in.

# %% folded
day_against_sheet(tow, of_the_tow, tables)

# %% [markdown]
# ## From governed to simulated, cause by cause
#
# The day has three classes of riders, their shares counted by rider. Each has a mean time to start with the place free, its **readiness**, and a spread around it. Misses are left out of it; a time from start to start would have them in it already. No start follows sooner than 2.0 s after the last, since the rope has 6.8 m to run. Some attempts miss, and the slot is lost. Some riders fall on the way, and half of the falls stop the rope. A stop on a tow held by hand empties it: whoever hangs on it lets go, clears the track, and loads again.
#
# Choose a statement: then the panel opens. *Show me* opens it without a guess.

# %% folded
from liftcalc import Q
from liftcalc.panels import LoadingDayPanel, Prediction

day_panel = LoadingDayPanel(tow, of_the_tow, tables=tables, counts=counts, invented_day=Q(14, ""))
Prediction(
    "The rope stands for 5 % of the day. Which takes most people an hour?",
    {
        "Quick and slow riders": "Uneven starts take little here: few are ready sooner than the rope lets them.",
        "Missed grabs": "A miss costs one slot and no more. It is the most frequent of all, and not the dearest.",
        "The time in which the rope stands": "A stop of 35 s costs 35 s of starts. That is only the half of it.",
        "Whoever hangs on the rope at a stop": "A stop lets go of a ride time's worth of riders, and 45 s is more than 35 s.",
    },
    right="Whoever hangs on the rope at a stop",
    opens=day_panel,
)

# %% [markdown]
# Each bar takes one cause more into the day, in the order of the list. The order is fixed and said, since it matters: what a cause takes depends on what was taken before it. The small picture is one day, minute by minute: who got hold of the rope, with a gap where it stood. The same numbers come each time. Day 14 lies near the mean of many; on a single day chance can turn the order of two causes round, and *another day* shows it.

# %% folded
day_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the misses to zero. How many people an hour come back: as many as misses took before?
# 2. Put the misses back, and bring other stops and falls to zero. What is still lost?
# 3. Let the stops be twice as long. Does what is dropped at a stop double too?
# 4. Step through five days without moving anything else. How far are they apart?

# %% folded
from dataclasses import replace

from liftcalc.simulation.many_days import losses_by_cause
from liftcalc.tables import Folded

day, others = loading_day(tow, tables), ("uneven starts", "slow-downs", "falls on the way", "the rope stands", "dropped at a stop")
moved = (day, day.with_causes(others), day.with_causes(("uneven starts", "misses", "slow-downs")), replace(day, stop_time=70.0))
left = [[round(pph) for pph in losses_by_cause(one, 2026, 60).values()] for one in moved]
Folded(
    "Answers, as means of 60 days",
    f"1. {left[1][-1] - left[0][-1]} pph come back, and misses took {left[0][1] - left[0][2]}: falls and stops take their share of the others too.",
    f"2. {left[2][0] - left[2][-1]} pph: uneven starts, misses and slow-downs.",
    f"3. No: {left[0][5] - left[0][6]} pph before, {left[3][5] - left[3][6]} after. As many hang on the rope, however long it stands. The standing itself doubles: {left[0][4] - left[0][5]} and {left[3][4] - left[3][5]} pph.",
    "4. Some ten or twenty people an hour, and nothing has changed but chance.",
)

# %% folded
day_panel.at_settings("misses", [Q(0, "percent"), Q(3.5, "percent"), Q(10, "percent")])

# %% [markdown]
# One day has its chance in it. The table has the mean of sixty.

# %%
losses_table(day)

# %% [markdown]
# By hand: the classes are ready in 0.45 × 2.6 s + 0.30 × 3.6 s + 0.25 × 3.0 s = 3.0 s on average, and 3,600 s ÷ 3.0 s = 1,200 pph. With its misses a start takes 0.45 × 2.6 s ÷ 0.99 + 0.30 × 3.6 s ÷ 0.94 + 0.25 × 3.0 s ÷ 0.95 = 3.12 s, and 3.0 ÷ 3.12 = 96 % is left. About 3.6 of 100 attempts miss, and yet 3.9 % is lost: those who miss often are also the slow ones, and their slots are the longest.
#
# The factors are multiplied, never added: each takes its share of what the one before has left.

# %% [markdown]
# ### How a stop counts twice on a rope tow
#
# At 1,000 people an hour and a ride of 45.25 s there are 1,000 × 45.25 s ÷ 3,600 s = 12.6 riders on the rope on average. A stop of 35 s keeps about ten from starting. And it drops some thirteen who had started. On a platter, a belt or a chair riders stay on: there a stop costs the stop alone.
#
# So the **completed** rides lose the stop and the ride time until the rope is full again, and the **loaded** ones lose the stop. A count at the bottom and a count at the top differ by just those who were dropped or fell.
#
# The part of the day in which the rope runs is its **availability**: on a lift whose riders stay on, the rate by the clock is the rate while it runs, times the availability.

# %% [markdown]
# ## A count, minute by minute
#
# A count is a table: from when, how many minutes, how many persons, how long the rope stood in it, whether people waited. A minute in which nobody counted is left out and is no zero. A minute is **clean** if no stop touches it and, on a tow held by hand, if the rope has filled again since the last one.
#
# **Predict.** By the clock 996 pph were counted, with stops. The limit of the loading point is one of the running lift. Is 996 the number to hold against it?

# %%
from liftcalc import governing
from liftcalc.fieldwork.count_words import count_table, how_long_to_count
from liftcalc.lifts.limits_of_line import limits_of

governed = governing(limits_of(tow, of_the_tow)).capacity
count_table(counts, governed)

# %% [markdown]
# The clean minutes are held against the limit. They are below it by more than their doubt: misses, and quick and slow riders, would do that, and the count does not tell which. The rate by the clock is what guests get. It is the number for the board, with its plus-minus.
#
# The best two minutes of the hour, times thirty, make 1,320. Nobody would believe the worst two. Chance has chosen both.
#
# **Above the limit is not impossible.** A limit holds the mean of a long time. A short count reads above it now and then, by chance alone. Only more than **packing** allows, the closest spacing that fits, and one rider more for the ends, cannot be.

# %%
how_long_to_count(counts)

# %% [markdown]
# By hand: a count of n is good to 1.96 × c ÷ √n, where c is the spread of the gaps between riders, over their mean. Riders without any order have a c of 1; a steady tow has less; stops make it more. Good to 5 % wants n = (1.96 × c ÷ 0.05)².
#
# ### Twenty-two heads and thirty-three in two minutes
#
# A photo shows 22 heads on the rope, and two minutes at the top gave 33 people, which is 990 pph. At 22 heads and 45.3 s a ride it would be 1,748 pph. Can both be right? Both are: the photo was taken at a full moment, as photos are, and a full moment is not the hour. At 1,000 pph there are 12.6 on the rope on average. Photos at fixed times, such as each full minute, would show it.

# %% [markdown]
# ## Many days
#
# **Predict.** Sixty days, all alike in what may happen on them. How far apart are the best and the worst?

# %%
from liftcalc import show
from liftcalc.simulation.many_days import simulate_days

days = Q(simulate_days(loading_day(tow, tables), 2026, 60), "pph")
for name, one in (("mean", days.mean()), ("worst", days.min()), ("best", days.max())):
    print(f"{name} of 60 days: {show(one)}")

# %% [markdown]
# No cause has changed between the best and the worst. Whoever praises the crew of the one and scolds the crew of the other has praised and scolded chance.

# %% [markdown]
# ## A day of your own
#
# Name the sheet of a tow that riders take hold of, or of a belt they step on, at any time; a table of rider classes; a table of the rest of the day; and a count. The sheet is the one of [00 Start here](00_start_here.ipynb). The other three are short: open the four files that are named here, and write yours in the same form.

# %% no-output
# YOUR DAY: change the names between the quotation marks
my_sheet = "../data/hill/1_penny_rope.csv"
my_classes = "../data/days/penny_rope_classes.csv"
my_day = "../data/days/penny_rope_day.csv"
my_count = "../data/days/penny_rope_count.csv"

# %%
from liftcalc.lifts.sheet import read_sheet
from liftcalc.lifts.sheet_line import sheet_line, sheet_readings

sheet, my_tables = read_sheet(my_sheet), read_day(my_classes, my_day)
my_tow, of_my_tow = sheet_line(sheet), sheet_readings(sheet)
my_counts = counts_on(my_tow, read_counts(my_count))
side_by_side(my_tow, of_my_tow, my_tables, my_counts)

# %% [markdown]
# The same from your readings: what the causes take.

# %%
losses_table(loading_day(my_tow, my_tables))

# %% [markdown]
# And the count with its doubt; below it, what stands between the sheet and the day.

# %%
count_table(my_counts, governing(limits_of(my_tow, of_my_tow)).capacity)

# %%
day_against_sheet(my_tow, of_my_tow, my_tables)

# %% [markdown]
# ## Exercises
#
# Work each out on paper, write the number, choose its unit, and press **Check**. If a usual mistake leads to your answer, the reply names it. **Clue** helps a step at a time; **Solution** opens after one attempt. With your name you get numbers of your own; without one, the printed ones. Whoever prefers code writes `try_answer`, an exercise and a quantity in a cell of their own; the README shows how.

# %% folded
from liftcalc.panels import AnswerBox, LearnerBox, RecordBox

LearnerBox()

# %% [markdown]
# ### Exercise 10.1

# %% folded
AnswerBox("10.1")

# %% [markdown]
# ### Exercise 10.2

# %% folded
AnswerBox("10.2")

# %% [markdown]
# ### Exercise 10.3

# %% folded
AnswerBox("10.3")

# %% [markdown]
# ### Exercise 10.4

# %% folded
AnswerBox("10.4")

# %% [markdown]
# ### Exercise 10.5

# %% folded
AnswerBox("10.5")

# %% [markdown]
# ### Exercise 10.6

# %% folded
AnswerBox("10.6")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("10")

# %% [markdown]
# ## In short
#
# - Ideal, governed, simulated, counted: four questions, four numbers. Name the level before you compare.
# - On a rope tow a stop costs the stop, and whoever hangs on it. It is there for whoever fell, and is never a loss to argue away.
# - A count without its doubt is half a count; hold clean minutes against a limit, and tell guests the rate by the clock.
#
# **Formula card.** Governed C = 3,600 ÷ mean readiness; with misses C · (1 − p); completed on a rope tow C · e^(−λ · R) ÷ (1 + λ · S), loaded C ÷ (1 + λ · S), with λ stops in an hour of running, R the ride and S the stop, all in hours; doubt of a count of n: c ÷ √n.

# %% [markdown]
# ## Where to next
#
# Back to [09 What limits the lift](09_what_limits_the_lift.ipynb), or to [00 Start here](00_start_here.ipynb) with your own readings. The pages on waiting and on cost are to come.
