# template: talk
# %% [markdown]
# # How many people an hour, says the room?
#
# To run this page, choose *Run*, then *Run All Cells*. To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# This is a talk of 25 minutes for a meeting of operators: eleven scenes and four to spare. In front of a room it runs in the app view, one scene a screen, large and without code: `python -m liftcalc.pages.talk` starts it. Here each scene stands with the words to say. The numbers are those of the invented Penny Rope on Owlpenny Hill.

# %% [markdown]
# ## Before you start
#
# **You will be able to** let a room guess, measure, compute, find what governs, and compare with a count, in 25 minutes.
#
# **You need first** [09 What limits the lift](09_what_limits_the_lift.ipynb) and [10 Counted and ideal](10_counted_and_ideal.ipynb), so that you can answer what is asked.
#
# **About 25 minutes.**

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

# %% no-output
from liftcalc.panels.guess_board import GuessBoard, Guesses, Opening, RunningRope
from liftcalc.panels.scene_room import RoomLift
from liftcalc.panels.scene_spares import FasterRope, TheCost, TheWait, WhereSpacingGoverns
from liftcalc.panels.scenes import HalfTheSpacing, HowMeasured, OneLine, WhatHalfCosts, WhereTheRestStays

# %% [markdown] scene=welcome minutes=0
# ## How many people an hour?

# %%
Opening()

# %% [markdown]
# Guess first. Then measure.

# %% [markdown] spoken
# > Stands while the room fills. Nothing to say yet. The clock starts when you leave this scene.

# %% [markdown] caution
# Planning figures only, from an invented hill. Code and licensed people decide.

# %% [markdown] scene=rope minutes=1.5
# ## Count aloud who passes the flag

# %%
RunningRope()

# %% [markdown] spoken
# > This is a rope tow, drawn to scale and at its true speed. Count with me, aloud, everyone who passes the flag. Let them count for half a minute; say no number. Every place on this rope is taken, which no real rope manages.
# >
# > Do not stop when it gets boring: a beat that never breaks is what a brochure promises. Then ask who has stood at the top of a rope and seen that. Keep the answers for later.

# %% [markdown] caution
# On a real lift: stand outside the track and the unload area to watch.

# %% [markdown] scene=guess minutes=2.5
# ## How many people an hour?

# %%
GuessBoard("ideal")

# %% [markdown] spoken
# > How many people an hour does this rope carry, with every place taken? Hands up for A, for B, for C, for D: type how many. Who has another number? Take up to six. Then lock: from now on nobody was right all along.
# >
# > Do not help. If somebody asks how long the rope is, ask back whether that matters, and leave it open. Read each number back aloud, so that everybody remembers their own.

# %% [markdown] caution
# A guess is no target, and no contest.

# %% [markdown] scene=measured minutes=1.5
# ## Three readings

# %%
HowMeasured()

# %% [markdown] spoken
# > Three readings. The speed: a mark on the rope and two poles, set by the operator with the lift locked out, timed from outside. The spacing: a photo from the side, the mean of ten gaps. It shows a full moment, as photos do, and a full moment is not the hour. The loading time: a watch, from the place free to under way. Nobody stood in the loading area, nobody went near the drive. All of it with the operator's leave.
# >
# > Ask who has walked along a rope with a tape. We do not: it takes a stopped lift and a key in somebody's pocket, and a photo from outside does it as well. Ten gaps, because one gap is luck. The loading time is the reading that nobody brings to a meeting. Keep it in mind.

# %% [markdown] caution
# Operator's leave first. Marks and tape on a locked-out lift only. Never at the drive.

# %% [markdown] scene=ideal minutes=2
# ## One line of arithmetic

# %%
OneLine()

# %%
Guesses("ideal", large=False)

