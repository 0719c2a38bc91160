"""The talk on a stick: its scenes as one file that opens from disk, with no Python and no network.

Words, boards and drawings are those of the live talk, and so are its sheet of styles and its script. Where a live scene
computes, the file holds what the same panel shows: at each preset, and at some thirty stops of each slider. A lift from
the room cannot be computed beforehand: the file holds the words of every case, and a few lines of script put two
numbers into them.
"""

import base64
import gzip
import json
import re
from dataclasses import dataclass
from html import escape
from pathlib import Path

import jinja2
import mistune
from markupsafe import Markup

from liftcalc.pages.talk.reading import TALK, read_scenes, things_of
from liftcalc.panels.controls import CONTROLS, SYSTEMS
from liftcalc.panels.scene_base import BODY, ScenePanel
from liftcalc.panels.scene_room import BOXES, NAMES, PRESETS, ROOM_KINDS, TYPED, RoomLift
from liftcalc.panels.state import notebook_state
from liftcalc.quantity_text import UNIT_SPELLINGS, unit_word
from liftcalc.units import Q

HERE = Path(__file__).parent
OF_THE_LIVE_TALK = HERE.parent / "app_view" / "templates" / "voila" / "templates" / "talk"
MOST_BYTES = 2_000_000
ORDER = ("metric", "us")  # the first is shown first, as in the notebook

_markup = mistune.create_markdown(escape=True)


@dataclass(frozen=True)
class Piece:
    """One part of a scene as it stands in the file.

    Parameters
    ----------
    markup : str
        What is shown, as HTML.
    after : str
        Name of the guess after whose revealing it shows; empty for at once.
    """

    markup: str
    after: str = ""


def shown(state):
    """Return what a scene shows at one setting, as HTML; in the file one live region speaks for all."""
    return (state.words + state.drawing).replace(" role='status'", "")


def in_both_systems(make):
    """Return what a function makes under each system of units, by system; afterwards that of before is in force."""
    notebook, made = notebook_state(), {}
    before = notebook.system
    try:
        for system in ORDER:
            notebook.use_units(system)
            made[system] = make()
    finally:
        notebook.use_units(before)
    return made


# panels with presets and a slider


def preset_states(panel):
    """Return values and state of a panel at each preset, chosen as by its button; afterwards it is at the first."""
    found = []
    for name in panel.presets:
        panel.choose(name)
        found.append((panel.given, panel.state_now(name)))
    panel.choose(next(iter(panel.presets)))
    return found


def stops_of(panel, control_name, presets):
    """Return where a slider can be put: thirty settings over its range, and those of the presets.

    Parameters
    ----------
    panel : ScenePanel
        A panel of the talk.
    control_name : str
        One of its controls.
    presets : list
        What ``preset_states`` returns for it.

    Returns
    -------
    list of dict
        From low to high: ``at`` in the base unit, ``text``, what is ``shown``, the place of the ``preset`` or -1.
    """
    scale = panel.control(control_name).scale(panel.state.system)
    near = Q(scale.step, scale.unit).to_base_units().magnitude / 2
    stops = [
        _stop(values[control_name], panel.text(values[control_name]), state, place)
        for place, (values, state) in enumerate(presets)
        if set(panel.presets[state.setting]) == {control_name}
    ]
    taken = [stop["at"] for stop in stops]
    for value, state in zip(panel.stops(control_name), panel.states(control_name), strict=True):
        stop = _stop(value, state.setting, state, -1)
        if all(abs(stop["at"] - at) > near for at in taken):
            stops.append(stop)
    return sorted(stops, key=lambda stop: stop["at"])


def _stop(value, text, state, preset):
    return {"at": value.to_base_units().magnitude, "text": text, "shown": shown(state), "preset": preset}


def _panel_html(panel, key, first):
    """Return a panel with its presets, its sliders, and what it shows first."""
    presets = "".join(
        f"<button type='button' class='scene-preset' data-preset='{escape(name)}'>{escape(name)}</button>"
        for name in panel.presets
    )
    sliders = "".join(
        f"<div class='slide' hidden><label for='{key}-{name}'>{escape(CONTROLS[name].label)}</label><output></output>"
        f"<input type='range' id='{key}-{name}' name='{name}' min='0' max='30' step='1'></div>"
        for name in panel.control_names
    )
    no_sliders = "<p class='stills-only' hidden>This browser cannot unpack the sliders: the buttons stand for them.</p>"
    return (
        f"<div class='scene-panel' data-panel='{key}'><div class='presets'>{presets}</div>{sliders}{no_sliders}"
        f"<div class='shown'>{first}</div></div>"
    )


