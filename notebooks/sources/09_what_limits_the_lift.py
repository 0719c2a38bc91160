# %% [markdown]
# # What limits the lift?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# A new supervisor sees a long line at the bottom and wide gaps on the rope, and reaches for the obvious: load them closer. On the Penny Rope that would change the number of people an hour by exactly nothing. The rope allows 1,800 pph. The loading point lets 1,200 pph through, one every 3 s, and in 3 s the rope has run 10.2 m. That is where the wide gaps come from, and no intended spacing closes them. A lift is a row of gates, and the narrowest one decides. (That is a picture: the stop gates of the cautions are devices, and nobody moves them.) This page computes every gate, puts them on one chart, and shows how the narrowest changes place as speed, slope, motor and people change.

# %% [markdown]
# ## Before you start
#
# **You will be able to** name the limits of a lift and compute each; say which one governs and how far the next is away; tell when a change helps and when it moves nothing; say why nobody shortens the spacing.
#
# **You need first** [02 Spacing](02_spacing.ipynb); for the motor [08 Pull and power](08_pull_and_power.ipynb), if you want to know why its curve bends.
#
# **About 40 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# On the lift:
#
# - On a tow held by hand, let go when the rope stops, clear the track, and stay clear. No restart until the track is seen to be clear.
# - On any other lift, stay on when it stops, and wait for the attendant. Whoever has fallen on the snow and is unhurt clears the track.
# - Nobody wraps a rope round a hand or an arm. Gripping devices only as the code and the operator allow.
#
# Only licensed people, the maker and the authority change spacing, line speed and stop gates. Stop gates are tested as the maker's manual and the code say. Moving a slider here is free. Changing a speed, a spacing, a motor or a counterweight on a hill is ropeway engineering. Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## Five gates
#
# - **Spacing.** How close together riders are meant to hang, and how fast that runs past a post.
# - **Loading.** How long the loading point takes from one successful start to the next.
# - **Motor.** How many rides its power pays for in an hour.
# - **Traction.** How many riders the rope can pull before it slips on its drive sheave, the wheel that the motor turns.
# - **Unload.** How long the unload area takes to be clear for the next.
#
# These five say how many get through in an hour. They are not all that caps a lift: the strength of the rope, the brake, the towers and the time of an evacuation do so too, and stand in the maker's papers and the permit. Nothing here looks at them.
#
# **Predict.** The Penny Rope runs at 3.4 m/s with a rider every 6.8 m. A start takes 3 s. Its motor has 15 kW. Which gate is the narrowest?

# %%
from liftcalc import Q, governing, people_limit, rule_limit, show, slope_limit
from liftcalc.lifts.hill import read_hill
from liftcalc.lifts.limits_of_line import limits_of
from liftcalc.lifts.tables import governing_table, weakest_first
from liftcalc.panels import HillPage, LimitsPanel, SharePanel
from liftcalc.tables import Lines

owlpenny = read_hill("../data/hill")
tow, of_the_tow = owlpenny.line("Penny Rope")
for limit in limits_of(tow, of_the_tow):
    print(limit)

# %% [markdown]
# By hand: spacing 3,600 s × 3.4 m/s ÷ 6.8 m = 1,800 pph. Loading 3,600 s ÷ 3 s = 1,200 pph; here the stopwatch ran from the place free to under way, and misses come on top. Unload 3,600 s × 3 places ÷ 6 s = 1,800 pph; a place is room for one rider to get clear, and here there are three. The motor was worked out on the page before; the slope there was a round 20 %, here it is the measured rise, which makes 1 pph of difference. Traction rests on a reading of the slack side, 7,000 N with the empty rope running steadily: (7,000 N × 0.7546 − 500 N) ÷ 194.65 N = 24.6 riders. Each rides for 150 m ÷ 3.4 m/s and 3.4 m/s ÷ (2 × 1.5 m/s²) for the start from rest, 45.25 s together: 24.57 × 3,600 s ÷ 45.25 s = 1,955 pph.
#
# The rope is to hold 1.25 times over. This safety factor is invented for this page and no rule. The code and the maker give the real one.
#
# The narrowest gate lets 1,200 through. It **governs**. That is no promise: it is an upper bound, and chance, misses and stops take their share of it.

