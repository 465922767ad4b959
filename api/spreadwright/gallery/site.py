"""What holds for the whole gallery: its languages, where people will find it, and the service that it may ask."""

from dataclasses import dataclass

from spreadwright.words import LANGUAGES


@dataclass(frozen=True, slots=True)
class Alternate:
    """The same page in one of the languages; `name` is what the language calls itself."""

    language: str
    name: str
    path: str


@dataclass(frozen=True, slots=True)
class Site:
    """The whole gallery.

    Attributes:
        languages: BCP 47 tags, at least one; pages in the first lie at the root, others in a folder each.
        address: Where the gallery will be found, absolute; empty where that is not known.
        api: Where a service answers for its recipes: absolute, from `/` on, or ``.`` for the site itself; empty where
            there is none.
    """

    languages: tuple[str, ...] = LANGUAGES
    address: str = ""
    api: str = ""

    def home(self, language: str) -> str:
        """What stands before the path of every page in a language; one that is not spoken is at home in the first.

        >>> site = Site(("en", "de"))
        >>> site.home("en"), site.home("de"), site.home("fr")
        ('', 'de/', '')
        """
        return f"{language}/" if language in self.languages[1:] else ""

    def alternates(self, path: str) -> tuple[Alternate, ...]:
        """A page, named by its path below the home of its language, in all languages."""
        return tuple(Alternate(each, own_name(each), self.home(each) + path) for each in self.languages)


def own_name(language: str) -> str:
    """What a language calls itself.

    >>> own_name("de"), own_name("fr")
    ('Deutsch', 'français')
    """
    from babel import Locale

    return str(Locale.parse(language, sep="-").get_language_name(language))
