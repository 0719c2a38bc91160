"""One line before work that takes over two seconds, with a fair guess at how long it takes."""

import time

import pytest

from liftcalc.simulation.carrier_day import CarrierDay
from liftcalc.simulation.loading_day import LoadingDay, RiderClass
from liftcalc.simulation.many_days import losses_by_cause, simulate_days
from liftcalc.simulation.work_ahead import say_if_long

CARRIERS = CarrierDay(2, 6.0, 300.0, {1: 0.5, 2: 0.5}, hours=2)
ROPE = LoadingDay((RiderClass("all", 1.0, 3.0, 0.4),), 2.0, 45.0, hours=2)


def test_one_line_and_nothing_that_moves(capsys):
    assert say_if_long(1.9, 10) == ""
    assert say_if_long(61.4, 12_000) == "About 61 s: 12,000 days."
    assert capsys.readouterr().out == "About 61 s: 12,000 days.\n"


@pytest.mark.parametrize("day", [CARRIERS, ROPE])
def test_short_work_says_nothing_and_long_work_says_so_before(day, capsys):
    simulate_days(day, 1, 3)
    losses_by_cause(day, 1, 3)
    assert capsys.readouterr().out == ""
    assert 2 < day.seconds_of_work(10_000) < 20

    class Stopped(Exception):
        pass

    class Day:
        causes = day.causes

        def seconds_of_work(self, days):
            return 2.5

        governed = 0.0

        def rates(self, seed, days):
            raise Stopped(capsys.readouterr().out)

        def with_causes(self, causes):
            return self

    with pytest.raises(Stopped, match="About 2 s: 7 days."):
        simulate_days(Day(), 1, 7)
    with pytest.raises(Stopped, match=f"About {len(day.causes) * 2.5:.0f} s: 7 days."):
        losses_by_cause(Day(), 1, 7)


@pytest.mark.parametrize("day", [CARRIERS, ROPE])
def test_the_guess_is_of_the_right_size(day):
    """Within ten times: machines differ, and a wrong count of steps is further off."""
    day.rates(1, 20)
    start = time.process_time()
    day.rates(1, 150)
    assert 0.1 < (time.process_time() - start) / day.seconds_of_work(150) < 10