# the lift from the room

LEAST, OTHER = 1111, 2222  # people an hour: the second is twice the first, so that its bar is twice as long


def _typed(people):
    """Return the time from one to the next that makes so many people an hour, as it is typed."""
    return f"{3600 / people:.12f}"


def _room_states(lift):
    """Return words and drawing of every case, with marks in place of the numbers; and the measures of its bars."""
    states, bar = {}, {}
    lift.choose("Penny Rope")  # one person at a time
    for speed in ("", "speed"):
        for every in ("", *BOXES["every"]):
            for loading in ("", "loading"):
                can = {"spacing": every == "time" or bool(every and speed), "loading": bool(loading)}
                for governs in [name for name in can if can[name]] or ["spacing"]:
                    both = all(can.values())
                    people = dict.fromkeys(can, OTHER) | {governs: LEAST}
                    lift.boxes["speed"].value = "1 m/s" if speed else ""
                    unit = {"": "", "time": "s", "length": "m"}[every]
                    lift.boxes["every"].value = f"{_typed(people['spacing'])} {unit}" if every else ""
                    lift.boxes["loading"].value = f"{_typed(people['loading'])} s" if loading else ""
                    words, drawing = lift.status().replace(" role='status'", ""), lift.drawing()
                    if both and not bar:
                        bar = _bars(drawing)
                    marked = _with_marks(words + drawing, any(can.values()), bar if both else None)
                    case, cut = "/".join((speed, every, loading, governs)), marked.find("<svg")
                    states[case] = [marked, ""] if cut < 0 else [marked[:cut], marked[cut:]]
    return states, bar


def _bars(markup):
    """Return how long a full bar is, where bars begin, and how far behind a bar its number stands [px]."""
    bars = sorted(
        (float(length), float(left)) for left, length in re.findall(r'<rect x="(\d+)"[^>]* width="([\d.]+)"', markup)
    )
    (half, left), (full, _) = bars
    end = float(re.search(rf'<text x="([\d.]+)"[^>]*>{LEAST:,}</text>', markup)[1])
    return {"full": full, "half": half, "left": left, "gap": end - left - half}


def _with_marks(markup, any_number, bar):
    wanted = {f"{LEAST:,}": "{least}"} if any_number else {}
    if bar:
        end = bar["left"] + bar["half"] + bar["gap"]
        wanted |= {
            f"{OTHER:,}": "{other}",
            f'width="{bar["half"]:.1f}"': 'width="{length}"',
            f'x="{end:.1f}"': 'x="{end}"',
        }
    for text, mark in wanted.items():
        if text not in markup:
            raise RuntimeError(f"The scene of a lift from the room no longer shows {text}: the marks must follow it.")
        markup = markup.replace(text, mark)
    return markup


def _box(name):
    """Return what one box takes: kinds of quantity with their units in the base unit, and the ends."""
    kinds = []
    for kind, (unit, low, high, base) in BOXES[name].items():
        spellings = UNIT_SPELLINGS[kind]
        firsts = list(dict.fromkeys(unit_word(spelt) for spelt in spellings.values()))
        kinds.append(
            {
                "name": kind, "unit": unit, "low": low, "high": high, "base": base,
                "units": {word: Q(1.0, spelt).m_as(base) for word, spelt in spellings.items()},
                "write": ", ".join(firsts),
            }
        )  # fmt: skip
    return {"name": NAMES[name], "kinds": kinds}


def room_of(lift):
    """Return what the script needs for a lift from the room.

    Parameters
    ----------
    lift : RoomLift
        The live scene.

    Returns
    -------
    dict
        Boxes with their units, persons of each kind, presets of both systems, and the words of every case.
    """
    states, bar = _room_states(lift)
    complaint = f"<div data-complaint style='font-size:{BODY}px;border-left:8px solid;padding:2px 12px'></div>"
    return {
        "persons": {name: persons for name, (_, persons) in ROOM_KINDS.items()},
        "boxes": {name: _box(name) for name in BOXES},
        "presets": in_both_systems(lambda: lift.presets),
        "states": states,
        "bar": bar,
        "typed": f"^(?:{TYPED})$",
        "complaint": f"<div class='result-RoomLift' style='min-height:130px'>{complaint}</div>",
    }


