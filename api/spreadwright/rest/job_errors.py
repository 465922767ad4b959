"""What a client cannot have of a job."""

from spreadwright.errors import SpreadwrightError


class TooManyJobs(SpreadwrightError):
    """As many of a client's jobs are unfinished as may be."""

    def __init__(self, most: int) -> None:
        super().__init__(most)
        self.most = most
        self.seconds = 5

    def __str__(self) -> str:
        return f"{self.most} of your jobs are unfinished; wait for one of them, or cancel it."


class Unfinished(SpreadwrightError):
    """The result of a job that is not done, or never will be."""

    def __init__(self, state: str) -> None:
        super().__init__(state)
        self.state = state
        self.seconds = 1

    def __str__(self) -> str:
        return f"The job is {self.state}; a result has only one that is done or failed."
