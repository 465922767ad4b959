"""The shapes of what is told about the pictures of a paper set; `views.paper_pictures` fills them."""

from marshmallow.fields import List, Nested, String

from spreadwright.rest.envelopes import Envelope, relations, said, texts


class PictureItem(Envelope):
    """One picture that is there."""

    name = String(metadata=said("By which papers name it.", example="rope.png"))
    sha256 = String(metadata=said("Of its bytes, hexadecimal."))
    faces = List(String(), metadata=said("Where the set names it, as JSON Pointers; empty: nowhere, so far."))
    links = relations()


class PictureList(Envelope):
    """The pictures of a paper set, by name."""

    id = String()
    etag = String(metadata=said("Of the set: what If-Match takes to send or to delete a picture."))
    pictures = List(Nested(PictureItem))
    missing = texts()
