# %% [markdown]
# # Is 3.4 m/s fast?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# The phone says miles an hour, the maker's paper says feet a minute, the stopwatch and the tape say feet a second, and the formula wants metres a second. All four may be right, and a number without its unit is none of them. Many a capacity goes wrong here, before any formula begins. This page turns one speed and one power into all their units, and shows what it costs to round too soon.

# %% [markdown]
# ## Before you start
#
# **You will be able to** turn a line speed from any unit into any other; tell horsepower, metric horsepower and kilowatt apart; say when to round.
#
# **You need first** nothing.
#
# **About 25 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## One speed, five numbers
#
# **Predict.** A rope runs at 3.4 m/s. A brisk walk is about 1.5 m/s. Would you have to walk, jog or sprint to stay beside a rider?

# %% folded
from liftcalc import Q, hourly_capacity, show
from liftcalc.panels import PowerRulerPanel, RoundingPanel, SpeedRulerPanel

speed_panel = SpeedRulerPanel(line_speed=Q(3.4, "m/s"))
speed_panel

# %% [markdown]
# The upright line is the speed. It crosses five rulers, and reads a different number on each. None of them is more exact than the others.

# %% folded
speed_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Find 10 mph. How many feet a minute is it?
# 2. Which is the larger number for the same speed, mph or m/s? By about what factor?
# 3. A paper says 500 and the unit is torn off. On a rope tow, which unit was it?

# %% folded
speed_panel.at_settings("line_speed", [Q(2, "m/s"), Q(3.4, "m/s"), Q(5, "m/s")])

# %% [markdown]
# At 3.4 m/s you jog: more than twice a brisk walk. That is what a beginner's hands meet on first taking hold.

# %% [markdown]
# ## From one unit to another by hand
#
# Every factor comes from three definitions, all exact: a foot is 0.3048 m, a mile is 5,280 ft, an hour is 3,600 s. Write the unit behind every number and strike out what stands above and below the line.
#
# From a mark on the rope, timed over 100 ft in 8.96 s:
#
# 1. 100 ft ÷ 8.96 s = 11.16 ft/s. Keep the extra digit until the end.
# 2. 11.16 ft/s × 0.3048 m/ft = 3.40 m/s.
# 3. 11.16 ft/s × 60 s/min = 670 ft/min. (The panel says 669: 3.40 m/s sharp, where the mark ran at 3.402.)
# 4. 11.16 ft/s × 3,600 s/h ÷ 5,280 ft/mile = 7.6 mph.

# %%
timed = Q(100 / 8.96, "ft/s")
for unit in ("ft/s", "m/s", "ft/min", "mph", "km/h"):
    print("the mark on the rope:", show(timed, unit))

# %% [markdown]
# The factor between feet a second and mph is 3,600 ÷ 5,280, about 0.68. Turned upside down it is 1.47. One check saves you: a speed in mph is always the smaller number than the same speed in ft/s.
#
# A short table to carry in your head:
#
# | m/s | mph | ft/s | ft/min |
# |---|---|---|---|
# | 1 | 2.2 | 3.3 | 197 |
# | 2 | 4.5 | 6.6 | 394 |
# | 3 | 6.7 | 9.8 | 591 |
# | 4 | 8.9 | 13.1 | 787 |

# %% [markdown]
# ## One power, three numbers
#
# The plate on a motor gives its rated power: in horsepower on one, in kilowatts on another. A horsepower is 550 foot-pounds a second, 745.7 W. The metric horsepower on old European plates is 75 kilogram-metres a second, 735.5 W. They differ by 1.4 in a hundred, little enough to miss and enough to argue about. Ask the operator what the plate says; nobody goes to the drive to read it.
#
# **Predict.** A plate reads 15 kW. Is the number of horsepower larger or smaller than 15?

# %% folded
power_panel = PowerRulerPanel(motor_power=Q(15, "kW"))
power_panel

# %% [markdown]
# Rated power is what the motor may give at its shaft without harm, hour after hour. What arrives at the riders is less: [08 Pull and power](08_pull_and_power.ipynb).

