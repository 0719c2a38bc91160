# %% [markdown]
# # Why were fewer counted?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# Somebody counts at the top of the Penny Rope for about an hour: 996 people an hour (counted). The rope has room for 1,800 (ideal), and the loading point lets 1,200 through (governed). Who is wrong? Nobody. The three numbers answer three questions, and between 1,200 and 996 lies a working day: riders who are quick and riders who are slow, hands that miss, falls, and a rope that stands until somebody is up again. This page simulates such a day, says what each cause takes, and shows how far a count can be trusted.

# %% [markdown]
# ## Before you start
#
# **You will be able to** tell an ideal, a governed, a simulated and a counted figure apart; say what each cause takes, in a stated order; read a count with its doubt, by the clock and of clean minutes; say how long to count.
#
# **You need first** [09 What limits the lift](09_what_limits_the_lift.ipynb); for the doubt of a count [06 How sure are we](06_how_sure_are_we.ipynb).
#
# **About 45 minutes.**

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
# ## The lift and its day
#
# As it comes, the page speaks of the Penny Rope on Owlpenny Hill and of one invented day on it. For your own lift, bring its sheet, the one of [00 Start here](00_start_here.ipynb); a table of your riders; a table of the rest of the day; and a count.

# %% [markdown] lab-only
# Name the four files in the marked cell, or bring them by the button. Whoever has no count leaves its place empty: `""`. The four files that are named show the form:

# %% [markdown] app-only
# Bring them by the button. Whoever has no count brings none. The four files have this form:

# %% [markdown]
# - riders: `class,share,mean_readiness,cv,misses,falls`, a row a class; for a lift with carriers `party,share`
# - the rest of the day: `quantity,value,unit,plus_minus,method,note`, as a sheet, with rows such as hours open, stops an hour and stop time
# - count: `from,minutes,persons,stop_seconds,people_waited,note`, a row a minute or more
#
# For a lift with carriers, which come by the clock, see `lantern_double_parties.csv` and `lantern_double_day.csv` in the folder `data/days`. The text between the panels stays with the Penny Rope.

# %% no-output
# YOUR DAY: change the names between the quotation marks
my_sheet = "../data/hill/1_penny_rope.csv"
my_riders = "../data/days/penny_rope_classes.csv"
my_day = "../data/days/penny_rope_day.csv"
my_count = "../data/days/penny_rope_count.csv"

# %%
from liftcalc import Q
from liftcalc.panels import CountedMinutes, DayPage, DisturbedLine, FourFigures, LoadingDayPanel
from liftcalc.panels import NumberPrediction, Prediction

page = DayPage(my_sheet, my_riders, my_day, my_count)
page.button()

# %% [markdown]
# ## Four figures of one lift
#
# - **Ideal.** The spacing that is intended, with every place taken.
# - **Governed.** The smallest of the limits. Here the loading point: a start takes 3 s on average.
# - **Simulated.** What a modelled day makes of it, with its misses, falls and stops.
# - **Counted.** Who passed the top while somebody counted.
#
# From the ideal 1,800 to the governed 1,200 nothing is lost: another limit is narrower. What is lost begins below 1,200.

# %% folded
four = page.picture(FourFigures)
NumberPrediction(
    "The loading point of the Penny Rope lets 1,200 an hour through on average. How many get to the top on a day with its usual stops, a line standing all day?",
    right=lambda: four.panel.simulated,
    reasons={
        "lower": "You took more off than the day does: misses, falls and stops take a part each, and most starts succeed.",
        "near": "Misses, falls and stops take a part each, and the next section says which part.",
        "higher": "A working day takes more than it seems: on a rope tow a stop costs twice.",
    },
    most=Q(3000, "pph"),
    opens=four,
)

# %% [markdown]
# Do the last two agree? And what does the day take for granted?

# %% folded
from liftcalc.simulation.day_words import agreement_of_figures, day_against_sheet, losses_table

page.show(lambda read: agreement_of_figures(four.panel.figures))

# %% folded
page.show(lambda read: day_against_sheet(read.line, read.readings, read.tables))

# %% [markdown]
# Day and count of the Penny Rope are both invented for this page. Nothing in the table says *why* so many came and no more. A count has no causes in it. The simulated day has, because somebody put them in.

# %% [markdown]
# ## Disturb one thing
#
# Here is the line of one lift over a few minutes, every start drawn from the readiness of the riders. Let one rider miss the grab: the hole travels up the line and arrives at the top a ride time later. Then let the rope stop for 30 s. *One start on* goes step by step; nothing moves unasked.
#
# The 30 s are a number of the picture, and no rule: no restart until the track is seen to be clear, on any lift.