# %% [markdown] spoken
# > Spacing over speed: one rider every two seconds. An hour has 3,600 seconds: 1,800. Who was near? Whoever said 1,200: keep that number, it comes back. That is the ideal: the intended spacing, every place taken, no stop. It is where a brochure ends. We begin here.
# >
# > Let the room do the sum before you say it: 6.8 by 3.4. Every two seconds: that is what you counted at the flag. Somebody will say that no rope ever does that. Do not argue, they are about to be right. And the length of the rope? It is nowhere in the line. Twice the rope has twice as many on it at a time, and just as many an hour at the top.

# %% [markdown] caution
# Ideal: every place taken. Nobody is asked to fill every place.

# %% [markdown] scene=counted minutes=2.5
# ## How many were counted?

# %%
GuessBoard("counted")

# %% after=counted
Guesses("counted")

# %% [markdown] spoken
# > Now somebody stood at the top and counted, two minutes long, with people waiting at the bottom all the while. Ideal was 1,800. What was counted? Hands, numbers, lock. Then show: 33 people in two minutes, 990 an hour. Two minutes are a short count: it may be off by a sixth. Whoever said 1,800 counted places, and places do not ride. Nobody lied, and nobody was lazy.
# >
# > Ask those who changed their number since the first guess, and why. With gaps half as uneven as chance, 33 people in two minutes can mean 820 to 1,160 an hour. So take 990 for what it is: about a thousand, and far from 1,800.

# %% [markdown] caution
# Whoever counts is not on duty, and stands outside the track and the unload area.

# %% [markdown] scene=limits minutes=3
# ## Where does the rest stay?

# %%
WhereTheRestStays()

# %% [markdown] spoken
# > Five gates in a row. Spacing lets 1,800 through. But a start takes three seconds, and that is 1,200. The narrowest decides: loading governs. Move the loading time: half a second less, and the motor takes over at 1,291. From 1,200 to 990 it is misses, falls and stops, and the luck of two minutes. A stop is there for whoever has fallen: it is no loss.
# >
# > Name the bars one at a time, and ask what each is before you say it. Spacing: how close they stand. Loading: how long a start takes. Motor: how many it can pull. Traction: how many the rope holds before it slips on its sheave. Unload: how fast they clear the top. Then the dashed line, the count. It stands below every bar, as it must: a limit is the most, and never a promise. Why not at 1,200? Take three answers from the room before you give any. And remember the half second: the motor is close behind, so a better start gains 91 an hour and no more.

# %% [markdown] caution
# A limit is no target: no start is hurried for it. A stop is never a loss to argue away.

# %% [markdown] scene=half minutes=2.5
# ## Half the spacing: any more?

# %%
GuessBoard("half")

# %% folded after=half
HalfTheSpacing()

# %% [markdown] spoken
# > The line at the bottom is long, the gaps on the rope are wide. Load them twice as close: how many more an hour? Hands, lock, show. Press half the spacing. Nothing. Whoever said more widened one gate of five, and not the narrow one. Whoever said fewer thought of the next scene. The gaps are wide because a start takes three seconds.
# >
# > Ask somebody who said twice as many to explain it. It is a good answer, for another lift: where carriers hang on the rope, spacing can govern. One of the spares shows such a lift. Here there are no carriers to fill. Whoever is ready takes hold, and that is every three seconds, ten metres apart, whatever the plan says.

# %% [markdown] caution
# Load closer, run faster, move a stop gate? Only as maker, authority and licensed people say.

# %% [markdown] scene=price minutes=3
# ## And what does half cost?

# %%
WhatHalfCosts()

# %% [markdown] spoken
# > Nothing gained. And the price? Where two do get on at half the spacing: whoever falls has four people inside the stopping distance, with the one who fell, and not two. Hands have one second to take hold. At the top there are six at once, not three. Assumed here: two seconds until somebody presses stop, half a second until it brakes, a brake of 2,000 newtons, 22 riders who hold on, a slope of 20 %. A rider takes six seconds to clear the top, by the watch.
# >
# > Take the three one at a time. The fall: the rope runs on after somebody shouts, for nobody presses in no time. The hands: one second is less than it takes to say this. The top: six people where there was room for three, and the next one on the way. Ask who has seen a pile-up at the top, and what came next: a stop. That is what half the spacing buys.

