# %% [markdown]
# # Why does spacing matter?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# On a busy Saturday the line at the bottom is long, the gaps on the rope look wide, and someone says: "Load them closer." On paper that works at once; half the spacing carries twice the people. On the snow the next rider is then one second behind whoever falls, and the tips of the skis half a second. This page shows what a spacing is made of, what it means in seconds, how far the rope runs after a fall, and what happens at the top.

# %% [markdown]
# ## Before you start
#
# **You will be able to** turn a spacing into a headway and back; build a spacing from skis and gap; compare three stopping distances, on an empty rope and on a full one; say how many riders are in the unload area at once.
#
# **You need first** metres a second, as in [01 Units](01_units.ipynb).
#
# **About 35 minutes.**

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
# On the lift:
#
# - On a tow held by hand, let go when the rope stops, clear the track, and stay clear. No restart until the track is seen to be clear.
# - On any other lift, stay on when it stops, and wait for the attendant. Whoever has fallen on the snow and is unhurt clears the track.
# - Nobody wraps a rope round a hand or an arm. Gripping devices only as the code and the operator allow.
#
# Only licensed people, the maker and the authority change spacing, line speed and stop gates. Stop gates are tested as the maker's manual and the code say.
#
# This series teaches planning figures. Nothing here is a design, a permit or an instruction to change a lift. The local code, the authority having jurisdiction, the maker's manual and licensed people decide.

# %% [markdown]
# ## What a spacing looks like
#
# **Predict.** The rope runs at 3.4 m/s with a rider every 6.8 m. Count aloud: how long from one rider to the next?

# %% folded
from liftcalc import Q, attendant_stopping_distance, headway, mean_spacing, show
from liftcalc import observed_spacing, rope_deceleration, rope_pull, rope_stopping_distance
from liftcalc.panels import LineViewPanel, MixPanel, StoppingPanel, UnloadPanel

view = LineViewPanel(spacing=Q(6.8, "m"), line_speed=Q(3.4, "m/s"), grade=Q(20, "percent"))
view

# %% [markdown]
# Riders, rope and slope are drawn to one scale. Press **Let the rope run** and watch the post with the flag. The hand on the ruler starts anew each time a rider passes the post; each small mark is a tenth of a second.

# %% folded
view.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Let the rope run and narrow the spacing until the headway is one second. Could you ski up, take hold and settle in that time?
# 2. Set 9 m. What line speed gives the headway that 6.8 m had at 3.4 m/s?
# 3. Raise speed and spacing by the same factor. What stays the same?

# %% folded
view.at_settings("spacing", [Q(3.4, "m"), Q(6.8, "m"), Q(13.6, "m")])

# %% [markdown]
# By hand: headway is spacing over speed, 6.8 m ÷ 3.4 m/s = 2.0 s. In feet it is the same: 22.3 ft ÷ 11.2 ft/s = 2.0 s. People feel the seconds, not the metres.

# %%
print("headway, from metres:", show(headway(Q(3.4, "m/s"), Q(6.8, "m"))))
print("headway, from feet:  ", show(headway(Q(11.2, "ft/s"), Q(22.3, "ft"))))

# %% [markdown]
# ## What a spacing is made of
#
# A rider takes up the length of the skis. Behind the tails is a gap. Spacing, also called pitch, is both together: from one rider's hands to the next rider's hands. The gap alone is not the spacing.
#
# Children are shorter than adults and fit closer. A mix has one mean spacing, counted by rider.
#
# **Predict.** Half of the riders stand 2.4 m apart and half 1.6 m. Is the capacity of the mix the mean of the two capacities, less, or more?

# %% folded
mix = MixPanel(practical_gap=Q(0.7, "m"), child_length=Q(0.9, "m"), child_share=Q(50, "percent"))
mix

# %% [markdown]
# The last number is the common mistake: the mean of the two capacities, 6,375 here instead of 6,120. It is too high for every true mix: it counts the close riders as if their share of the rope were their share of the riders, and it is less.
#
# A spacing built up so, from skis and a gap that just fits, gives a **packing** figure. It is where the story starts, not what a lift carries. The same number of metres, intended and loaded by an attendant, would be called ideal: the level says what the number promises, not how large it is. So with a wide gap the panel still says packing: it knows only skis and gap.
#
# Two riders side by side, or an adult with a child, count as two persons on one spacing, from pair to pair; only where code and operator allow it. The pair's headway is as before, and the people an hour double.

# %% folded
mix.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Set the share of children to none, then to all. Between which two values does the mean spacing lie?
# 2. Put the share back to half and widen the gap to 5 m. Why does the common mistake almost vanish?

