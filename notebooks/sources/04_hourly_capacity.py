# %% [markdown]
# # How many an hour?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# This is the number everybody asks for: people an hour, written pph. It decides whether the line at the bottom melts or grows, and it is the number most often repeated without anyone having measured it. Here you get it by two routes that share no reading, and by a count on a rope that the page runs for you; you see what each depends on, and learn to say which kind of number you hold.

# %% [markdown]
# ## Before you start
#
# **You will be able to** compute hourly capacity from speed and spacing, from an interval and from a head count; go back from a wanted capacity to the spacing it asks for; give vertical transport; name the level of a number.
#
# **You need first** headway and riders on the line, as in [02 Spacing](02_spacing.ipynb) and [03 Riders on the line](03_riders_on_the_line.ipynb).
#
# **About 35 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## First route: speed and spacing
#
# In one hour a rope at 3.4 m/s runs 3,600 s × 3.4 m/s = 12,240 m past you. Every 6.8 m of it holds a rider.
#
# **Predict.** Make the rope half again as fast and leave the spacing. Does it lift half again as many? And if riders also stand half again as far apart?

# %% folded
from liftcalc import Q, Capacity, compare, headway, hourly_capacity, interval_for_capacity, show, spacing_for_capacity
from liftcalc import hourly_capacity_from_head_count, hourly_capacity_from_interval, vertical_transport
from liftcalc.panels import CapacityPanel, CountPanel, IntervalPanel, RoutesPanel

capacity_panel = CapacityPanel(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), vertical_rise=Q(29.4, "m"))
capacity_panel

# %% [markdown]
# Each line through the corner is one spacing. Faster along a line is more people; wider spacing drops you onto a flatter line. A faster rope with riders further apart may carry just what it did.

# %% folded
capacity_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Triple the line speed from 2 m/s and triple the spacing from 5 m. What happens to people an hour?
# 2. Two riders side by side: set two persons per carrier. What does the spacing mean now?
# 3. Which control changes vertical transport and not people an hour?

# %% folded
capacity_panel.at_settings("line_speed", [Q(2, "m/s"), Q(3.4, "m/s"), Q(5, "m/s")])

# %% [markdown]
# By hand:
#
# 1. Rope in an hour: 3,600 s × 3.4 m/s = 12,240 m.
# 2. Riders on that much rope: 12,240 m ÷ 6.8 m = 1,800.
#
# In feet: 3,600 s × 11.15 ft/s ÷ 22.3 ft = 1,800. Speed and spacing only need the same unit of length.

# %%
print("ideal, from metres:", show(hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m"))))
print("ideal, from feet:  ", show(hourly_capacity(Q(11.15, "ft/s"), Q(22.3, "ft"))))

# %% [markdown]
# ## The interval is what people feel
#
# A platter or a chair comes at an interval, in seconds. Then speed and spacing are not needed at all: an hour holds 3,600 s, and each interval brings one carrier.
#
# **Predict.** A double chair comes every 7 s. More than a thousand an hour, or fewer?

# %% folded
interval_panel = IntervalPanel(interval=Q(7, "s"), seats=Q(2, "person"))
interval_panel

# %% [markdown]
# The curve is steep at the left: between two and three seconds a tenth matters. At the right it is flat. A tenth of a second at 2 s costs a double chair 171 people an hour; at 15 s it costs 3.

# %% folded
interval_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. What interval must a single platter have to carry as many as a double chair at 7 s?
# 2. Set two persons per carrier again. At 7 s, what does one second less gain? And at 14 s?

# %% folded
interval_panel.at_settings("interval", [Q(4, "s"), Q(7, "s"), Q(10, "s")])

# %% [markdown]
# By hand: 3,600 s/h ÷ 7 s = 514.3 chairs/h; × 2 persons = 1,029 persons/h. Round the chairs first and you get 1,028; round at the end.

# %%
print("ideal, from the interval:", show(hourly_capacity_from_interval(Q(7, "s"), Q(2, "person"))))

# %% [markdown]
# Back from a wish: the club wants 1,200 an hour from a rope at 3.4 m/s. What does that ask of the loading point?

# %%
print("for 1,200 pph, spacing:", show(spacing_for_capacity(Q(1200, "pph"), Q(3.4, "m/s"))))
print("for 1,200 pph, headway:", show(interval_for_capacity(Q(1200, "pph"))))

# %% [markdown]
# ## Second route: a head count and a stopwatch
#
# Speed over spacing is one route. Put the length above and below the line, and it is the same route still. A second route must use other readings. Count the heads on the running line in a photo, and time one rider from grab to let-go.
#
# **Predict.** The photo shows 22 riders and a ride takes 45.3 s. Does that agree with 1,800?

# %% folded
routes_panel = RoutesPanel(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), riders_on_line=Q(22, "person"), ride_time=Q(45.3, "s"))
routes_panel

# %% [markdown]
# The two bars have different levels. The first is an **ideal**: the spacing intended, every place taken. The second was **counted**. When the count falls short, the lift has not become smaller; it was not full.
#
# Here 97 % is as good as full. A full line holds 22.6 riders on average, so one photo shows 22 or 23, and one head is about 80 people an hour. Take several photos, and their mean.

# %% folded
routes_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the line speed back to 3.4 m/s and the spacing to 6.8 m; the panels of a page move together. Six riders missed the rope: 16 heads. What share of the ideal is left?
# 2. You timed a slow rider at 50 s, whose hands slipped on the rope. Which way does that push the result?

# %% folded
routes_panel.at_settings("riders_on_line", [Q(11, "person"), Q(16, "person"), Q(22, "person")])

# %% [markdown]
# By hand, on the mean of many photos of a full line: 22.63 riders ÷ 45.25 s = 0.500 riders/s; × 3,600 s/h = 1,800 riders/h. On the one photo: 22 riders ÷ 45.3 s × 3,600 s/h = 1,748 riders/h.

# %%
for heads, ride in ((22.63, 45.25), (22, 45.3), (23, 45.3)):
    print(f"counted, {heads} heads:", show(hourly_capacity_from_head_count(Q(heads, "person"), Q(ride, "s"))))

# %% [markdown]
# ## Third route: stand at a post and count
#
# The plainest route needs no formula. With the operator's permission, stand outside the track and clear of the unload area, start the stopwatch, count who passes. Here riders are set on a rope at even spacing and the rope is run; the count begins a moment before the first one passes.
#
# **Predict.** How far from 1,800 can a count over eleven seconds be, although every rider is in place?

# %% folded
count_panel = CountPanel(line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), counting_time=Q(60, "s"))
count_panel

