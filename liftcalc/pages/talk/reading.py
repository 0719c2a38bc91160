"""The scenes of the talk, read from its notebook: words, panels, cautions, and what the speaker says."""

import json
import re
from dataclasses import dataclass
from pathlib import Path

TALK = Path(__file__).parents[3] / "notebooks" / "14_meeting_talk.ipynb"
PARTS = (None, "spoken", "caution")  # what a cell of a scene is for: to be seen, said, or to stand at the foot


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


@dataclass(frozen=True)
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
    parts : tuple of Part
        What a room sees, from top to bottom.
    spoken : str
        What the speaker says.
    caution : str
        The line at the foot.
    """

    number: int
    id: str
    minutes: float
    spare: bool
    parts: tuple
    spoken: str
    caution: str

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
    groups = []  # the cells of each scene; those before the first are for readers of the notebook alone
    for cell in json.loads(Path(path).read_text(encoding="utf-8"))["cells"]:
        if "scene" in cell["metadata"]:
            groups.append([])
        if groups:
            groups[-1].append(cell)
    return [_scene(number, cells) for number, cells in enumerate(groups)]


def _scene(number, cells):
    """Return the scene that some cells make."""
    about = cells[0]["metadata"]
    by_part = {part: [cell for cell in cells if cell["metadata"].get("part") == part] for part in PARTS}
    seen = [
        Part("".join(cell["source"]), cell["cell_type"] == "code", cell["metadata"].get("after", ""))
        for cell in by_part[None]
    ]
    spoken, caution = ("\n".join("".join(cell["source"]) for cell in by_part[part]) for part in PARTS[1:])
    spoken = "\n".join(line.removeprefix(">").strip() for line in spoken.split("\n"))  # it stands indented there
    return Scene(number, about["scene"], about["minutes"], about.get("spare", False), tuple(seen), spoken, caution)


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
