"""A lift from the room: a kind, three numbers called out, and the limit that they make."""

import re
from html import escape

import ipywidgets as widgets

from liftcalc.figures.stage import Bar, draw_bars
from liftcalc.lifts.demo_hill import demo_line
from liftcalc.lifts.governing import governing
from liftcalc.lifts.limits import loading_limit, spacing_limit
from liftcalc.lifts.readings import known_values
from liftcalc.panels.base import still_picture
from liftcalc.panels.scene_base import BODY, COLOUR_OF, SceneFigure, SceneState, an_hour, in_short, large
from liftcalc.quantity_text import UNIT_SPELLINGS, read_number, read_unit, shortened, show
from liftcalc.units import PlainError, Q

# what a button says: kind of lift, persons on each carrier
ROOM_KINDS = {
    "rope tow": ("rope tow", 1),
    "platter": ("platter lift", 1),
    "T-bar": ("T-bar lift", 2),
    "carpet": ("conveyor", 1),
    "double chair": ("fixed chair", 2),
    "quad chair": ("fixed chair", 4),
}

# box: kinds of quantity it takes, with the unit of each where none is said, and the ends between which a lift may lie
BOXES = {
    "speed": {"speed": ({"metric": "m/s", "us": "mph"}, 0.1, 12.0, "m/s")},
    "every": {
        "length": ({"metric": "m", "us": "ft"}, 0.5, 300.0, "m"),
        "time": ({"metric": "s", "us": "s"}, 0.5, 300.0, "s"),
    },
    "loading": {"time": ({"metric": "s", "us": "s"}, 0.5, 300.0, "s")},
}
TYPED = r"\s*([-+]?[0-9.,][0-9., ]*?)\s*([A-Za-z'][^0-9<>&]*)?"  # a number, and a unit or none
NAMES = {"speed": "speed", "every": "spacing or interval", "loading": "loading time"}  # as a message says them
SHOWN = {"metric": ("m/s", "m", "s"), "us": ("mph", "ft", "s")}
PRESETS = {"Penny Rope": "rope tow", "Long Platter": "platter", "Lantern Double": "double chair"}


def read_box(name, text, system):
    """Return what was typed into a box as a quantity; None for nothing.

    Parameters
    ----------
    name : str
        A key of ``BOXES``.
    text : str
        A number, with a unit behind it or without one.
    system : str
        "us" or "metric": the unit where none was typed.

    Returns
    -------
    Quantity or None

    Raises
    ------
    PlainError
        If it is no number, no unit of the kind, or outside what a lift may have; the message says so in plain words.
    """
    if not text.strip():
        return None
    parts = re.fullmatch(TYPED, text)
    if parts is None:
        raise PlainError(f"{NAMES[name].capitalize()}: {shortened(text, 20)!r} is no number. Type digits, such as 3.4.")
    kinds = BOXES[name]
    kind = next((each for each in kinds if parts[2] and _spelt(parts[2]) in UNIT_SPELLINGS[each]), next(iter(kinds)))
    units, low, high, unit = kinds[kind]
    try:
        number = read_number(parts[1], decimal_comma="," in parts[1])
        value = Q(number, read_unit(parts[2], kind) if parts[2] else units[system])
    except PlainError as refused:
        raise PlainError(f"{NAMES[name].capitalize()}: {refused}") from None
    if not low <= value.m_as(unit) <= high:
        raise PlainError(
            f"{NAMES[name].capitalize()}: {show(value)} is outside {low:g} to {high:g} {unit}. Say it once more."
        )
    return value


def _spelt(word):
    return " ".join(word.casefold().strip().rstrip(".").split())


def _still_for_spacing(values):
    """Return what is still to be called out before the limit of spacing is known: an interval needs no speed."""
    speed, between = values["speed"], values["every"]
    if between is None:
        return ["spacing and speed, or the interval" if speed is None else NAMES["every"]]
    return [NAMES["speed"]] if speed is None and between.check("[length]") else []


