"""The booklet: everything that a class needs on paper, from the cover to the last photograph."""

from spreadwright.drawing.booklet.book import booklet_html, booklet_pdf
from spreadwright.drawing.booklet.plan import BookletPlan, Exactness, Format, PhotoLine

__all__ = ["BookletPlan", "Exactness", "Format", "PhotoLine", "booklet_html", "booklet_pdf"]