# %% folded
mix.at_settings("practical_gap", [Q(0.7, "m"), Q(3, "m"), Q(6, "m")])

# %% [markdown]
# By hand, for the question above, at 3.4 m/s:
#
# 1. Mean spacing: (2.4 m + 1.6 m) ÷ 2 = 2.0 m.
# 2. Capacity of the mix: 3,600 s/h × 3.4 m/s ÷ 2.0 m = 6,120 riders/h.
# 3. The wrong road: 3,600 × 3.4 ÷ 2.4 = 5,100 and 3,600 × 3.4 ÷ 1.6 = 7,650; their mean is 6,375.

# %%
print("mean spacing:", show(mean_spacing(Q([2.4, 1.6], "m"), Q([0.5, 0.5], ""))))

# %% [markdown]
# ### Spacing observed
#
# What the rope really carries is read off a photo of the running line, or, where carriers hang on the rope, taped on the stopped and locked-out lift: the distance from the first rider to the last, over the number of gaps. Eleven riders have ten gaps. Two things spoil it: counting riders for gaps, and picking the gaps that happen to catch the eye, which are the long ones.

# %%
print("spacing observed:", show(observed_spacing(Q(68, "m"), Q(11, "person"))))

# %% [markdown]
# ## Three stopping distances
#
# A rider falls. Three stops are possible then, each over its own distance.
#
# - **The rope, after a stop gate trips.** No human reaction: a short delay, then it slows.
# - **The rope, after an attendant's stop.** The same, and before it the time until someone sees the fall and presses stop.
# - **A rider who lets go.** Slope and snow stop a skier without any brake. On a grade steeper than the friction, skis that still point uphill then run back: turn across the slope and clear the track.
#
# How far the rope itself runs also depends on who is on it.
#
# **Predict.** A tow with a strong brake is tried in the morning, with nobody on it. After a stop gate trips, the rope runs 2.6 m. At noon it is full: does it run less far then, as far, or further?

# %% folded
stopping = StoppingPanel(riders_on_rope=Q(22, "person"), brake_force=Q(2000, "N"), reaction_time=Q(2, "s"))
stopping

# %% [markdown]
# Further: 3.4 m. What the panel assumes stands below its numbers, and yours differ. The two seconds and the 2,000 N are invented for this page, too. No published reaction time of lift attendants was found; and nobody should measure one on guests. Whoever wants their own asks the operator for a drill: the operator sets it up and leads it, with no guests on the lift, and the attendant knows of it.

# %% folded
stopping.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the line speed back to 3.4 m/s; the panels of a page move together. Bring the brake force to zero, as if the drive only let go of the rope. Which runs further now, the empty rope or the full one?
# 2. Find the brake force at which riders make no difference. How hard does the empty rope slow there, and how hard a rider who lets go?
# 3. Put the brake force back to 2,000 N and bring the spacing to 3 m. How many are inside the attendant's distance at most, the fallen rider counted?

# %% folded
stopping.at_settings("brake_force", [Q(0, "N"), Q(500, "N"), Q(2000, "N")])

# %% [markdown]
# By hand, at 3.4 m/s, with 22 riders of 75 kg and a brake of 2,000 N:
#
# 1. What slows the rope: 22 × 194.73 N of pull, 500 N of idle drag and 2,000 N of brake, together 6,784 N. The pull of one rider is worked out in [08 Pull and power](08_pull_and_power.ipynb).
# 2. What has to be slowed: 22 × 75 kg + 400 kg = 2,050 kg. So it slows by 6,784 N ÷ 2,050 kg = 3.31 m/s².
# 3. Delay: 3.4 m/s × 0.5 s = 1.7 m. Slowing: (3.4 m/s)² ÷ (2 × 3.31 m/s²) = 1.7 m. After a stop gate, 3.4 m.
# 4. Reaction: 3.4 m/s × 2.0 s = 6.8 m. After an attendant's stop, 10.2 m. At 6.8 m spacing that holds the fallen rider and one more.
# 5. Empty: 2,500 N ÷ 400 kg = 6.25 m/s². Slowing takes 0.9 m, and with the delay the rope runs 2.6 m.