# %% [markdown]
# ### Two readings that nobody may assume
#
# Traction hangs on two facts that are asked of the operator. Where does the drive stand? At the bottom each rider makes the slack side slacker. And may the lift be started with riders on it? On a rope tow they let go; on the Long Platter they stay on. Without the drive's position the limit is left out; without a starting acceleration it is that of the steady run, and says so.
#
# **Predict.** The Penny Rope's drive stands at the top. With the same readings and the drive at the bottom: more than half of the 1,955, or less?

# %%
from liftcalc.lifts.limits_of_line import capacities_at
from liftcalc.lifts.readings import known_values

for drive in ("top", "bottom"):
    readings = of_the_tow | {"drive_position": drive}
    print(f"traction, drive at the {drive}:", show(capacities_at(tow.kind, known_values(tow, readings))["traction"]))
platter, of_the_platter = owlpenny.line("Long Platter")
begun = of_the_platter | {"starting_acceleration": Q(0.35, "m/s**2"), "moving_mass": Q(1100, "kg")}
print(*[limit for limit in limits_of(platter, begun) if limit.name == "traction"])

# %% [markdown]
# By hand: the drive at the bottom divides by the ratio, 1.7546: 24.57 riders ÷ 1.7546 = 14.0 riders, and 14.0 × 3,600 s ÷ 45.25 s = 1,114 pph. That is below the loading point's 1,200, so the drive's position alone would change what governs here. For the Long Platter a start in 8 s, 0.35 m/s², and 1,100 kg of rope, platters and sheaves are assumed, as on the page before: so it can start 23.3 riders, and 20.5 are on it. Both hold with the counterweight at the sheave without a drive.

# %% [markdown]
# ## All of them on one chart
#
# **A lift of your own.** Bring its sheet by the button, or several sheets at once: each line gets a button in the panel, behind those of Owlpenny Hill, and a row in the tables below. The sheet is the one of [00 Start here](00_start_here.ipynb).

# %% [markdown] lab-only
# Or name a folder of sheets in the next cell and run all cells: then panel and tables speak of that folder alone, and the questions about the Penny Rope wait.

# %% no-output
# YOUR HILL: change the folder between the quotation marks
my_hill = "../data/hill"

# %% folded
hill = HillPage(my_hill)
hill.button()

# %% [markdown]
# Loading is taken as the same at every line speed. In truth a faster rope is harder to take hold of, and more people miss.
#
# **Predict.** Spacing climbs with line speed. Loading lies flat. What does the motor do, and what shape has the smallest of all?

# %% folded
limits = hill.panel(LimitsPanel)
limits

# %% [markdown]
# One thin curve a limit, each with its own colour and line, its name where it leaves the chart. The bold line is the smallest of them: what the lift can carry at most, in the colour of the limit that governs there. The dot is where the lift runs now, and the dotted way up from it ends at the next limit. A button puts all sliders to one lift of the hill. The last row of buttons chooses how the drive behaves below the line speed of the lift.

# %% folded
limits.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Penny Rope: bring the spacing to half. By how much do the people an hour rise?
# 2. Penny Rope again: raise the grade. At which grade does loading stop governing and the motor begin?
# 3. Long Platter: loading stands at 6 s. Bring it to 7.5 s. Who governs now, and would a bigger motor help?
# 4. Duckling Belt: which slider must move before a faster belt can help?
# 5. Twin Penny right: choose constant torque and slow the rope. Can it carry more?

# %% folded
limits.around("grade")

# %% [markdown]
# Where the bold line is flat, speed buys nothing. Where it falls, speed costs people. Where it rises, a faster rope carries more on paper; there spacing governs, or the rope's grip, or the motor of a drive at constant torque. And at the same spacing every step faster leaves people less time to take hold.

# %% [markdown]
# ## Why nobody shortens the spacing
#
# Back to the long line at the bottom. Half the spacing widens one gate of five, and not the narrow one.

# %%
from dataclasses import replace

