"""Who refers to a content is found by its hash: for whoever asks for it, and before one is removed."""

from alembic import op

revision = "0002"
down_revision = "0001"

_TABLES = ("documents", "revisions")


def upgrade() -> None:
    """From the first shape."""
    for table in _TABLES:
        op.create_index(f"ix_{table}_digest", table, ["digest"])


def downgrade() -> None:
    """To the first shape."""
    for table in _TABLES:
        op.drop_index(f"ix_{table}_digest", table)
