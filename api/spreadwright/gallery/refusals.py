"""Why there is no gallery, besides faults of documents."""

from spreadwright.errors import SpreadwrightError


class GalleryNotBuilt(SpreadwrightError):
    """The pages could not be put together; what was found wrong stands in the log of MkDocs, if it gave up."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason

    def __str__(self) -> str:
        return f"The gallery was not built: {self.reason}"


class CannotFetch(SpreadwrightError):
    """A service does not give its documents."""

    def __init__(self, address: str, reason: str) -> None:
        super().__init__(address, reason)
        self.address = address
        self.reason = reason

    def __str__(self) -> str:
        return f"Nothing comes from {self.address}: {self.reason.rstrip('.')}."
