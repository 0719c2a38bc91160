"""The scenes of the talk, read from its notebook: words, panels, cautions, and what the speaker says."""

import json
import re
from dataclasses import dataclass, field
from pathlib import Path

TALK = Path(__file__).parents[3] / "notebooks" / "14_meeting_talk.ipynb"


@dataclass(frozen=True)
class Part:
    """One cell that a room sees: its text, or the line of code that makes what it shows.

    Parameters
    ----------
    text : str
        Words in the marks of a text cell, or code.
    is_code : bool
        Whether it is code.
    after : str
        Name of the guess after whose revealing it shows; empty for at once.
    """

    text: str
    is_code: bool
    after: str = ""


@dataclass
class Scene:
    """One scene.

    Parameters
    ----------
    number : int
        Its place, as in the address and as typed; spares come behind the others.
    id : str
        Its name.
    minutes : float
        How long it is planned for.
    spare : bool
        Whether it is one of those that are shown when somebody asks.
    parts : list of Part
        What a room sees, from top to bottom.
    spoken : str
        What the speaker says.
    caution : str
        The line at the foot.
    """

    number: int
    id: str
    minutes: float
    spare: bool = False
    parts: list = field(default_factory=list)
    spoken: str = ""
    caution: str = ""

    @property
    def title(self):
        """The heading of the scene."""
        heads = [re.match(r"#+ (.*)", part.text) for part in self.parts if not part.is_code]
        return next((head[1] for head in heads if head), self.id)


def read_scenes(path=TALK):
    """Return the scenes of a talk.

    Parameters
    ----------
    path : Path
        Its notebook, as built.

    Returns
    -------
    list of Scene
    """
    scenes = []
    for cell in json.loads(Path(path).read_text(encoding="utf-8"))["cells"]:
        about, text = cell["metadata"], "".join(cell["source"])
        if "scene" in about:
            scenes.append(Scene(len(scenes), about["scene"], about["minutes"], about.get("spare", False)))
        if not scenes:
            continue  # for readers of the notebook alone
        match about.get("part"):
            case "spoken":
                scenes[-1].spoken = text
            case "caution":
                scenes[-1].caution = text
            case None:
                scenes[-1].parts.append(Part(text, cell["cell_type"] == "code", about.get("after", "")))
    return scenes


def opening_code(path=TALK):
    """Return the code before the first scene: what the lines of the scenes take for granted."""
    cells = json.loads(Path(path).read_text(encoding="utf-8"))["cells"]
    first = next(place for place, cell in enumerate(cells) if "scene" in cell["metadata"])
    return "\n".join("".join(cell["source"]) for cell in cells[:first] if cell["cell_type"] == "code")


def things_of(scenes, path=TALK):
    """Return what the code of the scenes makes, such as panels and boards: a list for each scene, by its id.

    Parameters
    ----------
    scenes : list of Scene
        As ``read_scenes`` returns them.
    path : Path
        The notebook they come from.

    Returns
    -------
    dict of str to list
        Each in the order of the parts that are code.
    """
    names = {}
    exec(opening_code(path), names)  # the notebook of this project itself: what the app view runs as well
    return {scene.id: [eval(part.text, names) for part in scene.parts if part.is_code] for scene in scenes}