# %% folded
page.picture(DisturbedLine)

# %% [markdown]
# A missed grab costs one place at the top, always just one: the slot goes up empty, and whoever missed takes the next. The stop of 30 s costs far more than the ten starts that fit into it. Everybody on the rope lets go, and for a whole ride time after the restart nobody arrives.
#
# ### How a stop counts twice on a rope tow
#
# At 1,000 people an hour and a ride of 45.25 s there are 1,000 × 45.25 s ÷ 3,600 s = 12.6 riders on the rope on average. A stop of 35 s keeps about ten from starting. And it drops some thirteen who had started. On a platter, a T-bar, a belt or a chair riders stay on, as the model has it: there a stop costs the stop alone. A handle tow is held by hand, as a rope tow is.
#
# So the **completed** rides lose the stop and the ride time until the rope is full again, and the **loaded** ones lose the stop. A count at the bottom and a count at the top differ by just those who were dropped or fell.
#
# The part of the day in which the rope runs is its **availability**: on a lift whose riders stay on, the rate by the clock is the rate while it runs, times the availability.

# %% [markdown]
# ## From governed to simulated, cause by cause
#
# The day has three classes of riders, their shares counted by rider. Each has a mean time to start with the place free, its **readiness**, and a spread around it. Misses are left out of it; a time from start to start would have them in it already. No start follows sooner than 2.0 s after the last, since the rope has 6.8 m to run. Some attempts miss, and the slot is lost. Some riders fall on the way. Half of the falls stop the rope; the other half are out of the track at once. With anybody in the track the lift is stopped.
#
# Choose a statement: then the panel opens, with your guess in its picture. *Show me* opens it without a guess.

# %% folded
day_panel = page.lift_panel(LoadingDayPanel, invented_day=Q(14, ""))
Prediction(
    "The Penny Rope stands for 5 % of the day. Which takes most people an hour?",
    {
        "Quick and slow riders": "Uneven starts take little here: few are ready sooner than the rope lets them.",
        "Missed grabs": "A miss costs one slot and no more. It is the most frequent of all, and not the dearest.",
        "The time in which the rope stands": "A stop of 35 s costs 35 s of starts. That is only the half of it.",
        "Whoever hangs on the rope at a stop": "A stop lets go of a ride time's worth of riders, and 45 s is more than 35 s.",
    },
    right="Whoever hangs on the rope at a stop",
    opens=day_panel,
    marks={"Quick and slow riders": "uneven starts", "Missed grabs": "misses", "The time in which the rope stands": "the rope stands", "Whoever hangs on the rope at a stop": "dropped at a stop"},
)

# %% [markdown]
# Each bar takes one cause more into the day, in the order of the list. The order matters, so it is fixed and said: what a cause takes depends on what was taken before it. The small picture is one day, minute by minute: who got hold of the rope, with a gap where it stood. When you move a slider, the setting before stays as dotted outlines. Day 14 of the Penny Rope lies near the mean of many; on a single day chance can turn the order of two causes round, and *Another day, by number* shows it.

# %% folded
day_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the misses to zero. How many people an hour come back: as many as misses took before? (A moved slider draws the stops of the day anew: go by the mean of many days.)
# 2. Put the misses back, and bring other stops and falls to zero. What is still lost?
# 3. Let the stops be twice as long. Does what is dropped at a stop double too?
# 4. Step through five days without moving anything else. How far are they apart?

# %% folded
from liftcalc.simulation.day_answers import answers_of_a_day, days_in_words, short_counts

page.show(lambda read: answers_of_a_day(read.day))

# %% folded
day_panel.around("misses", [Q(0, "percent"), Q(3.5, "percent"), Q(10, "percent")])

# %% [markdown]
# One day has its chance in it. The table has the mean of sixty.

# %%
page.show(lambda read: losses_table(read.day))

# %% [markdown]
# By hand: the classes are ready in 0.45 × 2.6 s + 0.30 × 3.6 s + 0.25 × 3.0 s = 3.0 s on average, and 3,600 s ÷ 3.0 s = 1,200 pph. With its misses a start takes 0.45 × 2.6 s ÷ 0.99 + 0.30 × 3.6 s ÷ 0.94 + 0.25 × 3.0 s ÷ 0.95 = 3.12 s, and 3.0 ÷ 3.12 = 96 % is left. About 3.6 of 100 attempts miss, and yet 3.9 % is lost: those who miss often are also the slow ones, and their slots are the longest.
#
# The factors are multiplied, never added: each takes its share of what the one before has left.

