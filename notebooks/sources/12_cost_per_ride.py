# %% [markdown]
# # What does a ride cost?

# %% [markdown] lab-only
# To run this page, choose *Run*, then *Run All Cells*.

# %% [markdown]
# To move a slider, drag it, or click its number and type; by keys, Tab to it, then use the arrows.
#
# A ride on the Penny Rope costs 0.20 dollars. From the same books somebody gets 0.08, and somebody else 0.04. Whoever gets 0.08 has left out the hours of the volunteers; whoever gets 0.04 has divided by rides that nobody took. This page reckons a season of every lift of Owlpenny Hill, part by part. It says what the cost hangs on and how sure it is, sets the lifts side by side, and puts a proposal before the board.
#
# All prices here are invented. A dollar is a label for money and no currency, and a season is what a lift does in one year.

# %% [markdown]
# ## Before you start
#
# **You will be able to** reckon what a lift costs a season and a ride; show volunteers and grants in the open; say what a cost hangs on and how sure it is; compare lifts by three measures, and by two ways to share out a ticket; weigh a proposal.
#
# **You need first** [09 What limits the lift](09_what_limits_the_lift.ipynb); for the doubt of a cost [06 How sure are we](06_how_sure_are_we.ipynb).
#
# **About 45 minutes.**

# %% [markdown]
# ## Cautions
#
# **Clothes and hair wind in: tuck everything in. No tape and no mark before the lift is stopped and locked out. Never step over a rope, moving or stopped, unless it is locked out.**
#
# - Attendants stand where the code, the authority and the sight lines ask for them. Saving a post is no way to cheaper rides.
# - Inspection, maintenance and the next rope are no savings either: what is put off is paid later, and by whoever is on the lift.
#
# Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide. Prices, rates and grants are for the owner, and the books for whoever keeps them. The cautions for measuring stand in [00 Start here](00_start_here.ipynb).

# %% [markdown]
# ## A season of the Penny Rope
#
# Money goes out in two ways. The price is paid once and comes back over the life of the lift, with interest: the **capital recovery**. All else is paid in the season: staff, bills for maintenance, insurance and inspection, money laid aside for the next rope, energy, and the **demand charge**, which the meter asks for the highest peak.
#
# The Penny Rope costs 35,000 dollars and lasts 20 seasons. Two posts are staffed for 350 hours at 16 dollars. It carries 90,000 rides.
#
# Choose a statement: then the panel opens. *Show me* opens it without a guess.

# %% folded
from liftcalc import Q
from liftcalc.lifts.cost_of_lift import read_costs, yearly_cost
from liftcalc.lifts.cost_words import cost_sheets
from liftcalc.lifts.hill import read_hill
from liftcalc.panels import CostDriversPanel, CostPanel, CostParts, Decision, NumberPrediction, Prediction, Shown

hill, costs = read_hill("../data/hill"), read_costs("../data/costs.csv")
penny, platter, belt, double, twin = sheets = cost_sheets(hill, costs)
Prediction("Which is the largest part of what the Penny Rope costs a season?", {
    "The price of the lift": "35,000 dollars look large, but 20 seasons share them. With interest it is 15 %.",
    "The staff": "Two posts for 350 hours at 16 dollars are 11,200 of 18,243 dollars: 61 %.",
    "Energy and the demand charge": "Lifting people is cheap: 289 dollars, and 672 for the peak. Together 5 %.",
    "Maintenance, insurance and inspection": "2,700 dollars, 15 %: about as much as the price.",
}, right="The staff", opens=CostParts(penny), marks={"The price of the lift": "capital recovery", "The staff": "staff", "Energy and the demand charge": "demand charge", "Maintenance, insurance and inspection": "maintenance"})  # fmt: skip

# %% [markdown]
# The price is paid once, the staff every day. And what does a ride bring? A ticket of 28 dollars is good for 19 rides on average: 1.47 dollars each.

