# %% [markdown]
# # What can your lift carry, and how sure is that?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# You were on the hill with a tape, a stopwatch and a phone, and now there is a heap: a sheet with a wet corner, a count with a gap, a track with a hole in it. Is one of the readings wrong? What holds the lift down? Did people really get through as the sum says? This page takes the heap as it is. It holds the readings against one another, says what governs and how surely, puts the count beside it, and ends with one page to pin to the wall.

# %% [markdown]
# ## Before you start
#
# **You will be able to** bring all that you read of one lift; see which readings agree; say which limit governs, and how surely; hold a count against it; name the reading to take next; print the page for the wall.
#
# **You need first** [00 Start here](00_start_here.ipynb), for the sheet. Each part names the page that explains it.
#
# **About 30 minutes.**

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
# While you count:
#
# - A stop is there for whoever has fallen. It is never a loss to argue away, and nobody is asked to stop less.
# - An attendant on duty watches people and does not count. Somebody else counts, from outside the track and the unload area.
# - People an hour is no contest. A figure that goes up because starts are hurried is bought with falls.
#
# This series teaches planning figures. Nothing here is a design, a permit or an instruction to change a lift. The local code, the authority having jurisdiction, the maker's manual and licensed people decide.

# %% [markdown]
# ## Your files
#
# Only the sheet is needed, and even that may lack rows. Each other file tells something more. What lacks makes the result smaller, and the page says what it would give.
#
# - the **sheet** of the lift, as on [00 Start here](00_start_here.ipynb): `quantity, value, unit, plus_minus, method, note`
# - a **count** at the top, as on [10](10_counted_and_ideal.ipynb): `from, minutes, persons, stop_seconds, people_waited, note`
# - a **track** of a ride, GPX from a phone; **laps**, `lap, seconds, note`; a **map line**, KML or GeoJSON, drawn from grab to let-go. All three as on [05](05_measuring_on_the_hill.ipynb)
# - **riders**, `class, share, mean_readiness, cv, misses, falls` or `party, share`, and the **rest of the day**, which has the columns of a sheet and rows such as hours open. Both as on [10](10_counted_and_ideal.ipynb)
# - the sheet of a **second lift**, to compare
#
# Names of files do not matter: each is told by what is in it. Each is judged by itself, so a bad one spoils no other. The newer one of its kind takes the place of the older.

# %% [markdown] lab-only
# Put all of it into one folder, name that folder in the next cell, and run all cells. Or take the button: it takes all files at once, or one after another.

# %% [markdown] app-only
# The button takes all files at once, or one after another.

# %% no-output
# YOUR LIFT: change the folder between the quotation marks
my_files = "../data/own_lift"

# %%
from liftcalc import Q
from liftcalc.panels import AgreementOfFiles, CountedMinutes, LimitsAndCount, LimitsPanel
from liftcalc.panels import NumberPrediction, YourLiftPage
from liftcalc.simulation import lift_words as words

page = YourLiftPage(my_files)
page.button()

# %% [markdown]
# ### What came

# %% folded
page.about_example("The example: the Long Platter of the invented Owlpenny Hill, as two volunteers brought it. Semicolons and decimal commas, feet among the metres, repeats that scatter, a row left empty, a ride on which the lift stood.")

# %%
page.show(words.what_came)

# %% [markdown]
# What asks for a second look? Nothing of it is mended here: you know what happened, the page does not.

# %%
page.show(words.worth_a_look)

# %% [markdown]
# ## Do the readings agree?
#
# One quantity read in two ways is worth more than one read twice in the same way. A pole distance that is wrong is wrong each time. The **line speed** comes from the sheet, from the track, and from the laps with the length. Each has its plus-minus, and the bars should overlap.

# %% folded
page.picture(lambda read: AgreementOfFiles(words.speeds(read)))

# %% [markdown]
# The **ridden length** moves no people an hour: it sets the ride time and the riders on the line, and what the motor has to do for each. Three ways are the tape, the track and the map line.

# %% folded
page.picture(lambda read: AgreementOfFiles(words.lengths(read)))

# %% folded
page.about_example("On the Long Platter the map line is the odd one, and nobody was careless: it was drawn from sheave to sheave, and nobody rides that far. Whoever had taken its length for the ride would have a ride time 6 s too long.")

# %% [markdown]
# ## What governs, and how surely?
#
# The guess comes first, also for a lift that you have known for years.

# %% folded
bars = page.picture(LimitsAndCount)
NumberPrediction(
    "How many people an hour does this lift carry at most, by the smallest of its limits?",
    right=lambda: words.at_most(page.value).value,
    reasons={
        "lower": "You may have thought of a count: stops, misses and empty places are in that, and in no limit.",
        "near": "How sure that is, the line on its bar says: in 95 of 100 draws within the doubts it lies there.",
        "higher": "You may have thought of what stands in the papers, or of the best minutes of a good day.",
    },
    most=Q(8000, "pph"),
    opens=bars,
)

