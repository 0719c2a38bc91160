# %% [markdown]
# # Is the motor big enough?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# The belt squeals on a wet Sunday, the rope slows, and someone says: "Run it slower, then the motor has it easier." On many drives the slower rope carries fewer. A motor does not deal in metres a second; it pays an energy for each rider, and what it can pay in an hour is its limit. This page works that energy out, first by a law so simple that speed drops out of it, then with all that spoils the law. Then it asks of two grips that no motor helps: the rope's on its sheave, and a hand's on the rope. (A drive that squeals is stopped and reported, not reckoned with.)

# %% [markdown]
# ## Before you start
#
# **You will be able to** work out the pull and the energy of a ride on any profile; say whether a motor is big enough, and for how many; tell when speed matters to it; judge the grip of a sheave and of a hand; say why a full line starts gently.
#
# **You need first** [04 Hourly capacity](04_hourly_capacity.ipynb); kilowatts as in [01 Units](01_units.ipynb).
#
# **About 45 minutes.**

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
# At the drive:
#
# - Motor plate, rope tension and drag: ask the operator. Never read them at the drive.
# - Fuel burns, and exhaust kills where it cannot get away. Only the operator's people fill an engine, and only when it is stopped and cool.
# - Guards stay on belts, chains, shafts and sheaves. Only whoever maintains the drive takes one off, with the drive locked out.
#
# Only licensed people, the maker and the authority change spacing, line speed and stop gates. Stop gates are tested as the maker's manual and the code say. Motors, drives, ropes, counterweights and brakes are ropeway engineering. Nothing on this page sizes one. Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## What one rider costs
#
# A rope that pulls a rider up a slope does two things: it lifts, and it drags skis over snow. The pull along the slope is F = m · g · (sin α + μ · cos α): m is the mass of the rider, g is 9.81 m/s², α the angle of the slope, and μ the friction of skis on snow. This page takes it as 0.07; yours differs.
#
# A slope can be given as a grade in percent, as a rise and a run, or as an angle. They are one thing said in three ways, and the one that is often mistaken is the last: a grade of 20 % is 11.3 degrees, and 20 degrees is another hill.
#
# **Predict.** A rider of 75 kg on 20 %: is the pull nearer to 75 N, 200 N or 750 N?

# %%
from liftcalc import Q, carrier_work, conveyor_work, engine_power_at_altitude, grade_from_angle
from liftcalc import grade_from_rise, groove_friction, held_force, inertia_at_the_rope, peak_riders_mass
from liftcalc import ride_work, riders_by_traction, riders_by_traction_at_start, rope_deceleration, rope_pull
from liftcalc import rope_weight_in_hands, show, tether_pull, tether_relief
from liftcalc.panels import HandsPanel, MotorPanel, PowerPanel, SheavePanel, SheetPage, StartingPanel

for grade in (
    Q(20, "percent"),
    grade_from_rise(vertical_rise=Q(29.4, "m"), horizontal_run=Q(147, "m")),
    grade_from_angle(Q(20, "degree")),
):
    pull = rope_pull(Q(75, "kg"), grade=grade, snow_friction=Q(0.07, ""))
    print("a grade of", show(grade, "percent"), "pulls with", show(pull))

# %% [markdown]
# By hand: 75 kg × 9.81 m/s² = 736 N of weight. On 20 % the sine is 0.196 and the cosine 0.981, so the pull is 736 N × (0.196 + 0.07 × 0.981) = 195 N.
#
# Over a whole ride it gets simpler still. Every metre of rise costs m · g, every metre of map costs μ · m · g, and steep or flat parts need not be told apart: W = m · g · (rise + μ · run).

# %%
print("one ride of 75 kg:", show(ride_work(Q(75, "kg"), vertical_rise=Q(29.4, "m"), horizontal_run=Q(147.1, "m"), snow_friction=Q(0.07, ""))))

# %% [markdown]
# That is the rise as measured on the Penny Rope. A round 20 % over 150 m gives 194.73 N × 150 m = 29,210 J, and that is used below.

# %% [markdown]
# ## Is the motor big enough?
#
# The Penny Rope is ridden over 150 m. Of the motor's power 0.85 reaches the rope, the empty rope drags with 500 N, and riders speed up by 1.5 m/s² when they take hold.
#
# **Predict.** Of each kilowatt that the Penny Rope's motor gives at 1,200 people an hour, how much goes into lifting riders: nearly all, half, a tenth?

# %% [markdown]
# **A lift of your own.** Bring its sheet by the button: the panels on motor, hands and sheave then speak of it. What stands "by hand" between the panels stays with the Penny Rope.

