"""How a service begins: with what its environment says, and on one machine with a token to write with."""

import sys
from ipaddress import ip_address

from flask import Flask

from spreadwright.errors import SpreadwrightError
from spreadwright.rest.service import Service
from spreadwright.rest.settings import Settings, variable
from spreadwright.store.values import SCOPES

FIRST_OWNER = "me"


class NotConfigured(SpreadwrightError):
    """A service for other machines that would forget everything at its end."""

    def __init__(self, host: str) -> None:
        super().__init__(host)
        self.host = host

    def __str__(self) -> str:
        return (
            f"“{self.host}” can be reached from other machines. Set {variable('database_url')} first, so that "
            "what they write is kept, or listen on 127.0.0.1."
        )


def is_loopback(host: str) -> bool:
    """Whether only this machine reaches an address."""
    if host == "localhost":
        return True
    try:
        return ip_address(host).is_loopback
    except ValueError:
        return False


def settings_for(host: str) -> Settings:
    """What the environment says.

    Raises:
        BadSetting: Something in it is not understood.
        NotConfigured: Other machines reach the address, and no database is named.
    """
    is_public = not is_loopback(host)
    settings = Settings.from_environment(is_public=is_public)
    if is_public and not settings.database_url:
        raise NotConfigured(host)
    return settings


def show_first_token(app: Flask, host: str) -> None:
    """Makes and shows a token on stderr where there is none yet and only this machine reaches the service."""
    service: Service = app.extensions["spreadwright"]
    tokens = service.store.tokens
    if not is_loopback(host) or tokens.list():
        return
    issued = tokens.create(FIRST_OWNER, SCOPES, note="The first one, shown by serve.")
    print(f"A token for writing, shown this once: {issued.secret}", file=sys.stderr, flush=True)
