"""The shapes of what stands on contact sheets and test strips; `tasks.contact_answers` fills them."""

from marshmallow.fields import Float, Integer, List, Nested, String

from spreadwright.rest.envelopes import Envelope, said


class NamedPaper(Envelope):
    """What a role and its paper are called."""

    role = String()
    paper = String()


class ContactFrame(Envelope):
    """One spread."""

    number = Integer(metadata=said("By which people speak of it, from 1."))
    title = String(metadata=said("Of its paper set, or of its recipe."))
    recipe = String()
    colourway = String(metadata=said("The id by which it is found again."))
    score = Float(metadata=said("0 to 100."))
    papers = List(Nested(NamedPaper))
    reason = String(metadata=said("Why it ranks where it does, in the language of the answer."))


class LeftOut(Envelope):
    """What is not on the sheet, and why."""

    name = String()
    reason = String()


class ContactSheet(Envelope):
    """The spreads of one sheet, in order."""

    title = String()
    language = String()
    about = String()
    notes = List(String(), metadata=said("Whether fewer came than were asked for, and the like."))
    frames = List(Nested(ContactFrame))
    left_out = List(Nested(LeftOut), metadata=said("Sets or recipes that do not fit."))


class PaperPair(Envelope):
    """Two papers that meet, as they are seen."""

    papers = List(String(), metadata=said("Their ids, `~back` after that of a back; empty: the bare page."))
    titles = List(String())
    contrast = Float(metadata=said("Of their luminances, 1 to 21, as WCAG 2.2 defines it."))
    difference = Float(metadata=said("CIEDE2000 units, with what a print adds beside a plainer paper."))
    difference_in_colour = Float(metadata=said("The same with full sight."))


class Sight(Envelope):
    """How the colourway is seen in one way."""

    sight = String(metadata=said("`colour`, `grey`, `protan`, `deutan` or `tritan`."))
    title = String()
    pairs = Integer(metadata=said("How many pairs of different papers meet."))
    lost = List(Nested(PaperPair), metadata=said("Those that are not told apart: a difference below 7."))
    closest = Nested(PaperPair, allow_none=True)
    words = List(String(), metadata=said("The same in sentences."))


class StripOfSights(Envelope):
    """One colourway in colour, as a grey print and under three colour-vision deficiencies."""

    recipe = String()
    language = String()
    set = String()
    colourway = String()
    sights = List(Nested(Sight))