class RoomLift(SceneFigure):
    """Scene 9: a kind, three boxes, and the smaller of two limits, as the numbers are typed."""

    title = "A lift from the room"

    def __init__(self):
        self._kind, self._quiet = "rope tow", True
        self.boxes = {
            name: widgets.Text(description=name, placeholder="", layout=widgets.Layout(width="31%")) for name in BOXES
        }
        for box in self.boxes.values():
            box.style.description_width = "auto"
            box.observe(self._typed, "value")
        self._kinds = widgets.ToggleButtons(options=list(ROOM_KINDS), layout=widgets.Layout(width="auto"))
        self._kinds.style.button_width = "auto"
        self._kinds.observe(self._chosen, "value")
        super().__init__()
        presets = []
        for name in PRESETS:
            button = widgets.Button(description=name, layout=widgets.Layout(width="auto"))
            button.on_click(lambda pressed: self.choose(pressed.description))
            button.add_class("scene-preset")
            presets.append(button)
        self.children = [
            self._kinds, widgets.HBox(list(self.boxes.values())), self.picture.widget, widgets.HBox(presets),
        ]  # fmt: skip
        self._quiet = False
        self.choose("Penny Rope")

    @property
    def presets(self):
        """The named settings: what stands in each box, by the name of a lift."""
        settings, units = {}, SHOWN[self.state.system]
        for name, kind in PRESETS.items():
            values = known_values(*demo_line(name))
            read = (values["line_speed"], values["spacing"], values["loading_time"])
            texts = [in_short(show(value, unit)) for value, unit in zip(read, units, strict=True)]
            settings[name] = {"kind": kind, **dict(zip(BOXES, texts, strict=True))}
        return settings

    def choose(self, name):
        """Put kind and boxes to a lift of the demo hill.

        Parameters
        ----------
        name : str
            Name of the lift.
        """
        self._put(**self.presets[name])

    def _put(self, kind, **texts):
        self._quiet, self._kind = True, kind
        self._kinds.value = kind
        for box_name, text in texts.items():
            self.boxes[box_name].value = text
        self._quiet = False
        self.use_units()

    def _chosen(self, change):
        if not self._quiet:  # another lift: what was called out before is gone
            self._put(change["new"], **dict.fromkeys(BOXES, ""))

    def _typed(self, change):
        if not self._quiet:
            self.use_units()

    def use_units(self):
        """Read the boxes, and show what they make."""
        self._read()
        super().use_units()

    follow = use_units

    def _read(self):
        """Read the boxes: the limits that can be had, and what is to be said."""
        self.limits, self.complaint, values = [], "", {}
        for name, box in self.boxes.items():
            try:
                values[name] = read_box(name, box.value, self.state.system)
            except PlainError as refused:
                values[name], self.complaint = None, str(refused)
        speed, between, loading = (values[name] for name in BOXES)
        persons = Q(ROOM_KINDS[self._kind][1], "person")
        if between is not None and between.check("[time]"):  # an interval says how often, at any speed
            speed = speed or Q(1.0, "m/s")
            between = speed * between
        found = spacing_limit(speed, between, persons), loading_limit(loading, persons)
        self.limits = [limit for limit in found if hasattr(limit, "capacity")]
        self.wanted = [*_still_for_spacing(values), *([] if loading is not None else [NAMES["loading"]])]

    def status(self):
        if self.complaint:
            words = (
                f"<div style='font-size:{BODY}px;border-left:8px solid;padding:2px 12px'>{escape(self.complaint)}</div>"
            )
        elif not self.limits:
            words = f"<div style='font-size:{BODY}px'>Call out: {'; '.join(self.wanted)}.</div>"
        else:
            found = governing(self.limits)
            number, unit = an_hour(found.capacity)
            each = f"{found.limit.name.capitalize()} governs of the two; motor and rope were not asked."
            if len(self.limits) == 1:
                each = f"By {found.limit.name} alone. Still to call out: {'; '.join(self.wanted)}."
            words = large(number, unit.replace(",", " at most,"), each)
        return f"<div role='status' class='result-RoomLift' style='min-height:130px'>{words}</div>"

    def drawing(self):
        if self.complaint:
            return ""
        known = {limit.name: limit.capacity for limit in self.limits}
        most = max((capacity.m_as("pph") for capacity in known.values()), default=1.0)
        smallest, bars = min(known, key=known.get, default=None), []
        for name in ("spacing", "loading"):
            if name in known:
                length, text = known[name].m_as("pph"), an_hour(known[name])[0]
                bars.append(Bar(name, length, text, COLOUR_OF[name], name == smallest))
            else:  # a frame that waits for its number
                bars.append(Bar(name, 0.0, "?", COLOUR_OF[name], was=most))
        return draw_bars(bars, most=most, row=84)

    def words(self):
        return f"{self._kind}: " + ", ".join(f"{name} {box.value}" for name, box in self.boxes.items())

    def still(self):
        return f"<div>{self.status()}{still_picture(self.words(), self.picture.still())}</div>"

    def states(self, control_name=None, n=0):
        """Return what the scene shows at each preset; afterwards it stands as before."""
        before = {"kind": self._kind, **{name: box.value for name, box in self.boxes.items()}}
        found = []
        for name in PRESETS:
            self.choose(name)
            found.append(SceneState(name, self.status(), self.drawing()))
        self._put(**before)
        return found