# %% [markdown]
# Each limit is computed from the readings as on [09 What limits the lift](09_what_limits_the_lift.ipynb), and drawn many times within their doubts. Where two lines overlap, either may govern, and the table says in how many of 100 draws each does. A limit without its readings is left out, and could be lower than all others. Rope, brake, towers and the time of an evacuation cap a lift too, and are no part of it.

# %%
page.show(words.limits)

# %% [markdown]
# ### What would help
#
# A limit that does not govern can be doubled and nobody more gets up. Try it: the sliders stand at your readings, and the second lift has a button of its own. Moving a slider is free. Changing a speed, a spacing or a motor on a hill is ropeway engineering.

# %% folded
limits_panel = page.panel(LimitsPanel)
limits_panel

# %% folded
limits_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Which slider alone lifts the bold line at the dot? That one belongs to what governs.
# 2. Move it as far as it helps. Which limit stops it, and how many people an hour later?
# 3. Bring the motor to three quarters of what it has. Which limit governs then, and how many fewer get up?

# %% folded
limits_panel.around("motor_power")

# %% [markdown]
# The answers to 1 and 2, in short: what a tenth more or less of each reading would do on paper, and where it ends.

# %% folded
from liftcalc.pages.brief import next_reading, shown_brief, what_would_help

page.show(what_would_help)

# %% folded
page.about_example("On the Long Platter closer platters carry 39 pph more on paper, and then the motor has no more to give. Each rider would have less time to load, and the next one would be nearer to whoever falls. That is a change for the maker and the authority, and may be refused.")

# %% [markdown]
# ## What a working day makes of it
#
# Misloads, stops and slow-downs come off one after another, in a fixed order. This needs the table of riders and the rest of the day; both are your estimates, so what comes out is as good as they are.

# %%
from liftcalc.simulation.day_words import day_against_sheet, losses_table

page.show(lambda read: losses_table(read.day))

# %% folded
page.show(lambda read: day_against_sheet(read.day_read.line, read.day_read.readings, read.day_read.tables))

# %% [markdown]
# ## Did people really get through?
#
# A limit is one of the running lift, so it is held against **clean** minutes, those that no stop has touched. The rate by the clock is what guests get. Without a line of people waiting, a count tells who came and not what the lift can do.

# %% folded
page.picture(CountedMinutes)

# %% [markdown]
# Was that long enough, and did people wait?

# %%
page.show(words.how_to_count)

# %% folded
page.about_example("The Long Platter: 463 pph counted in clean minutes, below the 514 pph that spacing allows by more than the doubt of the count. One platter in ten went up empty. The count does not tell why; the rest of the day, where 7 % of the attempts miss, has most of it.")

# %% [markdown]
# ## Beside a second lift
#
# "The rope carries twice as many" is said quickly, and often a count of one lift is put beside the papers of the other. Only figures of one level stand in one row here.

# %%
page.show(words.like_with_like)

# %% [markdown]
# ## What it comes to

# %%
page.show(words.comes_to)

# %% [markdown]
# ### Which reading to take next
#
# The limit that governs rests on a few readings, and mostly one of them makes most of its doubt. To measure another one better changes next to nothing.

# %%
page.show(next_reading)

# %% [markdown]
# ## The page for the wall
#
# One sheet of paper, black and white, for the room where the attendants sit: at most so many an hour and why, the count beside it, what would help and what would not, the cautions. What is assumed is called so. Print it, fill in the boxes for the local code and for who may change this, and let somebody sign it.

# %% folded
page.show(shown_brief)

# %% [markdown]
# ## In short
#
# - Two ways to one reading find a fault that ten repeats of one way do not.
# - The smallest limit governs, and is an upper bound with a doubt; name the next one too, if it is close.
# - Hold clean minutes against a limit, tell guests the rate by the clock, and compare like with like.
#
# **Formula card.** At most C = min(3,600 · n · v ÷ s, 3,600 · n · K ÷ t at loading, motor, traction, 3,600 · n · K ÷ t at unload), with K places and t the time at each; counted 3,600 · N ÷ T, good to 1.96 × c ÷ √N; two readings agree where their difference is within √(U₁² + U₂²).

# %% [markdown]
# ## Where to next
#
# Back to the hill, with the reading to take next. [10 Counted and ideal](10_counted_and_ideal.ipynb) says how long to count; [05 Measuring on the hill](05_measuring_on_the_hill.ipynb) how to read each thing; [12 Cost per ride](12_cost_per_ride.ipynb) what it costs.
