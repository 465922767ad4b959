"""A client for programs that use a Spreadwright service: typed, patient, and careful not to overwrite.

    with Client("https://albums.example/", token="spw_...") as client:
        for recipe in client.documents("recipes", tag="seaside"):
            print(recipe["title"])

It needs the extra `client` (httpx), and nothing else of this package.
"""

from spreadwright.client.client import Client
from spreadwright.client.documents import Stored
from spreadwright.client.jobs import Job
from spreadwright.client.problems import Problem, Stale, Unreachable
from spreadwright.client.retries import Patience

__all__ = ["Client", "Job", "Patience", "Problem", "Stale", "Stored", "Unreachable"]
