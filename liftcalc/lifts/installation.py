"""An installation: one or more lines that are run as one lift."""

from dataclasses import dataclass

from liftcalc.levels import Capacity
from liftcalc.units import PlainError


@dataclass(frozen=True)
class Installation:
    """One or more lines that stand side by side and are run as one lift.

    Parameters
    ----------
    name : str
        Name of the installation.
    lines : tuple of Line
        Its lines, one or more, all at one level.

    Raises
    ------
    PlainError
        If there is no line, or the lines are of different levels.
    """

    name: str
    lines: tuple

    def __post_init__(self):
        if not self.lines:
            raise PlainError(f"Installation: {self.name!r} has no line. Give at least one Line.")
        names = [line.name for line in self.lines]
        if len(set(names)) < len(names):
            raise PlainError(
                f"Installation: two lines of {self.name!r} have one name. Name each, such as left and right."
            )
        levels = {line.level for line in self.lines}
        if len(levels) > 1:
            raise PlainError(
                f"Installation: the lines of {self.name!r} are of different levels ({', '.join(sorted(levels))}). "
                "Give lines of one level, so that their capacities may be added."
            )

    @property
    def capacity_per_line(self):
        """Capacity of each line, by its name."""
        return {line.name: line.capacity for line in self.lines}

    @property
    def capacity_together(self):
        """Capacity of all lines together; it says how many lines it counts."""
        total = sum((line.capacity.value for line in self.lines[1:]), self.lines[0].capacity.value)
        return Capacity(total, self.lines[0].level, len(self.lines))

    @property
    def motor_power_together(self):
        """Rated power of all motors together; None if one of them is not known."""
        powers = [line.motor_power for line in self.lines]
        return None if any(power is None for power in powers) else sum(powers[1:], powers[0])