# %% folded
cost_panel = CostPanel(penny)
NumberPrediction(
    "From how many rides a season on does the Penny Rope pay for itself, if each brings 1.47 dollars? It carries 90,000.",
    right=Q(cost_panel.even.magnitude, "person/season"),
    reasons={
        "lower": "Staff, price, bills, the next rope and the meter come to 18,000 dollars before the first rider takes hold.",
        "near": "18,080 dollars come whether anybody rides or not. They are shared out at 1.47 a ride.",
        "higher": "A rope tow is cheap: one ride in seven that it carries would pay for it.",
    },
    most=Q(200_000, "person/season"),
    opens=cost_panel,
)

# %% [markdown]
# The curve falls as more rides share one season. Where it meets the level line, which is what a ride brings, lies the **break-even**. One ride more costs only its energy, 0.0018 dollars: of a running lift hardly anything changes with the rides.

# %% folded
cost_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. Bring the rides down to 45,000. Does a ride cost twice as much?
# 2. Put them back. One post more, or a price twice as high: which makes a ride dearer?
# 3. Bring the wage to nought. Which of the two curves does the dot follow now, and has the work become free?
# 4. Bring the share to nought. Why does no number of rides pay?

# %% folded
from dataclasses import replace
from liftcalc import show
from liftcalc.tables import Folded

year = yearly_cost(penny)
moved = {"rides": Q(45000, "person/season"), "posts": Q(3, ""), "price": Q(70000, "dollar"), "wage": Q(0, "dollar/hour")}
ride = {name: f"{yearly_cost(replace(penny, **{name: value})).per_ride.magnitude:.2f}" for name, value in moved.items()}
Folded(
    "Answers",
    f"1. Very nearly: {ride['rides']} dollars, from {year.per_ride.magnitude:.2f}. Only the energy goes down with the rides.",
    f"2. The post: {ride['posts']} dollars a ride. With twice the price it is {ride['price']}.",
    f"3. The lower one: {ride['wage']}. The work is done all the same; somebody gives {show(year.parts['staff'])}.",
    f"4. A ride brings less than its own energy, {show(year.variable_per_ride)}: each ride more is a loss more.",
)

# %% folded
cost_panel.at_settings("rides", [Q(30000, "person/season"), Q(90000, "person/season"), Q(150000, "person/season")])

# %% [markdown]
# ## Part by part, for every lift
#
# The same for the other lifts, from a table of their prices. The rides are those carried. Twin Penny is a proposal: its 38,280 are the rides more than today on both ropes, and by its share it would carry some 45,300 (simulated). The energy of a ride follows from the readings of each lift.

# %%
from liftcalc.lifts.cost_words import cost_table, divided_table

cost_table(sheets)

# %% [markdown]
# Staff governs the rope tow, capital all that is dearer to buy: 61 % of the Penny Rope stands beside it in boots, 54 % of the Lantern Double is its price. The **cash** is what leaves the till in the season, or is laid aside. Whoever must pay next winter wants the cash; whoever asks what the lift costs wants the total.
#
# By hand, the capital recovery of the Penny Rope: at 5 % over 20 seasons the factor is 0.05 ÷ (1 − 1.05⁻²⁰) = 0.08024 a season. What is lost, 35,000 − 2,000 = 33,000 dollars, is paid back at that rate; on the 2,000 dollars of salvage only the interest is paid: 33,000 × 0.08024 + 2,000 × 0.05 = 2,748 dollars.
#
# Without interest the factor is 1 ÷ 20, and 33,000 ÷ 20 = 1,650 dollars a season. That is the **depreciation** of the books. Capital recovery holds it already. Take the one or the other, never both: both together make 4,398, and the lift is paid for twice.
#
# **Divide by the rides that were carried.** The loading point governs at 1,200 people an hour. Times 350 hours that makes 420,000 rides, and nobody took most of them.

# %%
divided_table(penny)

# %% [markdown]
# By capacity times hours every lift looks cheap, and the emptiest looks cheapest of all.
#
# ## Volunteers, grants and the meter
#
# Volunteers run this hill. With their hours at nought a ride costs 0.08 dollars, at the wage of whoever would replace them 0.20. The first says what is paid, the second what is used up. Show both.

# %%
from liftcalc.lifts.cost_words import grants_table, meter_table, volunteers_table

volunteers_table(sheets)