# %% [markdown] lab-only
# Or name the sheet in the next cell and run all cells.

# %% no-output
# YOUR SHEET: change the path between the quotation marks
my_sheet = "../data/hill/1_penny_rope.csv"

# %% folded
page = SheetPage(my_sheet)
page.button()

# %% [markdown]
# The panel begins with as many people an hour as the other limits of the lift let through.

# %% folded
power = page.lift_panel(PowerPanel)
power

# %% [markdown]
# The bars are the parts, the last one is all of them, and the dashed line is what the motor is rated for. Some is spent before anyone rides: an electrician with a power meter reads it on the running empty lift, with the operator's leave.

# %% folded
power.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. At which number of people an hour is the motor at its rating?
# 2. Wet snow brings the friction to 0.12. Bring the people wanted down until the motor is at its rating again. How many are left?
# 3. Put the friction back to 0.07 and the people wanted to 1,200. A school class of 40 kg a rider comes. How much does the motor have to spare?

# %% folded
power.around("wanted_capacity")

# %% [markdown]
# By hand, for the Penny Rope at 1,200 an hour, with its round numbers 3.4 m/s, 150 m and 20 % (the panel has the means of the sheet, a hair below):
#
# 1. A rider every 3 s, and 29,210 J each: 9.74 kW along the rope.
# 2. Bringing each up to speed, 1,617 J as worked out below: 0.54 kW.
# 3. The empty rope, 500 N × 3.4 m/s: 1.70 kW.
# 4. Together 11.98 kW at the rope; over an efficiency of 0.85 that is 14.1 kW at the motor. Lifting alone is 7.2 kW of it: half.

# %% [markdown]
# ## The simple law, and what spoils it
#
# Leave out the empty rope and the pick-up. Then each rider costs the same energy at any speed, and the motor's limit is C = 3,600 · η · P ÷ W, with C the people an hour, W the work of one ride, and η the part of the motor's power P that reaches the rope. Line speed is not in it. A faster rope pulls each rider for a shorter time, and that is all.
#
# **Predict.** With the empty rope and the pick-up counted, does a faster rope let the same motor carry more, as many, or fewer?

# %% folded
motor = page.lift_panel(MotorPanel)
motor

# %% [markdown]
# The dashed line is the simple law. The bold curve has everything in it, for a drive that is given another gear for each line speed, so that the motor gives its full power at all of them. A usual variable-speed drive is another thing: below a certain speed, its base speed, the motor keeps its turning force, the torque, and loses power in step with speed. That is the dotted curve, and on it a slower rope carries fewer.

# %% folded
motor.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the rider's mass back to 75 kg; the panels of a page move together. At 3.4 m/s, what do the empty rope and the pick-up cost in people an hour?
# 2. Halve the line speed. What does each of the three laws say?
# 3. "Run it slower, then it can carry more." On which of the two drives is that so, and by how much?

# %% folded
motor.around("line_speed")

# %% [markdown]
# By hand, for the Penny Rope, the simple law: 3,600 s × 0.85 × 15,000 W ÷ 29,210 J = 1,571 pph. With all parts: 3,600 s × (12,750 W − 500 N × 3.4 m/s) ÷ 30,827 J = 1,290 pph. The pick-up is m · v² + F · v² ÷ (2 · a): 867 J to bring the rider up to speed, of which half warms the gloves, and 750 J of pull on rope that slips by meanwhile.

# %% [markdown]
# ## Chairs, belts and tethers
#
# Snow friction is for skis on snow. A chair lifts its riders and drags a few per cent of their weight through its sheaves; empty chairs going up balance empty chairs going down. A conveyor drags belt and rider over a bed. A platter's tether pulls upwards as well, and takes some weight off the skis. What the rope, the motor and the grip of the sheave feel of it is its part along the rope, T · cos θ, with T the pull in the tether and θ its angle to the slope.

# %%
path = {"vertical_rise": Q(142, "m"), "horizontal_run": Q(624, "m")}
print("on a chair:", show(carrier_work(Q(80, "kg"), **path, sheave_drag_share=Q(3, "percent"))))
print("same slope on skis:", show(ride_work(Q(80, "kg"), **path, snow_friction=Q(0.07, ""))))
belt = {"vertical_rise": Q(8, "m"), "horizontal_run": Q(79.6, "m")}
print("on the belt:", show(conveyor_work(Q(60, "kg"), **belt, bed_friction=Q(0.3, ""))))
tether = tether_pull(Q(195, "N"), tether_angle=Q(30, "degree"), snow_friction=Q(0.07, ""))
print("in a tether at 30 degrees, for a pull of 195 N:", show(tether))
print("of it along the rope:", show(Q(195, "N") * tether_relief(Q(30, "degree"), Q(0.07, "")), "N"))

