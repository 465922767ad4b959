"""What the reference of the command line shows; the commands describe themselves, one floor above."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Option:
    """One option of a command.

    Attributes:
        names: As they are typed, the short one first.
        value: What is typed after them: a word in capitals, choices, or a range like `1..64`; empty for a switch.
        meaning: One or two sentences.
        default: What holds where it is left out; empty where that is nothing.
        variable: Of the environment, where one is read in its place.
        is_required: Whether it must be given.
        is_repeatable: Whether it may be given several times.
    """

    names: tuple[str, ...]
    value: str
    meaning: str
    default: str = ""
    variable: str = ""
    is_required: bool = False
    is_repeatable: bool = False


@dataclass(frozen=True, slots=True)
class Command:
    """One command: its name as typed (`token create`), how it is called, what it does in paragraphs, its options."""

    name: str
    usage: str
    meaning: tuple[str, ...]
    options: tuple[Option, ...] = ()

    @property
    def id(self) -> str:
        """For links within the page.

        >>> Command("token create", "spreadwright token create [OPTIONS]", ()).id
        'token-create'
        """
        return self.name.replace(" ", "-")