# %% [markdown]
# ## A count, minute by minute
#
# A count is a table: from when, how many minutes, how many persons, how long the rope stood in it, whether people waited. A minute in which nobody counted is left out and is no zero. A minute is **clean** if no stop touches it and, on a tow held by hand, if the rope has filled again since the last one.

# %% folded
Prediction(
    "By the clock 996 an hour were counted, stops and all. The limit of the loading point is one of the running lift. Which number is held against it?",
    {
        "The 996 by the clock": "Stops are in it, and a limit of the running lift knows no stops. It would always look too low.",
        "The rate of the clean minutes": "Only those minutes show the running lift. The rate by the clock is for the guests and the board.",
        "The best two minutes, times thirty": "Chance has chosen them. Nobody would believe the worst two.",
    },
    right="The rate of the clean minutes",
    opens=page.picture(CountedMinutes),
)

# %% [markdown]
# On the Penny Rope the clean minutes are below the limit by more than their doubt: misses, and quick and slow riders, would do that, and the count does not tell which. The rate by the clock is what guests get. It is the number for the board, with its plus-minus.
#
# **Above the limit is not impossible.** A limit holds the mean of a long time. A short count reads above it now and then. Only one thing cannot be: more than **packing** allows, the closest spacing that fits, with one rider more for the ends. A long count above the limit, by more than its doubt, says that something is wrong: look at the loading time first, then at the places, then at the count. It does not say which.

# %%
page.show(lambda read: short_counts(read.day))

# %%
from liftcalc.fieldwork.count_words import how_long_to_count

page.show(lambda read: how_long_to_count(read.counts))

# %% [markdown]
# By hand: a count of n is good to 1.96 × c ÷ √n, where c is the spread of the gaps between riders, over their mean. Riders without any order have a c of 1; a steady tow has less; stops make it more. Good to 5 % wants n = (1.96 × c ÷ 0.05)².
#
# ### Twenty-two heads and thirty-three in two minutes
#
# A photo shows 22 heads on the rope, and two minutes at the top gave 33 people, which is 990 pph. At 22 heads and 45.3 s a ride it would be 1,748 pph. Can both be right? Both are: the photo was taken at a full moment, as photos are, and a full moment is not the hour. At 1,000 pph there are 12.6 on the rope on average. Photos at fixed times, such as each full minute, would show it.

# %% [markdown]
# ## Many days

# %% folded
Prediction(
    "Sixty days of the Penny Rope, all alike in what may happen on them. How far apart are the best and the worst?",
    {
        "A few people an hour": "Eight thousand attempts are many, but stops are few: some forty a day, and each costs some twenty rides.",
        "Some 90 people an hour": "Chance alone: how many stops there were, and how long they took.",
        "Some 300 people an hour": "That much would need a cause. Chance evens out over seven hours.",
    },
    right="Some 90 people an hour",
    opens=page.show(lambda read: days_in_words(read.day)),
)

# %% [markdown]
# No cause has changed between the best and the worst. Whoever praises the crew of the one and scolds the crew of the other has praised and scolded chance.

# %% [markdown]
# ## The same, told as a process

# %% [markdown] lab-only
# The simulation above never steps through time: it adds up slots. A rider starts at the later of two times: when the rider came, and when the one before was done. A second telling follows each rider: come, wait for the place, take it, leave it. It is a thousand times slower, and reads like the hill:
#
# ```python
# def rider(comes, slot):
#     yield hill.timeout(comes)
#     with place.request() as turn:
#         yield turn
#         waits.append(hill.now - comes)
#         yield hill.timeout(slot)
# ```

# %% [markdown] app-only
# The simulation above never steps through time: it adds up slots. A rider starts at the later of two times: when the rider came, and when the one before was done. A second telling follows each rider: come, wait for the place, take it, leave it. It is a thousand times slower, and reads like the hill.

# %% [markdown]
# Two tellings that share no line check one another. Both get the same draws here.

# %%
from liftcalc.simulation.second_telling import two_tellings

page.show(lambda read: two_tellings(read.day))

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
# [11 Lift lines and laps](11_lift_lines_and_laps.ipynb): how long people wait, and how many laps are left of an hour. [13 Your lift](13_your_lift.ipynb) holds your own count against your own limits.
