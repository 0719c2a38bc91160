"""The quantities of a line, each with its symbol and the product of powers that it is. ``givens`` solves them."""

from dataclasses import dataclass

from liftcalc.constants import SECONDS_PER_HOUR
from liftcalc.vocabulary import VOCABULARY, words_of


@dataclass(frozen=True)
class LineQuantity:
    """One quantity of a line: its name, symbol, an example, and the product that it is.

    ``powers`` holds its powers of ``BASIS``; ``factor`` is the number before the product.
    """

    name: str
    symbol: str
    example: float
    powers: tuple
    factor: float = 1.0
    said: str = ""

    @property
    def words(self):
        """How people say it."""
        return self.said or words_of(self.name)

    @property
    def unit(self):
        """Unit that stands for its kind."""
        return VOCABULARY[self.name].unit

    @property
    def advice(self):
        """An example as one would write it."""
        return f"Q({self.example:g}, {self.unit!r})"


BASIS = ("line_speed", "spacing", "persons_per_carrier", "ridden_length", "sheave_distance")
LINE_QUANTITIES = {  # powers of v, s, n, L, D in the order of BASIS
    quantity.name: quantity
    for quantity in (
        LineQuantity("line_speed", "v", 3.4, (1, 0, 0, 0, 0)),
        LineQuantity("spacing", "s", 6.8, (0, 1, 0, 0, 0)),
        LineQuantity("interval", "t", 2, (-1, 1, 0, 0, 0)),
        LineQuantity("persons_per_carrier", "n", 2, (0, 0, 1, 0, 0)),
        LineQuantity("carriers_on_loop", "K", 60, (0, -1, 0, 0, 1), 2.0),
        LineQuantity("sheave_distance", "D", 160, (0, 0, 0, 0, 1)),
        LineQuantity("ridden_length", "L", 150, (0, 0, 0, 1, 0)),
        LineQuantity("ride_time", "T", 44, (-1, 0, 0, 1, 0)),
        LineQuantity("riders_on_line", "N", 22, (0, -1, 1, 1, 0), said="riders on the line, on average"),
        LineQuantity("hourly_capacity", "C", 1800, (1, -1, 1, 0, 0), SECONDS_PER_HOUR),
    )
}
COUNTS = ("persons_per_carrier", "carriers_on_loop")  # counted, not measured: held as given where readings are fitted
