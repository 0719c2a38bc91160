# %% [markdown]
# # How sure are we?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# "Eighteen hundred an hour," says one. "Never, it is sixteen hundred," says the other. Both may have read the same tape. A number from the hill has a plus-minus whether or not anyone writes it down, and until it is written nobody can say whether two numbers differ. This page gives each reading its doubt, carries the doubts to the people an hour, and says which reading to take again; seldom is it the one you would have guessed.

# %% [markdown]
# ## Before you start
#
# **You will be able to** turn repeats, a plus-minus and a display into one kind of doubt; carry doubts through a formula; read a budget and name the reading to take again; tell methods that agree from methods that only seem to.
#
# **You need first** [04 Hourly capacity](04_hourly_capacity.ipynb) and [05 Measuring on the hill](05_measuring_on_the_hill.ipynb).
#
# **About 40 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. The cautions for measuring stand in [00 Start here](00_start_here.ipynb). Taking a reading again is no reason to step nearer: read from outside the path of the riders, or on the lift stopped and locked out, always with the operator's permission. A phone records its track in a closed pocket.

# %% [markdown]
# ## One reading, one doubt
#
# A doubt is written as a **standard uncertainty**: how far the value may be off as a rule, in the sense of a standard deviation. It comes by two ways.
#
# - **Type A, from repeats.** Read it five times; the scatter speaks. The mean of n readings is surer than one by the root of n.
# - **Type B, from what you know.** A plus-minus that is never passed is a half-width: divide it by the root of 3. A display shows steps: divide one step by the root of 12.
#
# **Predict.** Five spacings off one photo: 6.8, 7.1, 6.5, 6.9 and 6.7 m. Is their mean good to half a metre, to a decimetre, or to a centimetre?

# %%
from liftcalc import Q, hourly_capacity, show
from liftcalc.uncertainty import estimate_from_half_width, estimate_from_repeats, estimate_from_resolution

spacing = estimate_from_repeats(Q([6.8, 7.1, 6.5, 6.9, 6.7], "m"), "photo")
print(spacing)
print(estimate_from_half_width(Q(3.4, "m/s"), Q(0.1, "m/s"), "mark on the rope, timed"))
print(estimate_from_resolution(Q(8, "mph"), Q(1, "mph"), "display of a phone"))

# %% [markdown]
# By hand for the photo: the five lie 0.00, 0.30, 0.30, 0.10 and 0.10 m from their mean of 6.80 m. The squares add up to 0.20 m²; over 5 − 1 that is 0.05 m², its root is 0.22 m, and over the root of 5 it is 0.10 m: a decimetre. The gaps of one photo tell how evenly people stood in that photo. Another Saturday may differ by more.

# %% [markdown]
# ## Standard, expanded, and what to say aloud
#
# One standard uncertainty covers about two in three. Nobody on a hill means that by plus-minus, so it is multiplied by a **coverage factor**: 1.96 where the doubt is well known, more where it comes from few repeats. Then it covers 95 of 100, and is called **expanded**.
#
# **Predict.** Five readings know little of their own scatter. Is their coverage factor nearer to 2 or to 3?

# %%
from liftcalc.uncertainty import expand

print("mean of the spacings:", expand(spacing))
print("shorter:", expand(spacing).short)

# %% [markdown]
# A plus-minus gets one digit, two where it begins with a 1 or a 2, and the value ends at the same place. 1,800.0 ± 155.1 pph is false precision; 1,800 ± 160 pph is what you know.

# %% [markdown]
# ## From the readings to people an hour
#
# People an hour are speed over spacing. One percent more speed is one percent more people; one percent more spacing is one percent fewer. Independent doubts go together like the short sides of a right angle: squares are added, then the root is taken. That is **first order**.
#
# The other way asks for no rule at all. Draw a speed and a spacing at random within their doubts, compute, and do so 20,000 times. That is **sampling**.
#
# **Predict.** Speed is known to 3 %, spacing to 7 %, as half-widths. Is the plus-minus of people an hour about 10 %, 9 %, or 4 %?

# %% folded
from liftcalc.panels import AgreementPanel, BudgetPanel, SpreadPanel

