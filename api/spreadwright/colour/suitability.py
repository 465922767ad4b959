"""How well papers suit photographs.

How alike a colour of a paper and one of a photograph are: 1 for the same, falling to nothing at `UNLIKE` units of
CIEDE2000, with half the difference in lightness; for papers in tints and shades of a photograph's hue suit it as well.

    fit of a colour    = 60 % how like it is to the photographs' nearest colour
                       + 40 % how much of the photographs is like it, where all of it like it is 1
    papers of no hue   fit at least `NEUTRAL`: they suit whatever is to lie on them
    louder than photos what is more colourful than the photographs by `TOO_LOUD` loses `LOUD` of its fit
    fit of a face      = the mean of its colours, by their shares
    fit of a set       = 55 % how well the photographs' colours, by the roots of their shares, are found among its faces
                       + 45 % the mean of its faces
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from spreadwright.colour.difference import ciede2000
from spreadwright.colour.palette import Tone
from spreadwright.colour.spaces import Floats, chroma

UNLIKE = 36.0
NEAREST, MUCH = 0.6, 0.4
NEUTRAL, NO_HUE = 0.62, 14.0
"""What papers of no hue fit, and the chroma at which a paper has one, CIELAB units."""
LOUD, TOO_LOUD = 0.4, 45.0
FOUND_AGAIN, OF_ITS_FACES = 0.55, 0.45


@dataclass(frozen=True, slots=True)
class Fit:
    """How well a face suits photographs.

    Attributes:
        value: 0 to 1.
        nearest: The colour of the photographs that it is most like.
        likeness: How alike they are, 0 to 1.
    """

    value: float
    nearest: Tone
    likeness: float


def face_fit(face: Sequence[Tone], photographs: Sequence[Tone]) -> Fit:
    """How well a face, as its palette, suits photographs, as theirs."""
    alike = likeness(face, photographs)
    shares = np.array([tone.share for tone in photographs])
    much = np.minimum(alike @ shares / shares.sum(), 1)
    values = NEAREST * alike.max(axis=1) + MUCH * much
    own = chroma([tone.lab for tone in face])
    values = np.maximum(values, NEUTRAL * np.clip(1 - own / NO_HUE, 0, 1))
    louder = np.clip((own - loudest(photographs)) / TOO_LOUD, 0, 1)
    weights = np.array([tone.share for tone in face])
    near = np.average(alike, axis=0, weights=weights)
    best = int(np.argmax(near))
    value = float(np.average(values * (1 - LOUD * louder), weights=weights))
    return Fit(value, photographs[best], float(near[best]))


def set_fit(faces: Sequence[Sequence[Tone]], photographs: Sequence[Tone]) -> float:
    """How well the faces of a set, as their palettes, suit photographs, 0 to 1."""
    again = np.max([likeness(face, photographs).max(axis=0) for face in faces], axis=0)
    weights = np.sqrt([tone.share for tone in photographs])
    mean = float(np.mean([face_fit(face, photographs).value for face in faces]))
    return FOUND_AGAIN * float(np.average(again, weights=weights)) + OF_ITS_FACES * mean


def likeness(some: Sequence[Tone], others: Sequence[Tone]) -> Floats:
    """How alike colours are, each of some with each of others, 0 to 1."""
    one, other = (np.array([tone.lab for tone in tones]) for tones in (some, others))
    here, there = np.broadcast_arrays(one[:, None, :], other[None, :, :])
    nearer = there.copy()
    nearer[..., 0] = (here[..., 0] + there[..., 0]) / 2
    return np.clip(1 - ciede2000(here, nearer) / UNLIKE, 0, 1)


def loudest(photographs: Sequence[Tone]) -> float:
    """How colourful photographs are: of what has a say in them, the most colourful, CIELAB units."""
    return max(float(chroma(tone.lab)) * min(1.0, tone.share / _A_SAY) for tone in photographs)


_A_SAY = 0.05
"""Share from which a colour has its full say."""