def _room_html(lift):
    """Return the scene of a lift from the room: its kinds, boxes and presets."""
    kinds = "".join(
        f"<button type='button' class='widget-toggle-button' data-kind='{escape(name)}'>{escape(name)}</button>"
        for name in ROOM_KINDS
    )
    boxes = "".join(
        f"<label class='widget-text'><span class='widget-label'>{escape(box.description)}</span>"
        f"<input type='text' data-box='{name}' maxlength='40' autocomplete='off' spellcheck='false'></label>"
        for name, box in lift.boxes.items()
    )
    presets = "".join(
        f"<button type='button' class='scene-preset' data-preset='{escape(name)}'>{escape(name)}</button>"
        for name in PRESETS
    )
    return (
        f"<div class='scene-panel' data-room><div class='widget-toggle-buttons' role='group' aria-label='kind of lift'>"
        f"{kinds}</div><div class='room-boxes'>{boxes}</div><div class='shown'></div>"
        f"<div class='presets'>{presets}</div></div>"
    )


# the file


def _piece(thing, key, told, packed):
    """Return the markup of what a line of code makes, and keep what the script needs for it."""
    if hasattr(thing, "html"):
        return thing.html()
    if isinstance(thing, RoomLift):
        told["room"] = room_of(thing)
        return _room_html(thing)
    if not isinstance(thing, ScenePanel):
        told["panels"][key] = in_both_systems(lambda: [shown(state) for state in thing.states()])
        (first,) = told["panels"][key][ORDER[0]]
        return f"<div class='scene-panel' data-panel='{key}'><div class='shown'>{first}</div></div>"
    both = in_both_systems(lambda: _states(thing))
    told["panels"][key] = {system: presets for system, (presets, _) in both.items()}
    packed[key] = {name: {system: stops[name] for system, (_, stops) in both.items()} for name in thing.control_names}
    return _panel_html(thing, key, told["panels"][key][ORDER[0]][0])


def _states(panel):
    """Return what a panel shows at its presets, and at the stops of each slider."""
    presets = preset_states(panel)
    return [shown(state) for _, state in presets], {
        name: stops_of(panel, name, presets) for name in panel.control_names
    }


def _json(data):
    """Return data that may stand in a script element."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":")).replace("<", "\\u003c")


def pack(data):
    """Return data packed as letters, alike on every day."""
    return base64.b64encode(gzip.compress(_json(data).encode(), 9, mtime=0)).decode()


def stick_html(path=TALK):
    """Return the talk as one page that needs nothing beside it.

    Parameters
    ----------
    path : Path
        Its notebook, as built.

    Returns
    -------
    str
    """
    scenes = read_scenes(path)
    told, packed, pages = {"panels": {}}, {}, []
    things = things_of(scenes, path)
    for scene in scenes:
        made, parts = iter(things[scene.id]), []
        for place, part in enumerate(scene.parts):
            markup = _piece(next(made), f"{scene.id}-{place}", told, packed) if part.is_code else _markup(part.text)
            parts.append(Piece(Markup(markup), part.after))
        pages.append((scene, parts, Markup(_markup(scene.caution))))
    styles, script = ((OF_THE_LIVE_TALK / name).read_text(encoding="utf-8") for name in ("talk.css", "talk.js"))
    return _TEMPLATES.get_template("stick.html.j2").render(
        title=scenes[0].title,
        styles=Markup(styles + (HERE / "stick.css").read_text(encoding="utf-8")),
        scenes=pages,
        systems={name: SYSTEMS[name] for name in ORDER},
        told=Markup(_json(told)),
        packed=pack(packed),
        own_script=Markup((HERE / "stick.js").read_text(encoding="utf-8")),
        script=Markup(script),
    )


_TEMPLATES = jinja2.Environment(
    loader=jinja2.FileSystemLoader(HERE),
    autoescape=True,
    undefined=jinja2.StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)
