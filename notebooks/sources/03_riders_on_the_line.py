# %% [markdown]
# # How many are on it at once?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# The motor feels every rider on the rope. The attendant at the top sees each of them arrive. If the tow stops for good, every one of them must ski down. So how many hold on at once is worth knowing, and it has two answers: the average, which the hourly capacity obeys, and the most at one moment, which the rope must bear. Mixing them up is an error of up to one rider, and one rider is much on a short tow.

# %% [markdown]
# ## Before you start
#
# **You will be able to** give the average and the most; count the carriers on a loop; get riders from a flow and a ride time, and a flow from riders and a ride time; say what a start from rest adds.
#
# **You need first** spacing, as in [02 Spacing](02_spacing.ipynb).
#
# **About 25 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## Posts and gaps
#
# Put a fence post every 10 m along 100 m. There are ten gaps and eleven posts. Riders on a rope are posts that move.
#
# First take riders who have the speed of the rope from the first metre, as on a belt or a chair: they keep their spacing all the way. Riders of a tow stand still at the grab; what that adds comes further down.
#
# **Predict.** A line is ridden over 150 m with a rider every 6.8 m. Are there 21, 22 or 23 on it?

# %% folded
from liftcalc import Q, carriers_on_loop, headway, most_persons_on_line, persons_on_line, ride_time, show
from liftcalc import hourly_capacity_from_head_count, most_persons_from_headway, persons_from_flow, ride_time_from_rest
from liftcalc.panels import FlowPanel, RidersPanel

riders = RidersPanel(ridden_length=Q(150, "m"), spacing=Q(6.8, "m"))
riders

# %% [markdown]
# The straight line is the average. The dashed steps are the most at one moment: as one rider takes hold at the bottom, another is just about to let go at the top, and both count.
#
# The average is seldom whole, and it is exact. Watch the rope for an hour, note the number at moments picked by chance, take the mean: 22.1. At any one moment there are 22 or 23.

# %% folded
riders.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Set the length to 136 m, which is 20 spacings of 6.8 m. What is the average, what the most?
# 2. At what spacing do 150 m hold 15 on average?
# 3. Make the line short: 20 m, with a rider every 5 m. What is the average, what the most, and how many in a hundred of the average is the difference?

# %% folded
riders.at_settings("ridden_length", [Q(60, "m"), Q(150, "m"), Q(190, "m")])

# %% [markdown]
# By hand: 150 m ÷ 6.8 m = 22.06. The average is 22.1 persons. The most is the whole part, 22, and one: 23.

# %%
length, spacing = Q(150, "m"), Q(6.8, "m")
print("on the line, average:", show(persons_on_line(ridden_length=length, spacing=spacing)))
print("on the line, most:   ", show(most_persons_on_line(ridden_length=length, spacing=spacing)))

# %% [markdown]
# The one more never enters an hourly capacity. Whoever computes the hour from 23 riders instead of 22.1 has made the lift 4 in a hundred larger than it is.
#
# Two lengths go by the name of the lift's length. The **ridden length** runs from grab to let-go: use it for riders. The **sheave distance** runs from sheave to sheave: use it for carriers.

# %% [markdown]
# ## Carriers on a loop
#
# Platters, T-bars and chairs hang on a rope that closes on itself. Up side and down side together are twice the sheave distance, and a loop has as many posts as gaps: nothing is added.
#
# **Predict.** The Long Platter has 411.6 m between its sheaves and a platter every 19.6 m. How many platters does the club own, if two more hang in the shed?
#
# By hand: 2 × 411.6 m ÷ 19.6 m = 42 on the loop, and 2 in the shed: 44. Half of those on the loop go up at any moment: 21.

# %%
print("platters on the loop:", show(carriers_on_loop(sheave_distance=Q(411.6, "m"), spacing=Q(19.6, "m"))))

# %% [markdown]
# Three settings of the same formula, for the Long Platter:

# %% folded
from liftcalc.tables import Table

spacings = [Q(14.7, "m"), Q(19.6, "m"), Q(23.52, "m")]
carriers = [carriers_on_loop(sheave_distance=Q(411.6, "m"), spacing=s) for s in spacings]
intervals = [headway(Q(2.8, "m/s"), s) for s in spacings]
rows = [tuple(map(show, row)) for row in zip(spacings, carriers, intervals)]
Table("Carriers on a loop of 411.6 m between sheaves, at 2.80 m/s", ("spacing", "carriers", "interval"), rows)

# %% [markdown]
# A real loop has a little more rope, round the sheaves, and the maker sets the spacing so that the number comes out whole.

# %% [markdown]
# ## Riders are flow times time
#
# There is another way to the same number, without length and without spacing. If a rider takes hold every two seconds and each stays on for 45 s, then 22 or 23 are on.
#
# A rider of a tow stands still at the grab and speeds up. **Pick-up** says how hard: at 1.5 m/s² it takes 3.4 m/s ÷ 1.5 m/s² = 2.3 s to the speed of the rope. Nobody timed it on the Penny Rope; it is assumed.
#
# **Predict.** The rope is made half as fast, with the same spacing. Are there more riders on the line, fewer, or as many?

