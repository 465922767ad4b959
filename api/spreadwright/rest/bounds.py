"""What the configuration allows less of than the service could do."""

from spreadwright.rest.forms import Arguments
from spreadwright.rest.parameters import BadQuery, WrongParameter
from spreadwright.rest.service import service


def refuse_beyond(arguments: Arguments) -> None:
    """Nothing, where a query stays within what is configured.

    Raises:
        BadQuery: With every parameter that does not.
    """
    settings = service().settings
    most = {"width": (settings.widest_px, "px"), "seconds": (settings.search_s, "s")}
    wrong = [
        WrongParameter("wrong-parameter", name, f"The parameter “{name}” is more than {bound} {unit}.", "Ask for less.")
        for name, (bound, unit) in most.items()
        if arguments.get(name, 0) > bound
    ]
    if wrong:
        raise BadQuery(wrong)