# %% [markdown] caution
# Assumed: reaction 2 s, delay 0.5 s, brake 2,000 N, 22 hold on, 20 %. A real stop is tried as maker and code say.

# %% [markdown] scene=room minutes=4
# ## Your lift: how many people?

# %%
RoomLift()

# %% [markdown] spoken
# > Whose lift shall we take? Choose its kind, then type what is called out: the speed and the spacing, or the interval alone, and the loading time. A number alone is in the units of the screen; any unit may be called out with it. The limit stands there as you type, with every place taken: two on each T-bar. It is the smaller of two limits and no promise: nobody asked for the motor, the rope or the brake.
# >
# > Type what they say, units and all. Ask the owner first what they expect. If their own count is above the limit, say so: a reading is off, or the count is, and that is worth a second look at home. If the clock allows, take a second lift of another kind, and ask why its number is so different.

# %% [markdown] caution
# Two limits only. Motor, rope, brake, towers and evacuation cap a lift too.

# %% [markdown] scene=home minutes=2
# ## At home, this week
#
# 1. Time the **loading**: ten starts, a watch.
# 2. **Count** at the top: half an hour, people waiting.
# 3. Photograph the **spacing**. Ask guests first.
# 4. Compare. What governs on **your** lift?

# %% [markdown] spoken
# > Three readings and a comparison. Never alone, never without the operator's leave, from outside the track, the loading and the unload area, and never by the attendant on duty. Write down whether people waited, or the count says nothing. The sheet that goes round is one lift on one page: this is what yours could look like.
# >
# > Ask who will count this week, and on which day. Say where the blank sheet is, and that the pages, the blank and this talk on a stick may be copied and passed on.

# %% [markdown] caution
# Not alone, not on duty, with leave; outside track, load and unload areas. Code and licensed people decide.

# %% [markdown] scene=faster minutes=2 spare
# ## A faster rope: how many more?

# %% folded
FasterRope()

# %% [markdown] spoken
# > Take loading as three seconds at any line speed. A faster rope only leaves less time to take hold, and from a certain speed the motor governs and it is fewer. In truth more people miss a faster rope.

# %% [markdown] caution
# A faster rope is harder to take hold of. Only licensed people change a line speed.

# %% [markdown] scene=platter minutes=2 spare
# ## The lift where spacing governs

# %% folded
WhereSpacingGoverns()

# %% [markdown] spoken
# > On the Long Platter spacing does govern. Twice the platters carry 39 more an hour, then its motor has no more to give. The price is not on the screen: less time to load, the next one nearer to whoever falls, more load on rope, towers and brake.

# %% [markdown] caution
# More carriers load rope, towers and brake: a change for the maker and the authority.

# %% [markdown] scene=wait minutes=2 spare
# ## How long do they wait?

# %% folded
TheWait()

# %% [markdown] spoken
# > Seventy people who ski this rope and nothing else, at the counted 990 an hour. Assumed: 75 seconds down, no rest, loading times as uneven as exponential ones. Guests feel the wait, not the people an hour.

# %% [markdown] caution
# A waiting line stands clear of the track, and leaves the way out of the unload area free.

# %% [markdown] scene=cost minutes=2 spare
# ## What does a ride cost?

# %% folded
TheCost()

# %% [markdown] spoken
# > The year costs about the same however many ride. So a ride costs by how many there are. Most of it is staff, and attendants stand where the code, the authority and the sight lines ask for them.

# %% [markdown] caution
# Invented prices; dollars are a label. Saving a post is no way to cheaper rides.

# %% [markdown] aside
# ## Where to next
#
# [10 Counted and ideal](10_counted_and_ideal.ipynb) for the question that comes first, and [00 Start here](00_start_here.ipynb) for a lift of your own.
