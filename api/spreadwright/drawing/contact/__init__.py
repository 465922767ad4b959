"""Many small spreads on one sheet: contact sheets, and test strips of one spread in several kinds of sight."""

from spreadwright.drawing.contact.book import contact_html, contact_pdf
from spreadwright.drawing.contact.frame import ContactSheet, Frame, Layout, LeftOut
from spreadwright.drawing.contact.picture import contact_picture
from spreadwright.drawing.contact.strip import Exposure, StripPlan, strip_picture
from spreadwright.drawing.contact.strip_book import strip_pdf

__all__ = [
    "ContactSheet",
    "Exposure",
    "Frame",
    "Layout",
    "LeftOut",
    "StripPlan",
    "contact_html",
    "contact_pdf",
    "contact_picture",
    "strip_pdf",
    "strip_picture",
]