# %% [markdown]
# A grant makes the ride cheaper for the club, and for nobody else. Before the grant is the cost to hold against other lifts; after it, what the club must bear. And a grant seldom comes twice: in 20 seasons the next rope tow has its whole price again.

# %%
grants_table(penny, [Q(0, "dollar"), Q(15000, "dollar"), Q(35000, "dollar")])

# %% [markdown]
# In the last row the grant has paid all, and the salvage is left over: 15,434 is some 60 less than the cash of 15,495.
#
# The meter asks twice: for kilowatt-hours, and for the highest kilowatts. Here those of a quarter of an hour count, month by month; other tariffs take another span, keep a peak for a year, or ask nothing: read your contract. The Penny Rope is billed 14 kW × 12 dollars × 4 months = 672 dollars, however few minutes the peak lasted. Its energy costs 289. Several motors on one meter pay for their **common** peak: never more than the sum, never less than the largest. How much of the sum comes at once is read off the bills; here it is assumed.

# %%
meter_table([penny, twin], Q(0.8, ""))

# %% [markdown]
# ## What the cost hangs on
#
# Now one value after another is moved by a fifth, down and up, while the others stay.

# %% folded
drivers_panel = CostDriversPanel(penny)
Prediction("Each value moves by 20 %, alone. Which makes the largest difference to a ride?", {
    "The wage": "Staff is 61 % of the season, so a fifth less takes 12 % off a ride. The rides share out all of it, not 61 %.",
    "The rides": "Nearly the whole season is shared out by them: from 0.25 dollars a ride down to 0.17.",
    "The price": "A fifth of 15 %: 0.01 dollars between the two ends, however hard one bargains.",
    "The energy price": "0.0013 dollars between the two ends. It is in the news, and hardly in the ride.",
}, right="The rides", opens=drivers_panel, marks={"The wage": "wage", "The rides": "rides", "The price": "price", "The energy price": "energy_price"})  # fmt: skip

# %% [markdown]
# The best lever is no saving at all: it is one more guest on a rope that runs anyway. But the bars say nothing of how likely an end is, nor of what moves together. Whoever cuts the hours loses rides with them.

# %% folded
drivers_panel.legend()

# %% [markdown]
# **Move it and answer.**
#
# 1. The bar of the rides is longer on one side. Which, and why?
# 2. Move all by 50 %. Does the order change?
# 3. How many of the nine make less than 0.02 dollars even then?

# %% folded
from liftcalc.vocabulary import words_of

fifth, half = (drivers_panel.swings_at(Q(part, "percent")) for part in (20, 50))
few, many = (cost.magnitude for cost in fifth[0].costs)
small = [swing for swing in half if swing.swing.magnitude < 0.02]
Folded(
    "Answers",
    f"1. To the right: a fifth fewer rides make {few:.3f} dollars, {few / year.per_ride.magnitude - 1:.0%} more; a fifth more make {many:.3f}, {1 - many / year.per_ride.magnitude:.0%} less. The cost is divided by the rides.",
    f"2. {'No' if [each.name for each in fifth] == [each.name for each in half] else 'Yes'}: rides, hours and wage come first, price and life behind them.",
    f"3. {len(small)} of {len(half)}: {', '.join(words_of(swing.name) for swing in small)}.",
)

# %% folded
drivers_panel.at_settings("moved_by", [Q(10, "percent"), Q(20, "percent"), Q(50, "percent")])

# %% [markdown]
# ### How sure is the 0.20?
#
# The bars move all values alike. They are not known alike: the wage stands in the wage book, the hours in the log; the rides were counted on one day in ten, and guessed for the others. Each value is now drawn 20,000 times within what it may be off, alone and then all at once. The parts below are assumed for this page, each as likely anywhere within.

# %%
from liftcalc.lifts.cost_words import doubt_table

may_be_off = {"rides": 15, "running_hours": 10, "wage": 5, "price": 10, "life": 25, "interest": 30, "maintenance": 30, "energy_price": 10}
doubt_table(penny, {name: Q(percent, "percent") for name, percent in may_be_off.items()})

