"""How often a job was begun, so that one which ends every process that takes it is not taken for ever."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade() -> None:
    """From the second shape."""
    op.add_column("jobs", sa.Column("tries", sa.Integer(), nullable=False, server_default="0"))


def downgrade() -> None:
    """To the second shape."""
    op.drop_column("jobs", "tries")
