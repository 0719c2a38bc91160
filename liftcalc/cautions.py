"""The cautions, word for word: the field sheet prints them, the tests hold notebooks and README to them.

Words between two pairs of asterisks are bold, as in the text cells of the notebooks. Three are bold, and stand first on
every page. All of them stand where someone measures: on the pages 00, 02 and 05, on the printed blank, in the README. A
caution after each reply would be passed over.
"""

DEFER = (
    "This series teaches planning figures. Nothing here is a design, a permit or an instruction to change a lift. The "
    "local code, the authority having jurisdiction, the maker's manual and licensed people decide."
)

# what matters most, in one line for every page and with a reason where someone may act on a lift
MATTER_MOST = (
    (
        "Clothes and hair wind in: tuck everything in.",
        "A running rope turns and takes along scarves, hair, drawstrings and straps; so do sheaves, shafts and the "
        "ends of a belt.",
    ),
    (
        "No tape and no mark before the lift is stopped and locked out.",
        "The operator locks it out: for a taped length, for the spacing of carriers, for a mark on a rope or a belt.",
    ),
    (
        "Never step over a rope, moving or stopped, unless it is locked out.",
        "Never near a sheave: keep well out of reach of sheaves and drives, running or stopped.",
    ),
)
THE_THREE = f"**{' '.join(short for short, _ in MATTER_MOST)}**"

ASK = "Motor plate, rope tension and drag: ask the operator. Never read them at the drive."

BEFORE_YOU_GO = (
    "Never alone, and only with the operator's permission. Tell the attendant what you are about to do.",
    "Ask whether a grooming machine is out, and stay off its slope: a winch rope may lie under the snow and jerk tight "
    "far from the machine.",
    ASK,
)

AT_THE_LIFT = (
    "Know who holds the key of the lock-out. When you are done, take everything out of the track and report clear to "
    "that person. No restart until the track is seen to be clear.",
    "Count, time and photograph from outside the track and the unload area. The spacing of riders comes from a photo: "
    "riders never wait on a lift to be measured.",
    "Ask guests before you photograph them, or let nobody be recognisable in the photo.",
    "No phone, tape or watch in your hand while you hold a rope, a handle or a bar, or get on or off any lift.",
)

NEAR_THE_ROPE = (*(f"**{short}** {more}" for short, more in MATTER_MOST), *BEFORE_YOU_GO, *AT_THE_LIFT)

ON_THE_ROPE = (
    "On a tow held by hand, let go when the rope stops, clear the track, and stay clear. No restart until the track is "
    "seen to be clear.",
    "On any other lift, stay on when it stops, and wait for the attendant. Whoever has fallen on the snow and is "
    "unhurt clears the track.",
    "Nobody wraps a rope round a hand or an arm. Gripping devices only as the code and the operator allow.",
    "Only licensed people, the maker and the authority change spacing, line speed and stop gates. Stop gates are "
    "tested as the maker's manual and the code say.",
)

AT_THE_DRIVE = (
    ASK,
    "Fuel burns, and exhaust kills where it cannot get away. Only the operator's people fill an engine, and only when "
    "it is stopped and cool.",
    "Guards stay on belts, chains, shafts and sheaves. Only whoever maintains the drive takes one off, with the drive "
    "locked out.",
)

CRUSH_POINTS = (
    "People are crushed where a carrier passes a post, a platform or a wall, where doors close, and where a "
    "counterweight or a tension carriage moves. Never stand or reach in between."
)

ONE_LINE = (
    "Planning figures only, no design: the local code, the authority, the maker's manual and licensed people decide."
)