# %% [markdown]
# Nearly four fifths of the doubt come from the rides. The wage, third of the bars, makes a thirtieth of it. So a day of counting tells the board more about the ride than a week of bargaining over the price. Rides and hours move together on a real hill; drawn apart, as here, they make the doubt a little too large.

# %% [markdown]
# ## Dear by what?
#
# A ride is not a ride: one lifts a child 8 m, another an adult 142 m.

# %% folded
from liftcalc.lifts.cost_words import ready_table, ticket_table

Prediction("A ride on the Duckling Belt costs 0.64 dollars, a ride on the Lantern Double 2.69. Which of the two is the dearer lift?", {
    "The Lantern Double": "By the ride it is. But its rides are nearly eighteen times as high.",
    "The Duckling Belt": "By the height it is: a thousand people a metre up cost more than four times as much there.",
    "That hangs on what one divides by": "By the ride the chair is dearer, by the height the belt. Neither is wrong.",
}, right="That hangs on what one divides by", opens=Shown(ready_table(sheets)))  # fmt: skip

# %% [markdown]
# By the ride the chair is the dearest; by the height it lifts people to, it is less than a quarter of the belt. 1,000 person-metres cost 6.9 dollars on the Penny Rope, 18.9 on the chair, 26.2 on the platter and 80.5 on the belt, which has 8 m of rise. Nothing is wrong with the belt: children learn there, and height is not what it is for. Say what a lift is for, then divide by that.
#
# The columns in the middle are of what is held ready, whether anybody rides or not: 1,000 people an hour for a season, or 1,000 VTFH for one hour (vertical transport feet an hour: people an hour × feet of rise). All stand at their **governed** capacity: an ideal figure among them would be a wish. Twin Penny is held ready for 60 hours a season and the others for 350, so only its VTFH by the hour is like theirs.
#
# ### What does a ride bring?
#
# A ticket of 28 dollars is for all lifts of this hill; Twin Penny, a proposal, is not among them. 10,000 guests share 190,000 rides and 10.2 million person-metres. Shared out by rides, each ride brings 1.47 dollars. Shared out by height, a ride on the chair brings 3.90 and one on the belt 0.22.

# %%
ticket_table(sheets[:4], Q(28, "dollar"), guests=10000)

# %% [markdown]
# The verdict turns round for three lifts of four, and nothing has changed on the hill. Whoever wants to close a lift finds the sharing that says so. Show both. What holds for any sharing is the sum: 280,000 dollars come in, and these four lifts cost 192,371 (rounded rows make 192,372). Assumed: all of the ticket is for the lifts. Grooming, patrol and lodge want their part first; take it off, and fewer lifts pay.
#
# By hand, the break-even of the Penny Rope by rides: of 18,243 dollars 163 are the energy of its rides, so some 18,080 stay however many ride. 18,080 ÷ (1.47 − 0.0018) = 12,300 rides. The whole 18,243 above the line would count that energy twice. Where the share is not above what one ride more costs, there is no break-even at all. (The panel above divides by a share of 1.47, the table by 28 ÷ 19 = 1.4737: 12,314 and 12,283.)

# %% [markdown]
# ## Side by side
#
# Money is one row of many. Here are the lifts with what governs them, what they need and what they ask for when they stop, each at its governed capacity; what was simulated for the Penny Rope stands in a row of its own.

# %%
from liftcalc.simulation.day_tables import read_day
from liftcalc.simulation.side_by_side import compare_lifts, hill_choices

days = {"Penny Rope": read_day("../data/days/penny_rope_classes.csv", "../data/days/penny_rope_day.csv")}
compare_lifts(hill_choices(hill, costs, days)[:4])

# %% [markdown]
# A season of the chair costs six times that of the rope tow. It lifts people nearly five times as high, and when it stops 83 of them hang in the air. No row of the table is the answer alone.

# %% [markdown]
# ## Prices of your own

# %% [markdown] lab-only
# The next cell names a folder of sheets and a table of prices. Copy `data/hill` and `data/costs.csv`, change the copies, and write their names there.

# %% [markdown] app-only
# Here the table is that of Owlpenny Hill. Prices of your own are read in JupyterLab; the README of this project says how to open it.