spread = SpreadPanel(speed_doubt=Q(3, "percent"), spacing_doubt=Q(7, "percent"))
spread

# %% [markdown]
# The bars are the draws. The dashed bell is the first order with the same middle. While the doubts are small the two say nearly the same. They part when the spacing's doubt grows: people an hour go as one over the spacing, so a spacing that is too small by a third adds far more people than one too large by a third takes away. The bars lean, and the bell cannot.

# %% folded
spread.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the doubt of the spacing to 35 %. How far does each end of the 95 % lie from 1,800?
# 2. Bring the spacing's doubt to 1 %. How does the shape of the bars change, and why is it flat now?
# 3. Bring both to 20 %. Which end of the 95 % lies further from the middle?

# %% folded
spread.at_settings("spacing_doubt", [Q(3, "percent"), Q(7, "percent"), Q(35, "percent")])

# %% [markdown]
# By hand, at 3 % and 7 %:
#
# 1. Standard uncertainties: 3 % ÷ 1.732 = 1.73 %, and 7 % ÷ 1.732 = 4.04 %.
# 2. Together: √(1.73² + 4.04²) = 4.40 %, of 1,800 pph that is 79 pph.
# 3. Expanded: 1.96 × 79 pph = 155 pph, so 1,800 ± 160 pph: about 9 %.

# %%
from liftcalc.uncertainty import by_first_order, by_sampling

readings = {
    "line_speed": estimate_from_half_width(Q(3.4, "m/s"), 0.03 * Q(3.4, "m/s")),
    "spacing": estimate_from_half_width(Q(6.8, "m"), 0.07 * Q(6.8, "m")),
}
print("ideal, by first order:", expand(by_first_order(hourly_capacity, readings)))
print("ideal, by sampling:", by_sampling(hourly_capacity, readings, seed=2026).write("interval"))

# %% [markdown]
# ## The budget: which reading to take again
#
# Doubts go in by their squares, so the largest one that counts makes nearly all of the result's doubt. A **budget** lists the shares. Time on the hill is short and cold; spend it where the share is.
#
# **Predict.** You have ten minutes for one more reading: a better length, a better speed, or a better spacing?

# %% folded
budget = BudgetPanel(speed_doubt=Q(3, "percent"), spacing_doubt=Q(7, "percent"), length_doubt=Q(1, "percent"))
budget

# %% [markdown]
# The ridden length has no share, however poorly it is known: it is not in the formula. It sets riders on the line and ride time, and there its doubt comes back.

# %% folded
budget.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Put the speed back to 3 % and the spacing to 7 %; the panels of a page move together. Raise the length's doubt to 40 %. What happens to people an hour?
# 2. At which doubt of the speed do speed and spacing share alike?
# 3. Put the speed back to 3 %. Speed measured twice as well hardly helps. Why not?

# %% folded
budget.at_settings("speed_doubt", [Q(1, "percent"), Q(3, "percent"), Q(7, "percent")])

# %% [markdown]
# The whole budget as a table. Read the last column: it says what you gain.

# %% folded
from liftcalc.uncertainty import uncertainty_budget

length = estimate_from_half_width(Q(150, "m"), Q(1, "m"), "tape")
uncertainty_budget(hourly_capacity, readings, also={"ridden_length": length}).table()

# %% [markdown]
# ## Methods that agree, and methods that only seem to
#
# Three methods give one line speed: a mark on the rope timed between two poles, 3.40 m/s with a half-width of 0.10; the display of a phone; the steady part of a longer track than that of page 05, with an expanded doubt of 0.06 m/s. Display and track come from two different phones here; from one phone they would share their errors. Each is weighted by one over the square of its doubt. Then comes the question that a plain mean never asks: do they scatter more than their own doubts allow?
#
# The **Birge ratio** answers. Near 1 or below: they agree. Well above: somebody is wrong, or somebody's plus-minus is too small.
#
# **Predict.** A phone shows 3.6 m/s in steps of 0.45. The mark says 3.40. Do they agree? And is 3.40 now confirmed?

