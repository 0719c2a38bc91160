"""The panels of 06: every number that they print, against plain arithmetic."""

import math

import numpy as np
import pytest

from liftcalc import Q
from liftcalc.panels import AgreementPanel, BudgetPanel, SpreadPanel, notebook_state


def test_the_length_has_no_share_in_people_an_hour():
    panel = BudgetPanel()
    before = panel.describe()
    panel.rows[2].box.value = 40
    assert panel.budget.rows[2].share == 0
    assert panel.describe().replace("doubt of length 40%", "doubt of length 1%") == before


DOUBTS = [(3, 7, 1), (20, 6, 25)]  # half-widths of line speed, spacing and ridden length in percent


def last_digit(doubt):
    """Return the power of ten of the last digit of a plus-minus: of its second one where it begins with 10 to 29."""
    place = math.floor(math.log10(doubt))
    return place - 1 if doubt < 3 * 10.0**place else place


def rounded_to(place, number):
    """Return a number as it is printed when its last digit stands at a power of ten."""
    return f"{round(number / 10.0**place) * 10.0**place:,.{max(-place, 0)}f}"


def with_plus_minus(value, doubt, word):
    """Return value and plus-minus as they are printed."""
    place = last_digit(doubt)
    return f"{rounded_to(place, value)} ± {rounded_to(place, doubt)} {word}"


def first_order(*half_widths):
    """Return the standard uncertainty of 1,800 pph from half-widths in percent of the readings."""
    return 18 * math.hypot(*half_widths) / math.sqrt(3)


def share_below(capacity, speed, spacing):
    """Return the share of draws below a capacity where speed and spacing lie anywhere within half-widths in percent."""
    at = np.linspace(6.8 * (1 - spacing / 100), 6.8 * (1 + spacing / 100), 4001)
    part = (capacity / 3600 * at / 3.4 - 1 + speed / 100) / (2 * speed / 100)
    return float(np.mean(np.clip(part, 0, 1)))


@pytest.mark.parametrize(("speed", "spacing", "length"), DOUBTS)
def test_own_arithmetic_every_number_of_the_spread_panel(speed, spacing, length):
    panel = SpreadPanel(speed_doubt=Q(speed, "percent"), spacing_doubt=Q(spacing, "percent"))
    doubt, chart = first_order(speed, spacing), panel.picture.chart
    short = with_plus_minus(1800, 1.959964 * doubt, "pph")
    assert panel.results["people an hour, first order"] == f"{short} (ideal)"
    assert panel.results["standard uncertainty"] == f"{rounded_to(last_digit(doubt), doubt)} pph"
    part = spacing / 100
    mean = 1800 * math.log((1 + part) / (1 - part)) / (2 * part)  # of one over a spacing anywhere between two ends
    assert float(panel.results["mean of the draws"].removesuffix(" pph").replace(",", "")) == pytest.approx(
        mean, abs=5 + 4 * doubt / math.sqrt(20_000)
    )
    ends = [line.get_xdata()[0] for line in chart.ends]
    four_errors = 4 * math.sqrt(0.025 * 0.975 / 20_000)
    assert [share_below(end, speed, spacing) for end in ends] == pytest.approx([0.025, 0.975], abs=four_errors)
    assert panel.results["95 of 100 draws lie from"] == f"{' to '.join(rounded_to(1, end) for end in ends)} pph"
    assert chart.title.get_text() == f"People an hour: {short}"
    assert chart.words.get_text() == f"95 of 100 draws: {panel.results['95 of 100 draws lie from']}"
    heights = np.array([bar.get_height() for bar in chart.bars])
    in_bars = np.diff([share_below(edge, speed, spacing) for edge in chart.edges])
    assert heights / heights.sum() == pytest.approx(in_bars, abs=4 * math.sqrt(in_bars.max() / 20_000))
    x, bell = chart.bell.get_data()
    assert x[np.argmax(bell)] == pytest.approx(1800, abs=x[1] - x[0])
    assert np.log(bell.max() / np.interp(1800 - 2 * doubt, x, bell)) == pytest.approx(2, rel=0.02)
    area = np.diff(chart.edges).mean() * heights.sum(), (x[1] - x[0]) * bell.sum()
    assert area[0] == pytest.approx(area[1], rel=0.01), "bars and bell hold as many draws"
    assert max(heights.max(), bell.max()) == pytest.approx(1, rel=0.01)
    assert panel.note() == (
        "The plus-minus holds at a level of confidence of 95 %. Line speed 3.4 m/s, spacing 6.8 m; 20,000 draws, seed "
        "2026."
    )


