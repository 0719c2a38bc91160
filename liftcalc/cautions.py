"""The cautions, word for word: the field sheet prints them, and the tests hold the notebooks to them."""

DEFER = (
    "This series teaches planning figures. It is no design, no permit and no instruction to change a lift. The local "
    "code, the authority having jurisdiction, the maker's manual and licensed people decide."
)

NEAR_THE_ROPE = (
    "Measure only with the operator's permission, and tell the attendant what you are about to do.",
    "Ropes turn and wind in scarves, hair, drawstrings and straps: tuck everything in.",
    "No phone and no tape in your hand while you hold the rope.",
    "Tape a length, measure the spacing of carriers, or put a mark on the rope only with the lift stopped and locked "
    "out by the operator.",
    "Take the spacing of riders from a photo made from outside the track; riders never wait on the rope to be "
    "measured.",
    "Count from outside the track and the unload area.",
    "Never step over a rope, moving or stopped, unless it is locked out. Never near a sheave: keep well out of reach "
    "of sheaves and drives, running or stopped.",
)

ON_THE_ROPE = (
    "When the rope stops, let go, clear the track, and stay clear: no restart until the track is seen to be clear.",
    "Nobody wraps the rope round a hand or an arm. Gripping devices only as the code and the operator allow.",
    "Planning figures are no design: spacing, line speed and stop gates are changed by licensed people, the maker and "
    "the authority, and stop gates are tested as the maker's manual and the code say.",
)

ONE_LINE = "Planning figures only: the local code, the authority and the maker's manual decide."
