"""The store that the environment names; one of this run alone would be of no use to commands."""

import os
from typing import TYPE_CHECKING

from spreadwright.store.errors import BadAddress

if TYPE_CHECKING:  # SQL is loaded by those alone who need it
    from spreadwright.store.opening import Store


def named_store() -> "Store":
    """The store of the service.

    Raises:
        BadAddress: The environment names none.
    """
    from spreadwright.store.database import VARIABLE
    from spreadwright.store.opening import open_store

    address = os.environ.get(VARIABLE, "")
    if not address:
        raise BadAddress(
            VARIABLE, "set it to the database of the service, such as sqlite:////srv/spreadwright/store.db."
        )
    return open_store(address)