# %% folded
power_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. How many kilowatts are 20 hp?
# 2. A spare motor is listed at 20 metric hp. Is it larger or smaller than one of 20 hp?

# %% folded
power_panel.at_settings("motor_power", [Q(7.5, "kW"), Q(15, "kW"), Q(30, "kW")])

# %% [markdown]
# By hand: 20 hp × 550 ft·lbf/s = 11,000 ft·lbf/s, and one foot-pound is 1.356 J, so 11,000 × 1.356 = 14,900 W, or 14.9 kW.

# %%
print("20 hp:", show(Q(20, "hp"), "kW"))
print("20 metric hp:", show(Q(20, "metric_horsepower"), "kW"))

# %% [markdown]
# ## Rounded early, or at the end
#
# Someone at a fence says: "About half a rider a second, so 1,800 an hour." Sometimes that is right. Riders a second is a small number, and a small number has few digits to lose.
#
# **Predict.** At 3.4 m/s and 7.5 m there are 0.4533 riders a second. Round that to 0.5 and multiply by 3,600. How far off is the result?

# %% folded
rounding_panel = RoundingPanel(line_speed=Q(3.4, "m/s"), spacing=Q(7.5, "m"), digits_kept=Q(1, ""))
rounding_panel

# %% [markdown]
# The full line is rounded at the end. The dashed steps are what comes of rounding riders a second first. They meet here and there, by luck.

# %% folded
rounding_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the line speed back to 3.4 m/s and the spacing to 7.5 m; the panels of a page move together. Keep no digit after the point. Over which line speeds does the poor method give no riders at all?
# 2. How many digits must you keep until the error is under one in a hundred at this setting? And at every line speed of the slider?
# 3. Find a speed at which rounding early does no harm. Would you trust it?

# %% folded
rounding_panel.at_settings("digits_kept", [Q(0, ""), Q(1, ""), Q(2, "")])

# %% [markdown]
# By hand, both ways:
#
# 1. At the end: 3.4 m/s ÷ 7.5 m = 0.4533 riders/s; × 3,600 s/h = 1,632 riders/h.
# 2. Early: 0.4533 becomes 0.5; × 3,600 = 1,800 riders/h. That is 168 riders an hour, or 10 in a hundred, from nowhere.

# %%
exact = hourly_capacity(Q(3.4, "m/s"), Q(7.5, "m"))
print("ideal, rounded at the end:", show(exact))
print("ideal, rounded early:     ", show(Q(0.5, "person/s"), "pph"))

# %% [markdown]
# Carry all the digits the calculator has, and round once, at the end, to what your readings can bear. A tape and a stopwatch seldom bear more than two figures: 1,600, said as "about sixteen hundred".

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
# ### Exercise 1.1

# %% folded
AnswerBox("1.1")

# %% [markdown]
# ### Exercise 1.2

# %% folded
AnswerBox("1.2")

# %% [markdown]
# ### Exercise 1.3

# %% folded
AnswerBox("1.3")

# %% [markdown]
# ### Exercise 1.4

# %% folded
AnswerBox("1.4")

# %% [markdown]
# ### Exercise 1.5

# %% folded
AnswerBox("1.5")

# %% [markdown]
# ### Exercise 1.6

# %% folded
AnswerBox("1.6")

# %% [markdown]
# ### Exercise 1.7

# %% folded
AnswerBox("1.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("01")

# %% [markdown]
# ## In short
#
# - A number without a unit is no reading. Write the unit at the rope, not at the desk.
# - mph is the smaller number, ft/s the larger; the factor is 3,600 ÷ 5,280.
# - Round once, at the end.
#
# **Formula card.** 1 ft = 0.3048 m; 1 mile = 5,280 ft; 1 h = 3,600 s; 1 mph = 0.44704 m/s; 1 hp = 745.7 W; 1 metric hp = 735.5 W.

# %% [markdown]
# ## Where to next
#
# [02 Spacing](02_spacing.ipynb): the other reading, and why nobody shortens it.
