# %% [markdown]
# # What did the tape, the phone and the map say?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# A cold morning, a lift stopped and locked out, a tape; later a phone in a closed pocket, other people's rides timed with a watch from outside their path, and a line drawn on a map. Four sources, and the first thing they do is disagree: 150 m says the tape, 163 m says the map. Nobody misread anything. This page takes a track apart, finds the part of it that knows the rope, and shows why two honest lengths can differ by thirteen metres.

# %% [markdown]
# ## Before you start
#
# **You will be able to** get line speed and ridden length out of a track; tell speed on the plan from speed along the slope; use lap times; say what a disagreement of methods is made of.
#
# **You need first** [03 Riders on the line](03_riders_on_the_line.ipynb), for ridden length and sheave distance.
#
# **About 40 minutes.**

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
# - A phone records its track in a closed pocket: start it before you get on, stop it when you are clear.
#
# This series teaches planning figures. Nothing here is a design, a permit or an instruction to change a lift. The local code, the authority having jurisdiction, the maker's manual and licensed people decide.

# %% [markdown]
# ## A track is not a speed
#
# A phone that records a track writes down where it was, second by second. Most of a track is not the lift: it is walking to the loading point, standing, gliding off, and skiing down. And each fix is off by some metres, not at random but in one direction for half a minute or so, and then in another.
#
# **Predict.** Below is the trace of two rides on the Penny Rope, with the way down between them. Where is the rope in it?

# %%
from liftcalc import Q, show, slope_length
from liftcalc.fieldwork import read_track

# your own file: put it beside the demo files in data, and change the name in the next line
track = read_track("../data/penny_rope_track.gpx")
print(f"{track.name}: {len(track.seconds)} fixes in {track.seconds[-1]:.0f} s")

# %% folded
from liftcalc.panels import LengthPanel, TrackPanel

trace = TrackPanel(track)
trace

# %% [markdown]
# The two level stretches at the top are the rides; below the zero line is the way down. The blue band is the **steady part** that the page found for itself: run-up, slowing and standing are cut away. Move its ends if you know better. The button below the slider takes a track of your own; the file stays on this computer.
#
# The plus-minus looks large for 32 fixes. It is honest: fixes that err together tell far less than 32 separate readings. A longer steady part helps more than more fixes. This invented track was picked because it reads 3.40 m/s, the speed by the other methods; another may lie 0.1 m/s beside it.

# %% folded
trace.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the start to 20 s. What do standing and run-up make of the speed?
# 2. Bring the start back to 44 s and the end to 60 s. The speed moves by two in a hundred; what does the plus-minus do?
# 3. Lay the band over the second ride. Do the two rides agree?

# %% folded
trace.at_settings("steady_from", [Q(20, "s"), Q(44, "s"), Q(60, "s")])

# %% [markdown]
# Everything that the page has to say of this track, with whatever it dropped:

# %% folded
from liftcalc.fieldwork import read_track_speed
from liftcalc.tables import Lines

Lines(*read_track_speed(track).sentences)

# %% [markdown]
# ### On the plan, or along the slope?
#
# Positions are a map: they know where, not how high. Their speed is the speed of the point straight below you on a flat map. On a grade of 20 % a metre of plan is 1.02 m of slope, so the speed along the rope is 2 in a hundred more. The elevations of the track, or a rise from the map, lift it onto the slope; the panel says which it did.
#
# By hand: 3.33 m/s on the plan, grade 20 %: √(1 + 0.20²) = 1.020, and 3.33 m/s × 1.020 = 3.40 m/s. The heights of the phone wander by metres: it says 29.6 m of rise, the field sheet 29.4 m from the map.
#
# ### A longer lift makes a surer track
#
# The Long Platter rides for more than two minutes. The same phone, the same stray metres, and a third of the doubt:

# %%
long_track = read_track_speed(read_track("../data/long_platter_track.gpx"))
Lines(*long_track.sentences[:2])

# %% [markdown]
# ## A watch, and a length
#
# One way to the speed needs no phone: stand outside the path of the riders, with both ends in sight, and time other people's rides from grab to let-go. The ridden length over the mean is the mean speed of a ride, and a ride on a tow begins at rest: the rope is a little faster. Nobody rides with the watch in a hand. One lap below took nearly ten seconds more. It is not thrown out in silence; the page points at it, and you decide.
#
# **Predict.** Ten laps, nine of them near 45 s and one of 55 s. By how much does that one lap move the speed? And by how much does the start from rest?

# %%
from liftcalc.fieldwork import line_speed_from_laps, read_lap_times

every_lap = read_lap_times("../data/penny_rope_laps.csv")
Lines(*every_lap.sentences)

# %%
without = read_lap_times("../data/penny_rope_laps.csv", without=["7"])
pick_up = {"pick_up_acceleration": Q(1.5, "m/s**2"), "pick_up_acceleration_uncertainty": Q(0.3, "m/s**2")}
for laps in (every_lap, without):
    speed, doubt = line_speed_from_laps(laps, Q(150, "m"), ridden_length_uncertainty=Q(0.6, "m"), **pick_up)
    print(f"{show(laps.mean)} a ride: {show(speed)}, standard uncertainty {show(doubt)}")