# %%
speed, pull = Q(3.4, "m/s"), rope_pull(Q(75, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, ""))
line = {"pull": pull, "idle_drag": Q(500, "N"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}
for riders in (Q(22, "person"), Q(0, "person")):
    slowing = rope_deceleration(riders, brake_force=Q(2000, "N"), **line)
    gate = rope_stopping_distance(speed, Q(0.5, "s"), slowing)
    seen = attendant_stopping_distance(speed, reaction_time=Q(2, "s"), stop_delay=Q(0.5, "s"), rope_deceleration=slowing)
    print(show(riders), "on the rope:", show(slowing), "and", show(gate), "after a gate,", show(seen), "after an attendant")

# %% [markdown]
# ### Empty or full: which runs further?
#
# Riders who hold on do two things to a rope that is stopping. Slope and snow slow them, and through their hands they slow the rope. But they are mass, too, and a brake has to stop them as well. A rider alone slows by 194.73 N ÷ 75 kg = 2.60 m/s² here. The empty rope slows by idle drag and brake over its own mass.
#
# - If the empty rope slows by less than a rider alone, each rider helps to stop it, and the **empty** rope runs further.
# - If it slows by more, the riders run up on it. Whoever holds on is held back by the rope and pushes it on, and the **full** line runs further. Whoever lets go glides on beside it. A tether goes slack and pushes nothing: that rope stops as if it were empty.
# - If both slow alike, riders make no difference: here at a brake of 539 N.

# %%
from liftcalc import brake_force_where_riders_make_no_difference

print("riders make no difference at a brake of", show(brake_force_where_riders_make_no_difference(**line)))

# %% [markdown]
# So a stop tried without riders proves nothing about a full line, and one with riders nothing about the empty rope. With what load to try, the maker's manual says. No stop gate is sized from a page like this.

# %% [markdown]
# ## The unload area
#
# At the top each rider lets go, glides, and leaves. While one is still there, the next arrives.
#
# **Predict.** A rider needs 6 s to be gone. One arrives every 2 s. How many are there at once?

# %% folded
unload = UnloadPanel(clearing_time=Q(6, "s"))
unload

# %% [markdown]
# One bar is one rider, from letting go until gone. Read upwards along the dashed line: whoever it crosses is in the area at the same time.

# %% folded
unload.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the line speed back to 3.4 m/s and the spacing to 6.8 m. What spacing would leave the area to one rider at a time?
# 2. Beginners take 10 s. How many are there at once then, and who must agree to a wider spacing?

# %% folded
unload.at_settings("clearing_time", [Q(3, "s"), Q(6, "s"), Q(10, "s")])

# %% [markdown]
# By hand: 1,800 riders an hour are 0.5 riders a second. 0.5 riders/s × 6 s = 3 riders. This is Little's law, and it will return on the next page: how many are in a place is how many arrive, times how long they stay.

# %% [markdown]
# ## Why nobody shortens the spacing
#
# Half the spacing doubles the figure on paper. It also halves the seconds to take hold, doubles the riders inside the stopping distance and doubles the crowd at the top. On paper the rope carries more. The people at both of its ends may not manage it, and the motor has not been asked yet. [09 What limits the lift](09_what_limits_the_lift.ipynb) puts all of them on one chart.

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
# ### Exercise 2.1

# %% folded
AnswerBox("2.1")

# %% [markdown]
# ### Exercise 2.2

# %% folded
AnswerBox("2.2")

# %% [markdown]
# ### Exercise 2.3

# %% folded
AnswerBox("2.3")

# %% [markdown]
# ### Exercise 2.4

# %% folded
AnswerBox("2.4")

# %% [markdown]
# ### Exercise 2.5

# %% folded
AnswerBox("2.5")

# %% [markdown]
# ### Exercise 2.6

# %% folded
AnswerBox("2.6")

# %% [markdown]
# ### Exercise 2.7

# %% folded
AnswerBox("2.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("02")

# %% [markdown]
# ## In short
#
# - Spacing is skis and gap together. Headway is spacing over line speed: that is what people feel.
# - The rope's stopping distance grows with the reaction time, and faster than the line speed. Whether the empty rope or the full line runs further depends on the brake.
# - Riders in the unload area are riders a second times the seconds each needs.
#
# **Formula card.** t = s ÷ v; s = skis + gap; d = v · (reaction + delay) + v² ÷ (2 · a), with a = (N · F + F₀ + brake) ÷ (N · m + M); riders inside d, at most: the whole part of d ÷ s, and one. Here N is the riders on the rope, F the pull and m the mass of each, F₀ the drag of the empty rope, M the mass of rope and sheaves.

# %% [markdown]
# ## Where to next
#
# [03 Riders on the line](03_riders_on_the_line.ipynb): how many hold the rope at once. A new supervisor goes straight on to [09 What limits the lift](09_what_limits_the_lift.ipynb).
