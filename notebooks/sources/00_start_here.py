# %% [markdown]
# # How many people an hour, on these readings?
#
# To run this page, choose *Run*, then *Run All Cells*. To move a slider, drag it, or click its number and type. Nothing you do here can break anything.
#
# Someone stands at the foot of a rope tow and asks how many people it lifts in an hour. You have a tape, a stopwatch and a phone. Two readings answer the question: how fast the rope runs, and how far apart riders stand on it. This page takes your readings, gives the answer with its unit, and says what kind of answer it is.
#
# The readings below come from the Penny Rope on Owlpenny Hill, an invented, volunteer-run ski area. In one marked cell you put your own in their place.

# %% [markdown]
# ## Before you start
#
# **You will be able to** turn a field sheet into people an hour; say what the number promises and what it leaves out; repeat it by hand.
#
# **You need first** nothing but a field sheet. Further down you can save a blank of it.
#
# **About 15 minutes.**

# %% [markdown]
# ## Cautions
#
# - **Clothes and hair wind in: tuck everything in.** A running rope turns and takes along scarves, hair, drawstrings and straps; so do sheaves, shafts and the ends of a belt.
# - **No tape and no mark before the lift is stopped and locked out.** The operator locks it out: for a taped length, for the spacing of carriers, for a mark on a rope or a belt.
# - **Never step over a rope, moving or stopped, unless it is locked out.** Never near a sheave: keep well out of reach of sheaves and drives, running or stopped.
#
# Before you go out:
#
# - Never alone, and only with the operator's permission. Tell the attendant what you are about to do.
# - Ask whether a grooming machine is out, and stay off its slope: a winch rope may lie under the snow and jerk tight far from the machine.
# - Motor plate, rope tension and drag: ask the operator. Never read them at the drive.
#
# At the lift:
#
# - Know who holds the key of the lock-out. When you are done, take everything out of the track and report clear to that person. No restart until the track is seen to be clear.
# - Count, time and photograph from outside the track and the unload area. The spacing of riders comes from a photo: riders never wait on a lift to be measured.
# - Ask guests before you photograph them, or let nobody be recognisable in the photo.
# - No phone, tape or watch in your hand while you hold a rope, a handle or a bar, or get on or off any lift.
#
# This series teaches planning figures. Nothing here is a design, a permit or an instruction to change a lift. The local code, the authority having jurisdiction, the maker's manual and licensed people decide.

# %% [markdown]
# ## The readings
#
# Take the printed blank up the hill. Back at the desk, type your readings into the blank for a spreadsheet program: one row a reading, each with its own unit. Repeats are welcome; what you did not measure stays empty.

# %% folded
from liftcalc.pages.blank_sheet import blank_sheet_links

blank_sheet_links()

# %% [markdown]
# The next cell is the one you change. (In the view without code it does not show, and the page keeps to the demo sheet.) Put the name of your own sheet between the quotation marks: `"my_sheet.csv"` if it lies beside this page, or its full path. Then run all cells again. Your sheet is only read, never changed.

# %% no-output
# YOUR SHEET: change the path between the quotation marks
my_sheet = "../data/field_sheet.csv"

# %% folded
from liftcalc import Q, headway, hourly_capacity, persons_from_flow, ride_time_from_rest, show
from liftcalc.fieldwork import count_in_words, read_field_sheet, routes, summary
from liftcalc.panels import StartPanel

sheet = read_field_sheet(my_sheet)
summary(sheet)

# %% [markdown]
# One row is one quantity. Repeats are averaged; the last column shows how far they lie apart. How to treat readings that disagree is a subject of its own: [06 How sure are we](06_how_sure_are_we.ipynb).

# %% [markdown]
# ## The answer
#
# Some words first. **pph** is people an hour. **Headway** is the time from one rider to the next. **Ridden length** runs along the rope from grab to let-go; **sheave distance** from the bottom sheave to the top one. **Vertical transport**, VTFH, is people an hour times the rise in feet.
#
# **Predict.** If the rope ran half as fast, with riders as far apart as before, would it lift more, fewer, or as many an hour?

# %% folded
panel = StartPanel(sheet)
panel

# %% [markdown]
# Below the numbers stands a piece of the line, drawn to scale. Press **Let the rope run**: the riders move at the true speed, and the hand on the ruler shows how long it takes until the next one passes the post.

# %% folded
panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Halve the line speed. Which of the numbers halve, which double or nearly so, and which hardly moves?
# 2. Put the speed back and double the ridden length. Does the lift carry more an hour?
# 3. What spacing brings the headway to four seconds?

# %% folded
panel.at_settings("spacing", [Q(5, "m"), Q(6.8, "m"), Q(10, "m")])

# %% [markdown]
# The length does not enter the people an hour. A longer rope holds more riders, and each stays on it longer; both grow alike, and the flow at the top stays what it was. Length does matter to the motor, which feels every rider: [08 Pull and power](08_pull_and_power.ipynb). The vertical transport keeps the rise of your sheet while you move the length.