# %% [markdown]
# This count is of an invented, full line; yours will be of a real one. Each tooth is one rider more. With perfectly even riders a count over a minute is within one rider, 60 an hour. Real riders are not even, and a real count swings far more; by how much stands in [00 Start here](00_start_here.ipynb). And a count tells what the lift can carry only while people stand waiting; without a waiting line it measures how many came.

# %% folded
count_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. How long must you count until one rider more or less is under two in a hundred?
# 2. Set 20 m spacing. A tooth near 60 s is still about 60 an hour high. Why does it weigh three times as much now?

# %% folded
count_panel.at_settings("counting_time", [Q(11, "s"), Q(61, "s"), Q(180, "s")])

# %% [markdown]
# ## Never mix the levels
#
# A number carries its level with it here. Comparing an ideal with a count is a comparison of a wish with a fact, and the package says so:

# %%
import warnings

tow = [Capacity(hourly_capacity(Q(3.4, "m/s"), Q(6.8, "m")), "ideal"), Capacity(Q(990, "pph"), "counted")]
chair = Capacity(Q(850, "pph"), "counted")
with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # the sentence below says what the warning would
    print(compare(tow, chair))

# %% [markdown]
# Twice as many became one sixth more, and a count of two minutes is not that sure. The fair comparison is a count beside a count.

# %% [markdown]
# ## Vertical transport
#
# An hour on a short tow and an hour on a long chair are not the same work. Vertical transport feet per hour, VTFH, multiplies people an hour by the rise in feet.
#
# By hand, for the tow: 1,800 persons/h × 96.5 ft = 173,700 VTFH. The table has 173,623: its rise is 29.4 m, not rounded to 96.5 ft.

# %%
print("ideal vertical transport:", show(vertical_transport(Q(1800, "pph"), Q(96.5, "ft"))))

# %% [markdown]
# Here are the lifts of Owlpenny Hill, all at their ideal level, which flatters the ropes most, and a proposal of two ropes side by side. An installation of several lines has a capacity for each line and one for all together; say which you mean.
#
# Lifts of your own come behind them by the button, a sheet for each line.

# %% [markdown] lab-only
# Or name a folder of sheets in the next cell and run all cells: then the table speaks of that folder alone.

# %% no-output
# YOUR HILL: change the folder between the quotation marks
my_hill = "../data/hill"

# %% folded
from liftcalc.lifts.tables import hill_table
from liftcalc.panels import HillPage

hill = HillPage(my_hill)
hill.button()

# %% [markdown]
# Each row is one line by itself, and where several lines are run as one lift a row holds them together.

# %% folded
hill.show(hill_table)

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
# ### Exercise 4.1

# %% folded
AnswerBox("4.1")

# %% [markdown]
# ### Exercise 4.2

# %% folded
AnswerBox("4.2")

# %% [markdown]
# ### Exercise 4.3

# %% folded
AnswerBox("4.3")

# %% [markdown]
# ### Exercise 4.4

# %% folded
AnswerBox("4.4")

# %% [markdown]
# ### Exercise 4.5

# %% folded
AnswerBox("4.5")

# %% [markdown]
# ### Exercise 4.6

# %% folded
AnswerBox("4.6")

# %% [markdown]
# ### Exercise 4.7

# %% folded
AnswerBox("4.7")

# %% [markdown]
# ### Exercise 4.8

# %% folded
AnswerBox("4.8")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("04")

# %% [markdown]
# ## In short
#
# - Speed over spacing, or persons over interval, times 3,600.
# - A second route must share no reading with the first: heads and a stopwatch, or a count at a post.
# - Say the level with the number. An ideal is an upper bound.
#
# **Formula card.** C = 3,600 · n · v ÷ s = 3,600 · n ÷ t = 3,600 · N ÷ T; VTFH = C · rise in feet; s = 3,600 · n · v ÷ C.

# %% [markdown]
# ## Where to next
#
# [05 Measuring on the hill](05_measuring_on_the_hill.ipynb): where the readings come from. Or back to [00 Start here](00_start_here.ipynb) with your own field sheet.
