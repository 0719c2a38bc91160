# %% [markdown]
# # How many people an hour, on these readings?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows. Nothing you do here can break anything.
#
# Someone stands at the foot of a rope tow and asks how many people it lifts in an hour. You have a tape, a stopwatch and a phone. Two readings answer the question: how fast the rope runs, and how far apart riders stand on it. This page takes your readings, gives the answer with its unit, and says what kind of answer it is.
#
# As it comes, the page speaks of the Penny Rope on Owlpenny Hill, an invented, volunteer-run ski area. Give it a sheet of your own, and its panel, tables and steps speak of your lift, of whatever kind it is.

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
# Take the printed blank up the hill. Back at the desk, type your readings into the blank for a spreadsheet program: one row a reading, each with its own unit, and a row for what kind of lift it is. Repeats are welcome; what you did not measure stays empty. It is not read, and nothing is put in its place.

# %% folded
from liftcalc.pages.blank_sheet import blank_sheet_links

blank_sheet_links()

# %% [markdown] lab-only
# Your sheet comes in by the button below, as the page stands. Or by the next cell: put the name of your sheet between the quotation marks, `"my_sheet.csv"` if it lies beside this page, or its full path, and run all cells again. Your sheet is only read, never changed. If something in it cannot be read, the message names every such cell, and says what to write.

# %% [markdown] app-only
# Your sheet comes in by the button below, as the page stands. It is only read, never changed. If something in it cannot be read, the message names each such place by row and column, and says what to write.

# %% no-output
# YOUR SHEET: change the path between the quotation marks
my_sheet = "../data/hill/1_penny_rope.csv"

# %% folded
from liftcalc.fieldwork import summary
from liftcalc.lifts.sheet_words import agreement_in_words, by_hand, count_in_words, left_out_in_words
from liftcalc.lifts.sheet_words import routes, routes_in_words
from liftcalc.panels import SheetPage, StartPanel

page = SheetPage(my_sheet)
page.button()

# %% [markdown]
# This is what the sheet holds.

# %% folded
page.show(summary)

# %% [markdown]
# One row is one quantity. Repeats are averaged; the last column shows how far they lie apart. Some of it makes the line, some checks it, and some serves later pages.

# %% folded
page.show(agreement_in_words)

# %% [markdown]
# How to treat readings that disagree is a subject of its own: [06 How sure are we](06_how_sure_are_we.ipynb).

# %% [markdown]
# ## The answer
#
# Some words first. **pph** is people an hour. **Headway** is the time from one rider, or one carrier, to the next. **Ridden length** runs along the rope from grab to let-go; **sheave distance** from the bottom sheave to the top one. **Vertical transport**, VTFH, is people an hour times the rise in feet.
#
# **Predict.** If the rope ran half as fast, with riders as far apart as before, would it lift more, fewer, or as many an hour?

# %% folded
panel = page.panel(StartPanel)
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
# 3. What spacing doubles the headway?

# %% folded
panel.around("spacing")

# %% [markdown]
# The length does not enter the people an hour. A longer rope holds more riders, and each stays on it longer; both grow alike, and the flow at the top stays what it was. Length does matter to the motor, which feels every rider: [08 Pull and power](08_pull_and_power.ipynb). The vertical transport keeps the rise of your sheet while you move the length.

# %% [markdown]
# ## The same by hand
#
# Take the readings as one writes them down, rounded, and go step by step.

# %% folded
page.show(by_hand)

# %% [markdown] lab-only
# Whoever prefers code writes `hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m"))` in a cell of their own. A number without a unit is refused there: `Q(3.4, "m/s")` is a quantity, 3.4 alone is nothing.

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
# A sheet may allow up to three routes. Each uses readings of its own.

# %% folded
page.show(routes)

# %% folded
page.show(routes_in_words)

# %% [markdown]
# ## Is the count really less?
#
# A count has a doubt of its own, even if nobody miscounts: the next two minutes bring a few more or a few fewer. The fewer were counted, the more it swings. So a count is held against the first route with its plus-minus:

# %% folded
page.show(count_in_words)

# %% [markdown]
# It works the other way, too. The first route bounds the mean of a long time. Two good minutes may well read more, and thirty times the best two minutes of a day is no capacity. Only a count above the packing figure, and one rider more for its ends, is impossible. The first route has a doubt as well: [06 How sure are we](06_how_sure_are_we.ipynb).
#
# And a count tells what a lift can carry only while people wait: without a waiting line it measures how many came.

# %% [markdown]
# ## What is still ignored
#
# What this sheet itself leaves open:

# %% folded
page.show(left_out_in_words)

# %% [markdown]
# And what the page leaves out, whatever the sheet:
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
# | why fewer are counted: stops, misses and gaps | [10 Counted and ideal](10_counted_and_ideal.ipynb) |
# | the waiting line, and laps | [11 Lift lines and laps](11_lift_lines_and_laps.ipynb) |
# | what a ride costs | [12 Cost per ride](12_cost_per_ride.ipynb) |

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
# [01 Units](01_units.ipynb) if your readings came in mixed units; [02 Spacing](02_spacing.ipynb) if you want to know why nobody shortens the spacing. When you have more of your lift than a sheet, [13 Your lift](13_your_lift.ipynb) takes all of it, and ends with a page for the wall.