# %% folded
flow = FlowPanel(
    line_speed=Q(3.4, "m/s"), spacing=Q(6.8, "m"), ridden_length=Q(150, "m"), pick_up_acceleration=Q(1.5, "m/s**2")
)
flow

# %% [markdown]
# The height of the area is riders a second, its width is seconds on the line. The area is riders. Move the line speed: the area grows taller and narrower, and stays nearly as large as it was. Without the start from rest it would stay exactly as large.

# %% folded
flow.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the spacing back to 6.8 m and the ridden length to 150 m; the panels of a page move together. Change the line speed from end to end. Riders a second grow fifteenfold; by how much does the average on the line move?
# 2. Double the ridden length. Which side of the area grows?
# 3. Put the line speed to 3.4 m/s and the ridden length back to 150 m. Between which numbers does the pick-up move the average? Without a start from rest it was 22.1.

# %% folded
flow.at_settings("line_speed", [Q(2, "m/s"), Q(3.4, "m/s"), Q(5, "m/s")])

# %% [markdown]
# By hand, at the speed of the rope from the first metre: 1,800 riders/h ÷ 3,600 s/h = 0.5 riders/s; 150 m ÷ 3.4 m/s = 44.1 s; 0.5 riders/s × 44.1 s = 22.1 riders.
#
# This is **Little's law**: how many are in a place is how many arrive, times how long they stay. It holds for a tow, an unload area, a waiting line and a hut, whatever the order of arrival, as long as what goes in comes out.

# %%
at_once = ride_time(Q(150, "m"), Q(3.4, "m/s"))
print("ride time:", show(at_once))
print("riders:   ", show(persons_from_flow(Q(1800, "pph"), at_once)))

# %% [markdown]
# ### Why they bunch up at the start
#
# While a rider speeds up from rest, the rope runs twice as far as the rider. On the Penny Rope that costs 3.4 m/s ÷ (2 × 1.5 m/s²) = 1.13 s, and the ride takes 44.12 s + 1.13 s = 45.25 s. At half a rider a second 22.6 are on, not 22.1.
#
# Where are they? At the bottom. When the next one takes hold, 2 s later, the first has come ½ × 1.5 m/s² × (2 s)² = 3.0 m; from then on the gap opens, until at the speed of the rope it is 6.8 m. So metres do not count riders who start from rest, and seconds do. The most at one moment is the whole part of 45.25 s ÷ 2.0 s = 22.6, and one: 23. Here the fence posts gave 23, too; one metre shorter, metres would say 22, and it is still 23.

# %%
two_seconds = headway(Q(3.4, "m/s"), Q(6.8, "m"))
for length in (Q(150, "m"), Q(149, "m")):
    from_rest = ride_time_from_rest(length, Q(3.4, "m/s"), Q(1.5, "m/s**2"))
    most = most_persons_from_headway(ride_time=from_rest, headway=two_seconds)
    by_metres = most_persons_on_line(ridden_length=length, spacing=Q(6.8, "m"))
    average = persons_from_flow(Q(1800, "pph"), from_rest)
    print(f"{show(length)}: {show(from_rest)}, average {show(average)}, most {show(most)}, by metres {show(by_metres)}")

# %% [markdown]
# Turned round, Little's law is a way to measure. Count heads in photos, time one rider with a stopwatch, and divide. No tape, no speed, and the start from rest is in the stopwatch already. It gives 1,800 but for the rounding of both readings:

# %%
print("counted, by heads and ride time:", show(hourly_capacity_from_head_count(Q(22.6, "person"), Q(45.3, "s"))))

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
# ### Exercise 3.1

# %% folded
AnswerBox("3.1")

# %% [markdown]
# ### Exercise 3.2

# %% folded
AnswerBox("3.2")

# %% [markdown]
# ### Exercise 3.3

# %% folded
AnswerBox("3.3")

# %% [markdown]
# ### Exercise 3.4

# %% folded
AnswerBox("3.4")

# %% [markdown]
# ### Exercise 3.5

# %% folded
AnswerBox("3.5")

# %% [markdown]
# ### Exercise 3.6

# %% folded
AnswerBox("3.6")

# %% [markdown]
# ### Exercise 3.7

# %% folded
AnswerBox("3.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("03")

# %% [markdown]
# ## In short
#
# - At the speed of the rope from the first metre, L ÷ s are on the line on average; the most is the whole part of it, and one.
# - A loop has no post to add: 2 L ÷ s carriers.
# - Riders are flow times time. A start from rest makes the ride longer by v ÷ (2 a), and riders bunch up at the bottom.
#
# **Formula card.** N = C · T ÷ 3,600, with C in people an hour and T in seconds; T = L ÷ v, from rest T = L ÷ v + v ÷ (2 a); at the speed of the rope N = n · L ÷ s; most n · (whole part of T ÷ t, and 1); carriers K = 2 · L ÷ s.

# %% [markdown]
# ## Where to next
#
# [04 Hourly capacity](04_hourly_capacity.ipynb): the number everybody asks for.