closer = replace(tow, spacing=Q(3.4, "m"))
print("Penny Rope as it is:", governing(limits_of(tow, of_the_tow)).capacity)
print("at half the spacing:", governing(limits_of(closer, of_the_tow)).capacity)
print("Long Platter as it is:", governing(limits_of(platter, of_the_platter)).capacity)
closer = governing(limits_of(replace(platter, spacing=Q(17, "m")), of_the_platter))
print("with a platter every 17 m:", closer.capacity, "by its", closer.limit.name)

# %% [markdown]
# On the Penny Rope: nothing gained. But wherever two do get on 3.4 m apart, there is one second instead of two to take hold, about twice the riders are inside the stopping distance of whoever falls, and two reach the top a second apart. [02 Spacing](02_spacing.ipynb) shows each.
#
# What could move the number is at the loading point, and by 91 pph at most before the motor governs: skis turned the right way before it is their turn, a hand for beginners where the operator's rules allow it. A second place to start from, or another spacing, is a change of the lift: the maker, licensed people and the authority decide, and may have reasons of their own for what is there.
#
# On the Long Platter spacing governs, and there closer platters do carry more on paper: 39 pph, until the motor has no more to give. The price is not on the paper. Each rider has less time to load and to leave, and the next one is nearer to whoever falls. More outfits and more riders load rope, towers and brake. And in many places a change of the number or spacing of carriers must be reviewed first.
#
# Said in one breath to a guest of the Penny Rope: "The rope is not what you are waiting for. We can start one rider every three seconds, and closer on the rope is only closer to whoever falls."

# %% [markdown]
# ## The hill, line by line
#
# **Predict.** Four lifts and a proposal. Does the same limit govern on any two of them?

# %% folded
hill.show(governing_table)

# %% [markdown]
# On Owlpenny Hill it does: spacing on the Long Platter and the Lantern Double, loading on the Penny Rope and its twin. Traction is left out by name where nobody has read the rope's tension or the drive's position. It is not zero, and it is not endless; it is not known. Duckling Belt has no rope, and nobody has read how its belt grips.
#
# The second rope of the proposal is slower and has the smaller motor, and its motor governs. Together the two lines carry at most the sum of the two, 1,200 + 978 = 2,178 pph, not twice the first.

# %% [markdown]
# ## When two limits are close
#
# On the Long Platter spacing governs with 514 pph, and the motor stands 39 pph above it. Both rest on readings with a doubt, and the motor on many: the mean mass of a rider, the friction of the snow, the efficiency, the drag of the empty rope. Which of the two governs is then a matter of shares: draw each reading within its doubt, many times, and count.
#
# **Predict.** Friction is known to about a third, the mean mass to a tenth. In what share of the draws does the motor govern, and which of the two readings is worth more care?

# %% folded
shares = SharePanel(platter, of_the_platter)
shares

# %% folded
shares.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the doubt of friction alone to 1 %, put it back to 30 %, then bring the doubt of mass alone to 1 %. Which of the two takes more from the motor's share?
# 2. Put the doubt of mass back to 10 % and bring the doubt of loading to 30 %. How can loading govern in some draws, when it stands 86 pph above?
# 3. Put the doubt of loading back to 15 %. Bring spacing, friction and mass to 1 % each. Is it settled now? What does a stopwatch outside the track read in place of the spacing?

# %% folded
shares.at_settings("mass_doubt", [Q(1, "percent"), Q(10, "percent"), Q(20, "percent")])

# %% [markdown]
# ### With the doubts of a sheet
#
# A sheet says how far each reading may be off: by its repeats, and by its plus-minus. Drawn within those, each limit has two ends between which 95 of 100 draws lie. The table shows the line that came last by the button, or the first line while none has come.

# %% folded
hill.doubts()

# %% [markdown]
# ### Many lifts at once
#
# An association has two hundred lifts and asks which are the weakest, and what holds each. The table below has the weakest first; the link saves all of it for a spreadsheet program.

# %% [markdown] lab-only
# Whoever prefers code writes `hill_frame(hill.value)` from `liftcalc.lifts.tables`, a table of pandas to be sorted and filtered at will, such as by `.query("governs == 'motor'")`.

# %% folded
from liftcalc.pages.hill_links import hill_links

