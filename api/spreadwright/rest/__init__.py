"""The HTTP service."""

from spreadwright.rest.app import create_app
from spreadwright.rest.beginning import settings_for, show_first_token
from spreadwright.rest.server import refuse_taken, serve

__all__ = ["create_app", "refuse_taken", "serve", "settings_for", "show_first_token"]