# %% [markdown]
# ## An engine on a mountain
#
# Some tows run on an engine. One that breathes without a charger gives less in thin air, about in proportion to the air's density. That is common practice and no published rule; its plate or its manual says it better.
#
# **Predict.** Fifteen kilowatts at the sea: how many are left at 2,000 m?

# %%
print(show(engine_power_at_altitude(Q(15, "kW"), Q(2000, "m"))), "are left")

# %% [markdown]
# The air up there has 0.82 of its density at the sea, and 15 kW × 0.82 = 12.3 kW. An electric motor keeps its power, but cools worse; the maker says from which height that counts.

# %% [markdown]
# ## Kids and adults
#
# The mean mass sets the energy, counted by rider: half at 40 kg and half at 80 kg cost the motor what 60 kg each would. A moment can be worse. If riders come in no order of mass, about one full line in forty is heavier than N · m · (1 + 2 · c ÷ √N), where c is the spread of the masses over their mean.
#
# **Predict.** Twenty-two riders of 60 kg, give or take a third. How much heavier than the mean is a heavy moment: 5 %, 15 %, 65 %?

# %%
mean, heavy = Q(22 * 60, "kg"), peak_riders_mass(Q(22, "person"), Q(60, "kg"), Q(1 / 3, ""))
print(show(mean), "on average,", show(heavy), "at a heavy moment:", show((heavy / mean - 1).to("percent")), "more")

# %% [markdown]
# ## The grip of a hand
#
# On a rope without handles the hand is the coupling. It holds the pull, and during the pick-up m · a on top. To hold that along the rope, the fingers squeeze from two sides: force over twice the friction of glove on rope.
#
# **Predict.** Who gives out first on a long tow: an adult of 90 kg, or a child of 30 kg with the same gloves?

# %% folded
hands = page.lift_panel(HandsPanel)
hands

# %% [markdown]
# The child holds 78 N, the adult 234 N; but a small hand has less to hold with, and no figure here says which tires first. Two more things bear on light riders: a rope that rises over a dip lifts them off the snow, and the rope's own weight lies in their hands.

# %% folded
hands.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. A wet rope: bring the glove friction to 0.2. What has happened to the squeeze?
# 2. Put the glove friction back to 0.4 and raise the pick-up to 3 m/s². How many times as hard as the ride is the start now?
# 3. Which two sliders are in a rider's own hands, and which two are not? What does a rider do who still cannot hold on?

# %% folded
hands.around("glove_friction", [Q(0.2, ""), Q(0.4, ""), Q(0.6, "")])

# %% [markdown]
# By hand: 194.7 N ÷ (2 × 0.40) = 243 N of squeeze, held for the 45 s of the ride. A rider who cannot hold it lets go and clears the track.

# %%
print("an adult of 80 kg holds", show(held_force(Q(80, "kg"), grade=Q(20, "percent"), snow_friction=Q(0.07, ""))))
for rope, mass in (("dry", Q(0.6, "kg/m")), ("wet", Q(0.8, "kg/m"))):
    print("of", rope, "rope in the hands:", show(rope_weight_in_hands(mass, Q(6.8, "m"))))

# %% [markdown]
# ## The grip of the sheave
#
# The drive sheave is the wheel that the motor turns. The rope comes to it tight, leaves it slack, and is pulled by friction alone. The two sides differ in tension by what riders and rope ask for, and the rope holds as long as the ratio of the two stays below e^(μ · β), where μ is the friction of the sheave's lining and β the wrap: the angle, in radians, over which the rope lies on the sheave. So it is the slack side that decides, and there it matters where the drive stands. Here the counterweight draws the sheave without a drive; a weight at the drive itself is another sum, and the maker's. With the drive at the top, riders hang on the tight side and the slack one stays as it is. With the drive at the bottom, each rider makes the slack side slacker.
#
# **Predict.** Twice the wrap: twice the riders, fewer than that, or more?

# %% folded
sheave = page.lift_panel(SheavePanel)
sheave

# %% [markdown]
# For the Penny Rope: The rope is to hold 1.25 times over. This safety factor is invented for this page and no rule. The code and the maker give the real one.
#
# The counterweight that the slider begins with is invented. On your own lift, without a reading of the tension, there is no number; it is not zero and not endless: the limit is left out, and that is said. Counterweight, lining and wrap are the maker's.

