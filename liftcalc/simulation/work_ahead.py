"""One line before work that takes a while; no bar that moves, so that a stored page holds nothing but that line."""

LONG = 2.0  # s: what takes longer says so


def say_if_long(seconds, days):
    """Print one line before work that takes over two seconds, and nothing before other work.

    Parameters
    ----------
    seconds : float
        How long it will take [s]: from days times steps, as measured on an office machine.
    days : int
        How many days are simulated.

    Returns
    -------
    str
        The line; empty where nothing is said.

    Examples
    --------
    >>> said = say_if_long(4.2, 5000)
    About 4 s: 5,000 days.
    """
    if seconds <= LONG:
        return ""
    said = f"About {seconds:,.0f} s: {days:,} days."
    print(said)
    return said