@pytest.mark.parametrize(("speed", "spacing", "length"), DOUBTS)
def test_own_arithmetic_every_number_of_the_budget_panel(speed, spacing, length):
    doubts = {"speed_doubt": speed, "spacing_doubt": spacing, "length_doubt": length}
    panel = BudgetPanel(**{name: Q(number, "percent") for name, number in doubts.items()})
    widths = {
        "people an hour": (speed, spacing),
        "line speed twice as good": (speed / 2, spacing),
        "spacing twice as good": (speed, spacing / 2),
        "ridden length twice as good": (speed, spacing),
    }
    texts = {
        name: with_plus_minus(1800, 1.959964 * first_order(*half_widths), "pph") for name, half_widths in widths.items()
    }
    assert panel.results == texts | {"people an hour": f"{texts['people an hour']} (ideal)"}
    shares = [100 * width**2 / (speed**2 + spacing**2) for width in (speed, spacing)]
    chart = panel.picture.chart
    most = "line speed" if speed > spacing else "spacing"
    assert chart.title.get_text() == f"Most of the doubt comes from the {most}"
    assert [text.get_text() for text in chart.numbers] == [*(f"{share:.0f} %" for share in shares), "nil"]
    assert [bar[0].get_width() for bar in chart.bars] == pytest.approx([*shares, 0], abs=0.3)
    assert [label.get_text() for label in chart.ax.get_yticklabels()] == ["line speed", "spacing", "ridden length"]
    now, better = (texts[name].partition("± ")[2] for name in ("people an hour", f"{most} twice as good"))
    assert panel.note() == (
        f"Take the {most} again: it makes {max(shares):.0f} % of the variance; measured twice as well, ± {now} becomes "
        f"± {better}."
    )


METHODS = [  # system, display, its step and the track in m/s, whether the three agree
    ("metric", 3.6, 0.45, 3.38, True),
    ("us", 4.25, 0.2, 3.3, False),
]


@pytest.mark.parametrize(("system", "display", "step", "track", "agree"), METHODS)
def test_own_arithmetic_every_number_of_the_agreement_panel(system, display, step, track, agree):
    panel = AgreementPanel(display_speed=Q(display, "m/s"), display_step=Q(step, "m/s"), track_speed=Q(track, "m/s"))
    notebook_state().use_units(system)
    size, word = {"metric": (1, "m/s"), "us": (0.44704, "mph")}[system]
    values = np.array([3.4, display, track])
    doubts = np.array([0.1 / math.sqrt(3), step / math.sqrt(12), 0.06 / 2])  # half-width, step of a display, k = 2
    weights = doubts**-2 / (doubts**-2).sum()
    mean = weights @ values
    chi_square = (((values - mean) / doubts) ** 2).sum()
    birge, probability = math.sqrt(chi_square / 2), math.exp(-chi_square / 2)  # with two degrees of freedom
    assert (probability >= 0.05) == agree
    together = (doubts**-2).sum() ** -0.5 * (1 if agree else birge)
    values, widths = [*values, mean], [1.959964 * doubt for doubt in (*doubts, together)]
    texts = [with_plus_minus(a / size, b / size, word) for a, b in zip(values, widths, strict=True)]
    assert panel.results == {
        "line speed, all three": texts[-1],
        "do they agree": "yes" if agree else "no",
        "Birge ratio": f"{birge:.1f}",
        "weight of the display": f"{100 * weights[1]:.0f} %",
    }
    chart = panel.picture.chart
    assert chart.title.get_text() == f"The three {'agree' if agree else 'disagree'}: {texts[-1]}"
    assert [text.get_text() for text in chart.words] == texts
    assert [dot.get_xdata()[0] for dot in chart.dots] == pytest.approx([value / size for value in values], rel=1e-6)
    assert [np.ptp(bar.get_xdata()) / 2 for bar in chart.bars] == pytest.approx(
        [width / size for width in widths], rel=1e-6
    )
    assert chart.ax.get_xlabel() == f"line speed ({word})"
    assert chart.ax.get_xlim() == pytest.approx((2.2 / size, 4.8 / size), rel=1e-6)
    assert f"chi-square {chi_square:.3g} with 2 degrees of freedom, probability " in panel.note()
    if not agree:
        assert f"The doubt of the mean is widened {birge:.1f} times" in panel.note()


def test_the_axis_of_methods_holds_whatever_the_sliders_say():
    panel = AgreementPanel()
    low, high = (end.m_as("m/s") for end in panel.axis_ends)
    for name in ("display_speed", "track_speed"):
        scale = panel.control(name).metric
        assert low < scale.low - 0.1 < scale.high + 0.1 < high, name