# %% folded
sheave.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Ice brings the friction of the lining to 0.12. How many riders are left of the 20?
# 2. Put the lining friction back to 0.25. Which drive gains more from more wrap, and why does the other one level off?
# 3. Put the wrap back to 180 degrees and raise the grade to 30 %. The slack side at the top gains, and yet the rope holds fewer riders. What has grown more?

# %% folded
sheave.around("lining_friction", [Q(0.12, ""), Q(0.25, ""), Q(0.35, "")])

# %% [markdown]
# By hand, for the Penny Rope with its drive at the top: e^(0.25 × 3.1416) = 2.1933; to hold 1.25 times over, only 2.1933 ÷ 1.25 = 1.7546 is used. The slack side is 12,000 N ÷ 2 + 0.6 kg/m × 9.81 m/s² × 29.4 m − 250 N = 5,923 N; the 250 N is half of the empty rope's drag. The rope passes on 5,923 N × 0.7546 = 4,469 N; less 500 N for itself, over 194.7 N a rider: 20.4 riders. Picking riders up asks for a little more, and is left out here.
#
# So far the rope runs steadily, and its sheave has a flat rim. A start with riders on asks for more, and takes from the slack side as well: half of what speeds up rope and carriers comes off it. A groove helps: the rope lies wedged between its two sides, which press harder than a flat rim. Two to three times the friction of the lining is common practice, no published source. A rope that lies on the ground of its groove is not wedged. The shape of the groove is a reading, asked of the operator.
#
# **Predict.** Say this drive, at the top, pulled outfits that riders stay on, and were started in 6 s with its riders on, 400 kg of rope and sheaves with them. How many of the 20 can it start?