# %% [markdown]
# The sheets are those of [00 Start here](00_start_here.ipynb). In the table of prices, a row a lift: money in dollars, life in seasons, interest in percent (5, not 0.05), hours and rides a season, the demand price a kilowatt and month. Rides are those carried; the billed kilowatts stand on the bills of the meter. The wage is that of whoever would replace a volunteer, never nought.

# %% [markdown] lab-only
# The other tables of this page speak of your hill, too, when its names stand in the first code cell.

# %% no-output
# YOUR PRICES: change the names between the quotation marks
my_hill = "../data/hill"
my_costs = "../data/costs.csv"

# %%
cost_table(cost_sheets(read_hill(my_hill), read_costs(my_costs)))

# %% [markdown]
# ## Twin Penny before the board
#
# Seventy people ride the Penny Rope in a busy hour, lap after lap, and wait two minutes for each ride. Two ways out lie on the table. A helper at the loading point makes starts quicker and misses fewer. Twin Penny is a second rope beside the first, run for the 60 busiest hours of a season. Both fill the same beginner slope of 0.4 ha, and a guideline from outside names 35 to 75 riders a hectare for such a slope.

# %%
from liftcalc.simulation.board_case import board_model_answer, board_table, read_board_case

case = read_board_case("../data/board/twin_penny_case.csv")
board_table(case)

# %% [markdown]
# The levels stand in the table: what is carried was **simulated** on days like the invented one, what is possible at most is **governed**. An extra ride on Twin Penny costs 0.24 dollars, and the helper gives one for 0.12; but the helper takes some 30 s off the wait, and Twin Penny more than 100. Whoever waits less skis more, and some 85 riders a hectare are about ten over the guideline.
#
# Decide before you read on, and write down why.

# %% folded
Decision(
    "Twin Penny asks for 48,000 dollars. What does the board do?",
    ("Yes, Twin Penny", "No, leave it as it is", "A helper at the loading point"),
    board_model_answer(case),
)

# %% [markdown]
# **One attendant for two ropes?** It would make Twin Penny cheaper on paper. It stands in a reckoning only as a rule that somebody has entered with its source, from the code or the authority. Supervision suffers before throughput does: whoever watches two ropes sees each of them half of the time, and the half that is missed is in no column of any table.

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
# ### Exercise 12.1

# %% folded
AnswerBox("12.1")

# %% [markdown]
# ### Exercise 12.2

# %% folded
AnswerBox("12.2")

# %% [markdown]
# ### Exercise 12.3

# %% folded
AnswerBox("12.3")

# %% [markdown]
# ### Exercise 12.4

# %% folded
AnswerBox("12.4")

# %% [markdown]
# ### Exercise 12.5

# %% folded
AnswerBox("12.5")

# %% [markdown]
# ### Exercise 12.6

# %% folded
AnswerBox("12.6")

# %% [markdown]
# ### What you have done

# %% folded
RecordBox("12")

# %% [markdown]
# ## In short
#
# - Divide by the rides that were carried, never by capacity times hours; show volunteers at a wage and at nought, and a cost before and after a grant.
# - Recovery or depreciation, never both. Staff governs a lift that is cheap to buy, capital a dear one, and the rides share out either.
# - Dear by the ride, by the height, by what is held ready: say by what, at which level, and how the ticket was shared.
#
# **Formula card.** Capital recovery (P − S) · f + S · i with f = i ÷ (1 − (1 + i)⁻ⁿ), or 1 ÷ n without interest; laid aside for the next rope P · (f − i); staff posts · wage · hours; energy p · (N · E ÷ η + idle power · hours); demand charge billed kW · price · months; a ride A ÷ N; break-even fixed ÷ (share − variable).

# %% [markdown]
# ## Where to next
#
# [11 Lift lines and laps](11_lift_lines_and_laps.ipynb) reckons the lines and the laps behind the case of the board. [13 Your lift](13_your_lift.ipynb) ends with a page to pin to the wall; [14 Meeting talk](14_meeting_talk.ipynb) tells the whole of it to a room.