hill.show(weakest_first)

# %% folded
hill.show(hill_links)

# %% [markdown]
# ## At most, and why less
#
# A gate of 3 s on average is not 3 s each time. Suppose that no start may follow sooner than 2 s after the last, and riders take 2 s on average, with a spread of half of that (lognormal, assumed). The quick ones wait for the rope; the slow ones let it go by; what they lose never comes back.
#
# **Predict.** Both gates say 1,800. What goes through?

# %%
from liftcalc import loading_capacity, mean_loading_time_lognormal

mean = mean_loading_time_lognormal(Q(0.5, ""), mean_time=Q(2, "s"), floor=Q(2, "s"))
print("a start every", show(mean), "on average:", show(loading_capacity(mean)))

# %% [markdown]
# By hand, from the mean before rounding: 3,600 s ÷ 2.373 s = 1,517 pph. If the times are exponential with mean m, and no start follows sooner than h, the mean is h + m · e^(−h ÷ m).
#
# The mean of the larger of two is larger than the larger of the two means. So even the smallest gate is an upper bound, and the nearer the next limit stands, the further the lift stays below the smallest.

# %% [markdown]
# ## Apart from the lift: people, slope, rule
#
# Three more figures hold down what is carried, and none of them belongs to the lift. A crowd makes only so many laps. A slope has room for only so many. A rule is a permission: someone enters it with its source, and nobody assumes one.

# %%
apart = [
    people_limit(Q(60, "person"), ride_and_descent=Q(200, "s"), loading_time=Q(3, "s")),
    slope_limit(Q(40, "person/hectare"), Q(1.2, "hectare"), Q(90, "s")),
    rule_limit(Q(1100, "pph"), "permit of the invented hill, entered for this page"),
]
Lines(str(governing([*limits_of(tow, of_the_tow), *apart])))

# %% [markdown]
# By hand: 60 people with a lap of 200 s and 3 s make at most 60 × 3,600 ÷ 203 = 1,064 rides an hour between them. On such a day the lift could carry more and nobody is there to ride. The permit is lower than what the lift can do, and it binds all the same: nobody may carry more than 1,100 pph, and a higher limit is no leave to use it. Forty riders a hectare on 1.2 hectares are 48 on the slope; at 90 s a descent that is 1,920 an hour.

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
# ### Exercise 9.1

# %% folded
AnswerBox("9.1")

# %% [markdown]
# ### Exercise 9.2

# %% folded
AnswerBox("9.2")

# %% [markdown]
# ### Exercise 9.3

# %% folded
AnswerBox("9.3")

# %% [markdown]
# ### Exercise 9.4

# %% folded
AnswerBox("9.4")

# %% [markdown]
# ### Exercise 9.5

# %% folded
AnswerBox("9.5")

# %% [markdown]
# ### Exercise 9.6

# %% folded
AnswerBox("9.6")

# %% [markdown]
# ### Exercise 9.7

# %% folded
AnswerBox("9.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("09")

# %% [markdown]
# ## In short
#
# - Spacing, loading, motor, traction, unload: the smallest governs, and it is an upper bound.
# - A change to a gate that does not govern carries nobody more. Look first which one does, and how far the next is away.
# - People and slope are not the lift's own; a rule binds, whatever the lift could do; a limit without a reading is left out and named. Rope, brake, towers and evacuation cap a lift too, and are no part of it.
#
# **Formula card.** C = min(3,600 · n · v ÷ s, 3,600 · n · K ÷ t at loading, motor, traction, 3,600 · n · K ÷ t at unload), with K places and t the time at each; where loading is random with a floor h, C = 3,600 ÷ mean of max(X, h), and with exponential times of mean m that mean is h + m · e^(−h ÷ m).

# %% [markdown]
# ## Where to next
#
# [10 Counted and ideal](10_counted_and_ideal.ipynb): why fewer are counted than the narrowest gate lets through. [11 Lift lines and laps](11_lift_lines_and_laps.ipynb): how long they wait for it. [12 Cost per ride](12_cost_per_ride.ipynb): what it costs. Or [13 Your lift](13_your_lift.ipynb), with all you have of it.