# %%
grip = {"slack_tension": Q(5923, "N"), "pull": Q(194.73, "N"), "idle_drag": Q(500, "N")}
grip |= {"wrap_angle": Q(180, "degree"), "grip_safety_factor": Q(1.25, "")}
at_start = {"starting_acceleration": Q(3.4 / 6, "m/s**2"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}
flat, wedged = Q(0.25, ""), groove_friction(Q(0.25, ""), Q(60, "degree"))
print("drive at the top, flat rim, steady run:", show(riders_by_traction(lining_friction=flat, **grip)))
print("flat rim, start in 6 s:", show(riders_by_traction_at_start(lining_friction=flat, **grip, **at_start)))
print("groove of 60 degrees, a friction of", show(wedged), "and steady:", show(riders_by_traction(lining_friction=wedged, **grip)))

# %% [markdown]
# By hand, the start: 3.4 m/s ÷ 6 s = 0.567 m/s². Rope and sheaves take 400 kg × 0.567 m/s² = 227 N, half of it, 113 N, from either side: 4,469 N − 500 N − 113 N × 2.7546 = 3,657 N. Each rider takes 194.7 N + 75 kg × 0.567 m/s² = 237.2 N: 15.4 riders. A rope that slips on its sheave wears both: stop, and report it.

# %% [markdown]
# ## Why a full line starts gently
#
# Riders of a rope tow let go when it stops, and it is started empty; some codes still ask for a motor that could start it full, such as 34 Pa. Code s. 7.485. A platter lift, a T-bar or a chair may have to start with people on it. Whether it may, and who looks at the track first, the operator's rules and the maker's manual say. If it does, riders, rope and carriers must all be brought up to speed.
#
# **Predict.** The Long Platter's motor just manages a full line at 2.8 m/s. Can it start one?

# %% folded
start = StartingPanel(motor_power=Q(15, "kW"))
start

# %% folded
start.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the grade back to 20 % and the mass to 75 kg. Start in 2 s. What share of the rated force is asked for, and which grip of the last section must pass on all of it but the drive's own part?
# 2. From which starting time on is it less than 5,000 N?
# 3. There is no slider for snow here. Wet snow with a friction of 0.12 pulls on 20 % about as hard as dry snow does on 25 %. Raise the grade to 25 %: what does it take to keep the line going, and what is the motor rated for?

# %% folded
start.at_settings("starting_time", [Q(2, "s"), Q(8, "s"), Q(16, "s")])

# %% [markdown]
# By hand, on 20 % (the slider stands at the 19.99 % of the Penny Rope, which makes 2 N less): through tethers at 30 degrees the rope feels 194.73 N ÷ 1.0404 = 187.17 N of each rider, and 75 kg ÷ 1.0404 = 72.1 kg. 400 m ÷ 19.6 m = 20.41 riders stand on it (in the run it is 20.5, with the start from rest), times 187.17 N, and 400 N for the empty rope: 4,220 N. The motor is rated for 0.85 × 15,000 W ÷ 2.8 m/s = 4,554 N. For 8 s, speeding up takes 0.35 m/s² times (20.41 × 72.1 kg + 1,100 kg + 300 kg), another 1,005 N: 5,225 N, 115 % of the rating. Within its rating it could start the line only over some 24 s; whether it may give more for a while, the maker says. A gentle start asks less of motor, rope, sheave and riders alike.
#
# The 300 kg are the drive itself. A small rotor turns fast, and what turns counts at the rope with its inertia, times the square of its gears, over the square of the sheave's radius. The motor must start it; the rope need not pass it on.

# %%
print("a rotor at the rope:", show(inertia_at_the_rope(Q(0.1, "kg*m**2"), Q(0.8, "m"), Q(43.4, ""))))

# %% [markdown]
# By hand: 0.1 kg m² × 43.4² ÷ (0.8 m)² = 294 kg, for 43.4 turns of the rotor to one of the sheave. That is common practice for a motor of 15 kW, no published source; the maker's papers have yours.
#
# The same sum backwards says how soon a rope comes to rest once the drive lets go of it, here with 400 kg of rope and sheaves, empty and with 22 riders who hold on. A drive that turns on with its sheave adds its own mass, and the rope runs further.

# %%
from liftcalc import brake_force_where_riders_make_no_difference

rope = {"pull": Q(194.73, "N"), "idle_drag": Q(500, "N"), "rider_mass": Q(75, "kg"), "moving_mass": Q(400, "kg")}
for brake in (Q(0, "N"), Q(2000, "N")):
    slowing = rope_deceleration(Q([0, 22], "person"), brake_force=brake, **rope)
    print("with a brake of", show(brake), "it slows by", show(slowing[0]), "empty and by", show(slowing[1]), "with riders")
print("no difference at a brake of", show(brake_force_where_riders_make_no_difference(**rope)))

# %% [markdown]
# Without a brake the riders help to stop it, and the empty rope runs further. With a strong one they run up on the rope and push it on, and the full line runs further: a rider alone slows by 194.73 N ÷ 75 kg = 2.60 m/s², and that is where the two change places. So a stop tried without riders proves nothing about a full line; the maker's manual says with what load to try. [02 Spacing](02_spacing.ipynb) has it in metres.
#
# All this is how soon a rope stops, not what holds it: a full line at rest on a slope would run backwards, and the brake or backstop that holds it is the maker's.

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
# ### Exercise 8.1

# %% folded
AnswerBox("8.1")

# %% [markdown]
# ### Exercise 8.2

# %% folded
AnswerBox("8.2")

# %% [markdown]
# ### Exercise 8.3

# %% folded
AnswerBox("8.3")

# %% [markdown]
# ### Exercise 8.4

# %% folded
AnswerBox("8.4")

# %% [markdown]
# ### Exercise 8.5

# %% folded
AnswerBox("8.5")

# %% [markdown]
# ### Exercise 8.6

# %% folded
AnswerBox("8.6")

# %% [markdown]
# ### Exercise 8.7

# %% folded
AnswerBox("8.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("08")

# %% [markdown]
# ## In short
#
# - A ride costs m · g · (rise + μ · run); the motor's limit is the power left for riders over the energy of one.
# - Speed drops out only of the simple law. With an empty rope to drag, faster is fewer; at constant torque, slower is fewer.
# - A bigger motor helps neither the rope on its sheave nor the hand on the rope.
#
# **Formula card.** F = m · g · (sin α + μ · cos α); E = F · L + m · v² + F · v² ÷ (2 · a); C = 3,600 · (η · P − F₀ · v) ÷ E; N = (T₂ · (r − 1) − F₀) ÷ F with r = e^(μ · β) ÷ S, drive at the top; at a start N = (T₂ · (r − 1) − F₀ − ½ · M · a · (1 + r)) ÷ (F + m · a); a drive at the bottom divides either by r as well. Force to start: N · F + F₀ + (N · m + M + D) · a. Here E is the energy of one rider, F₀ the drag of the empty rope, N the riders on the line, T₂ the tension of the slack side of the empty line, running steadily, S how many times over the rope must hold, M the mass of rope, carriers and sheaves, D that of the drive at the rope, which the rope's grip need not pass on, a how hard riders, or the line, speed up.

# %% [markdown]
# ## Where to next
#
# [09 What limits the lift](09_what_limits_the_lift.ipynb): motor, spacing, loading and unload area on one chart.
