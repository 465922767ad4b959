"""The shapes of what is answered about photographs that were uploaded; `tasks.match_answers` fills them."""

from marshmallow.fields import Dict, Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import ChosenPaper, Envelope, Finding, said
from spreadwright.rest.print_envelopes import PixelSize, PlainSize


class Tone(Envelope):
    """One colour of a palette."""

    colour = String(metadata=said("As #rrggbb.", example="#043432"))
    name = String(metadata=said("In plain words.", example="dark teal"))
    share = Float(metadata=said("Of the area, 0 to 1."))


class UploadedPhotograph(Envelope):
    """A photograph, upright."""

    name = String(metadata=said("Of its file."))
    pixels = Nested(PixelSize)
    palette = List(Nested(Tone))


class SuitingPaper(Envelope):
    """One face of a paper, and how well it suits the photographs."""

    paper = String()
    title = String()
    side = String()
    photos = Float(metadata=said("How well it suits them, 0 to 100."))
    nearest = String(metadata=said("The photographs' colour that it is most like."))
    likeness = Float(metadata=said("How alike they are, 0 to 1."))


class SuitingColourway(Envelope):
    """Which paper plays which role."""

    id = String()
    set = String()
    roles = Dict(keys=String(), values=Nested(ChosenPaper))


class Suit(Envelope):
    """A paper set, or one of its colourways."""

    set = String()
    title = String()
    score = Float(metadata=said("0 to 100; with a recipe 60 % of it is how the papers suit the photographs."))
    photos = Float(metadata=said("How well the papers suit the photographs, 0 to 100."))
    parts = Dict(keys=String(), values=Float(), metadata=said("Of a colourway's score, 0 to 100 each."))
    colourway = Nested(SuitingColourway, allow_none=True)
    papers = List(Nested(SuitingPaper))
    words = String(metadata=said("Which papers are close to which colours."))
    reason = String(metadata=said("Why a colourway ranks where it does in its set; empty without a recipe."))


class PixelBox(Envelope):
    """A part of an upright photograph, pixels from its top left corner."""

    left = Integer()
    top = Integer()
    width = Integer()
    height = Integer()


class PhotographInMat(Envelope):
    """Where a photograph lies, and what is seen of it."""

    photograph = Integer(metadata=said("Its number among the photographs, from 0."))
    name = String()
    on = String()
    mark = String()
    page = String()
    size = Nested(PlainSize, metadata=said("On paper."))
    crop = Nested(PixelBox)
    lost = Float(metadata=said("The share of its area that is cut off, 0 to 1."))
    kept = Float(metadata=said("The share that stays of what draws the eye, 0 to 1."))
    pixels_per_inch = Float(metadata=said("On paper."))


class Match(Envelope):
    """The colours of photographs, the papers that suit them, and their places on the mats of a recipe."""

    recipe = String(allow_none=True)
    ticks_per_mm = Integer()
    ticks_per_inch = Integer()
    photographs = List(Nested(UploadedPhotograph))
    palette = List(Nested(Tone), metadata=said("Of all photographs, each counting alike."))
    suits = List(Nested(Suit), metadata=said("The best first."))
    in_mats = List(Nested(PhotographInMat), metadata=said("Without a recipe there are none."))
    left_over = List(Integer(), metadata=said("Photographs for which no mat was left."))
    empty = List(String(), metadata=said("Mats for which no photograph was left."))
    findings = List(Nested(Finding))