# %% [markdown]
# ## The same by hand
#
# Take round numbers near the readings: 3.4 m/s and 6.8 m.
#
# 1. How long until the next rider? 6.8 m ÷ 3.4 m/s = 2.0 s.
# 2. How many such steps are in an hour? 3,600 s ÷ 2.0 s = 1,800.
# 3. One person each step: 1,800 people an hour.
# 4. How long is a ride? 150 m ÷ 3.4 m/s = 44.12 s at the speed of the rope. But a rider stands still at the grab, and speeds up at 1.5 m/s², which is assumed: that costs 3.4 m/s ÷ (2 × 1.5 m/s²) = 1.13 s more. Together 45.25 s.
# 5. How many are on the line, on average? One takes hold every 2.0 s: 45.25 s ÷ 2.0 s = 22.6.

# %%
line_speed, spacing = Q(3.4, "m/s"), Q(6.8, "m")
capacity = hourly_capacity(line_speed, spacing)
ride = ride_time_from_rest(Q(150, "m"), line_speed, Q(1.5, "m/s**2"))
print("headway:", show(headway(line_speed, spacing)))
print("people an hour:", show(capacity))
print("ride time:", show(ride))
print("riders on the line:", show(persons_from_flow(capacity, ride)))

# %% [markdown]
# On the demo sheet the panel says the same, because the means of its readings are these round numbers, to the digits shown. With your own sheet it works with your readings. A number without a unit is refused here: `Q(3.4, "m/s")` is a quantity, 3.4 alone is nothing.

# %% [markdown]
# ## Which kind of number is it?
#
# Four figures go by the name of capacity, and they must not be mixed.
#
# | level | what it says |
# |---|---|
# | packing | the closest spacing that fits on the rope; nobody loads so |
# | ideal | the spacing that is intended, with every place taken |
# | governed | the smallest of all the limits of the lift |
# | counted | what was carried: counted at the top, or as heads on the running line with a ride time |
#
# Your sheet may allow up to three routes. Each uses readings of its own.

# %% folded
routes(sheet)

# %% [markdown]
# On the Penny Rope the second is five in a hundred below the first: the photos show 22 and 21 riders, and a full line holds 22.6 on average. The count at the top is little more than half of the first.
#
# ## Is the count really less?
#
# A count has a doubt of its own, even if nobody miscounts: the next two minutes bring a few more or a few fewer. The fewer were counted, the more it swings. So a count is held against the first route with its plus-minus:

# %% folded
count_in_words(sheet)

# %% [markdown]
# It works the other way, too. The first route bounds the mean of a long time. Two good minutes may well read more, and thirty times the best two minutes of a day is no capacity. Only a count above the packing figure, and one rider more for its ends, is impossible. The first route has a doubt as well: [06 How sure are we](06_how_sure_are_we.ipynb).
#
# And a count tells what a lift can carry only while people wait: without a waiting line it measures how many came. On the Penny Rope people stood waiting throughout.

# %% [markdown]
# ## What is still ignored
#
# | left out here | where it is treated |
# |---|---|
# | which unit a reading is in, and rounding | [01 Units](01_units.ipynb) |
# | why riders cannot stand closer | [02 Spacing](02_spacing.ipynb) |
# | the most on the line at one moment | [03 Riders on the line](03_riders_on_the_line.ipynb) |
# | other routes to the same number | [04 Hourly capacity](04_hourly_capacity.ipynb) |
# | how the readings were taken | [05 Measuring on the hill](05_measuring_on_the_hill.ipynb) |
# | plus or minus how much | [06 How sure are we](06_how_sure_are_we.ipynb) |
# | other kinds of lift | [07 Every kind of lift](07_every_kind_of_lift.ipynb) |
# | motor power and grip of the rope | [08 Pull and power](08_pull_and_power.ipynb) |
# | which limit comes first: loading, motor, unload area | [09 What limits the lift](09_what_limits_the_lift.ipynb) |
# | stops, misses and gaps | 10, to come |
# | the waiting line | 11, to come |
# | what a ride costs | 12, to come |

# %% [markdown]
# ## Exercises
#
# Work each out on paper, write the number, choose its unit, and press **Check**. If a usual mistake leads to your answer, the reply names it. **Clue** helps a step at a time; **Solution** opens after one attempt. With your name you get numbers of your own; without one, the printed ones. Whoever prefers code writes `try_answer`, an exercise and a quantity in a cell of their own; the README shows how.

# %% folded
from liftcalc.panels import AnswerBox, LearnerBox, RecordBox

LearnerBox()

# %% [markdown]
# ### Exercise 0.1

# %% folded
AnswerBox("0.1")

# %% [markdown]
# ### Exercise 0.2

# %% folded
AnswerBox("0.2")

# %% [markdown]
# ### Exercise 0.3

# %% folded
AnswerBox("0.3")

# %% [markdown]
# ### Exercise 0.4

# %% folded
AnswerBox("0.4")

# %% [markdown]
# ### Exercise 0.5

# %% folded
AnswerBox("0.5")

# %% [markdown]
# ### Exercise 0.6

# %% folded
AnswerBox("0.6")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("00")

# %% [markdown]
# ## In short
#
# - Line speed over spacing gives riders a second; times 3,600 it gives people an hour.
# - Length does not enter it. Length sets the riders on the line and the ride time.
# - Every capacity has a level. This one is ideal: an upper bound, not a promise.
#
# **Formula card.** C = 3,600 · n · v ÷ s, with C in people an hour, n persons per carrier, v the line speed in m/s, s the spacing in m.

# %% [markdown]
# ## Where to next
#
# [01 Units](01_units.ipynb) if your readings came in mixed units; [02 Spacing](02_spacing.ipynb) if you want to know why nobody shortens the spacing.