# %% [markdown]
# By hand, without the slow lap: 150 m ÷ 45.26 s = 3.31 m/s is the mean of a ride. Speeding up from rest at 1.5 m/s² costs v ÷ (2 a), about 3.4 m/s ÷ (2 × 1.5 m/s²) = 1.13 s; 150 m ÷ (45.26 s − 1.13 s) = 3.40 m/s is the rope. Left out, the start makes the rope 2.5 % too slow. The pick-up is assumed, 1.5 m/s² with a half-width of 0.5, which is a standard uncertainty of 0.3, and its doubt is in the doubt of the speed. Where you know no pick-up, leave it out, and the page says what that costs:

# %%
Lines(line_speed_from_laps(without, Q(150, "m")).sentence)

# %% [markdown]
# With the slow lap in the mean the rope would come out at 3.33 m/s. It had been slowed for a fallen rider: for the line speed the lap is left out, with the reason written down. For what the lift carries in an hour it counts.
#
# Better still, time from a post five metres or more above the grab, where riders have the speed of the rope already, and take the length from that post: then nothing need be assumed.

# %% [markdown]
# ## A line on a map
#
# A map line is horizontal. With the rise it becomes a length along the slope, again by the long side of a triangle. The rise must belong to the same two ends: sheave to sheave it is 31.9 m here, grab to let-go, as on the field sheet, 29.4 m. It is one slope with one grade of 20 %, and two pieces of it.

# %%
from liftcalc.fieldwork import read_map_line

line = read_map_line("../data/penny_rope_line.kml", vertical_rise=Q(31.9, "m"))
Lines(*line.sentences)

# %% [markdown]
# ## One length by three ways
#
# **A lift of your own.** Bring its sheet by the button, and the panel below takes its length, rise, speed and ride time, each with its plus-minus. The story around the panel stays with the Penny Rope.

# %% [markdown] lab-only
# Or name the sheet in the next cell and run all cells.

# %% no-output
# YOUR SHEET: change the path between the quotation marks
my_sheet = "../data/hill/1_penny_rope.csv"

# %% folded
from liftcalc.panels import SheetPage

page = SheetPage(my_sheet)
page.button()

# %% [markdown]
# **Predict.** The tape says 150 m, speed and ride time say 150 m, the map line says 163 m. Would you take the mean?

# %% folded
lengths = page.panel(LengthPanel)
lengths

# %% [markdown]
# The panel takes 1 m of half-width for the tape and for the rise, 4.2 m of standard uncertainty for the two clicked ends of the map line, 0.1 m/s and 0.5 s of half-width for speed and time, and a start from rest at 1.5 m/s² with 0.5 m/s² of half-width, assumed. Even so the map stands apart.
#
# Here is the cause. Whoever drew the line clicked on the two sheaves, which can be seen on the map. Whoever held the tape measured from grab to let-go. The rope runs some metres before anyone takes hold, and on past the unload area. Both lengths are right, and they are two lengths: 150 m is the **ridden length**, 163 m the **sheave distance**. A mean of them is the length of nothing.

# %% folded
lengths.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the map length down until map line and rise say 150 m, as the tape does. By how much, and where on the hill would you look for these metres?
# 2. Bring the map length back to 160 m and raise the ride time until speed and ride time agree with the map. Would you believe that stopwatch?
# 3. Set the rise to 2 m, as good as level. How much does the slope add to the map here?

# %% folded
lengths.around("map_length", [Q(140, "m"), Q(147, "m"), Q(160, "m")])

# %% [markdown]
# By hand: √(160² + 31.9²) = 163 m for the map; 150 m on the tape. Speed times time is 3.4 m/s × 45.3 s = 154 m: so far runs the rope. A rider from rest falls back by v² ÷ (2 a) = 3.4² ÷ (2 × 1.5) = 3.9 m while speeding up, and has come 150 m.

# %%
print("the map line, along the slope:", show(slope_length(vertical_rise=Q(31.9, "m"), horizontal_run=Q(160, "m"))))
rope, behind = Q(3.4, "m/s") * Q(45.3, "s"), Q(3.4, "m/s") ** 2 / (2 * Q(1.5, "m/s**2"))
print(f"speed times time: {show(rope.to('m'))} of rope, less {show(behind.to('m'))}: {show((rope - behind).to('m'))}")

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
# ### Exercise 5.1

# %% folded
AnswerBox("5.1")

# %% [markdown]
# ### Exercise 5.2

# %% folded
AnswerBox("5.2")

# %% [markdown]
# ### Exercise 5.3

# %% folded
AnswerBox("5.3")

# %% [markdown]
# ### Exercise 5.4

# %% folded
AnswerBox("5.4")

# %% [markdown]
# ### Exercise 5.5

# %% folded
AnswerBox("5.5")

# %% [markdown]
# ### Exercise 5.6

# %% folded
AnswerBox("5.6")

# %% [markdown]
# ### Exercise 5.7

# %% folded
AnswerBox("5.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("05")

# %% [markdown]
# ## In short
#
# - Only the steady part of a track knows the rope; the rest is you.
# - Positions give the plan; the rise lifts it onto the slope.
# - When methods disagree by more than their doubts, ask first whether they measured the same thing.
#
# **Formula card.** L = √(map² + rise²); v along = v on the plan · √(1 + g²); from rest T = L ÷ v + v ÷ (2 a), so v = a · (T − √(T² − 2 · L ÷ a)) and L = v · T − v² ÷ (2 a); from post to post v = L ÷ T.

# %% [markdown]
# ## Where to next
#
# [06 How sure are we](06_how_sure_are_we.ipynb): what these plus-minus make of people an hour, and which reading to take again.