# %% folded
agreement = AgreementPanel(display_speed=Q(3.6, "m/s"), display_step=Q(0.45, "m/s"), track_speed=Q(3.38, "m/s"))
agreement

# %% [markdown]
# A coarse display agrees with almost anything: that is its doubt, not its merit. Its weight in the mean is small, and so it should be. When methods disagree, the doubt of the mean is widened here, and the sentence above the chart says who stands out. Widening mends nothing. The mend is to find the cause: a pole distance paced instead of taped, a track that still holds the run-up, a rider whose hands slip.

# %% folded
agreement.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Make the step of the display 0.05 m/s and leave what it shows. What do the three say now, and who is pointed at?
# 2. Leave the step at 0.05 m/s. Can you make all three agree by moving the track's speed alone? Which two stand in the way, and what would you go and check?
# 3. Put the track back to 3.38 m/s and the step to 1.5 m/s. From which display speed on does the verdict change?

# %% folded
agreement.at_settings("display_step", [Q(0.05, "m/s"), Q(0.45, "m/s"), Q(1.5, "m/s")])

# %% [markdown]
# By hand: the phone's standard uncertainty is 0.45 m/s ÷ √12 = 0.13 m/s, the mark's 0.10 m/s ÷ √3 = 0.06 m/s. The two differ by 0.20 m/s, and √(0.13² + 0.06²) = 0.14 m/s is what their doubts allow for as a rule. 0.20 over 0.14 is 1.4: no disagreement, and no proof of anything.

# %% [markdown]
# ## Doubts with a common cause
#
# Squares are added only where doubts know nothing of each other. Two spans measured with one stretched tape both read too short: their doubts are added as they stand. And sometimes a common cause helps: where speed and spacing were both read against the same pole distance, an error of that distance goes into both, and leaves their ratio as it is.
#
# **Predict.** Speed and spacing are each known to 5 %, as one standard uncertainty, and nearly all of it comes from one badly paced pole distance: the correlation is 0.9. How well are people an hour known?

# %%
from liftcalc.uncertainty import Estimate

common_cause = {
    "line_speed": Estimate(Q(3.4, "m/s"), Q(0.17, "m/s")),
    "spacing": Estimate(Q(6.8, "m"), Q(0.34, "m")),
}
for correlation in (0.0, 0.9):
    matrix = [[1, correlation], [correlation, 1]]
    print(f"ideal, at a correlation of {correlation}:", expand(by_first_order(hourly_capacity, common_cause, matrix)).short)

# %% [markdown]
# From 250 down to 80: an error of the pole distance leaves riders a second as they are. Were it the only error, nothing would be left of the doubt. The speed alone is as uncertain as before, and so is the ride time.

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
# ### Exercise 6.1

# %% folded
AnswerBox("6.1")

# %% [markdown]
# ### Exercise 6.2

# %% folded
AnswerBox("6.2")

# %% [markdown]
# ### Exercise 6.3

# %% folded
AnswerBox("6.3")

# %% [markdown]
# ### Exercise 6.4

# %% folded
AnswerBox("6.4")

# %% [markdown]
# ### Exercise 6.5

# %% folded
AnswerBox("6.5")

# %% [markdown]
# ### Exercise 6.6

# %% folded
AnswerBox("6.6")

# %% [markdown]
# ### Exercise 6.7

# %% folded
AnswerBox("6.7")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("06")

# %% [markdown]
# ## In short
#
# - Every reading has a doubt; write it as one standard uncertainty, say it as an expanded one.
# - Squares add where doubts are independent. The largest that counts makes nearly all: take that reading again.
# - Agreement of a coarse method proves little. Disagreement is never averaged away: find its cause.
#
# **Formula card.** u = scatter ÷ √n; u = half-width ÷ √3; u = step ÷ √12; for people an hour (u ÷ C)² = (u of v ÷ v)² + (u of s ÷ s)²; U = k · u, with k about 2 for 95 %, more after few repeats.

# %% [markdown]
# ## Where to next
#
# Back to [00 Start here](00_start_here.ipynb) with your own sheet, and write the plus-minus of each reading into its column. Then on to [07 Every kind of lift](07_every_kind_of_lift.ipynb).
