"""The shapes of what other programs show."""

from marshmallow.fields import Dict, Integer, List, String

from spreadwright.rest.envelopes import Envelope


class JsonFeed(Envelope):
    """JSON Feed 1.1."""

    version = String()
    title = String()
    home_page_url = String()
    feed_url = String()
    items = List(Dict())


class Embedded(Envelope):
    """A photo as oEmbed 1.0 has it; sizes in pixels."""

    version = String()
    type = String()
    title = String()
    author_name = String()
    provider_name = String()
    provider_url = String()
    url = String()
    width = Integer()
    height = Integer()
