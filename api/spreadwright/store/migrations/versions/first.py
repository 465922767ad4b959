"""The first shape: documents and their revisions, what they are found by, tokens, counters and jobs."""

import sqlalchemy as sa
from alembic import op
from sqlalchemy.dialects.postgresql import JSONB, TSVECTOR

revision = "0001"
down_revision = None

_KEY = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_NAMES = sa.JSON().with_variant(JSONB(), "postgresql")
_PLAIN = sa.String(64, collation="C").with_variant(sa.String(64), "sqlite")
_LINE = sa.String(400, collation="C").with_variant(sa.String(400), "sqlite")
_INSTANT = sa.DateTime(timezone=True)

_TABLES = (
    "search",
    "revisions",
    "request_keys",
    "lineage",
    "labels",
    "documents",
    "tokens",
    "jobs",
    "counters",
    "contents",
)


def upgrade() -> None:
    """From nothing."""
    op.create_table(
        "contents",
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("data", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("digest", name="pk_contents"),
    )
    op.create_table(
        "counters",
        sa.Column("name", sa.String(length=200), nullable=False),
        sa.Column("starts", sa.BigInteger(), nullable=False),
        sa.Column("used", sa.Integer(), nullable=False),
        sa.Column("ends", sa.BigInteger(), nullable=False),
        sa.PrimaryKeyConstraint("name", "starts", name="pk_counters"),
    )
    op.create_index("ix_counters_ends", "counters", ["ends"])
    op.create_table(
        "jobs",
        sa.Column("id", sa.String(length=64), nullable=False),
        sa.Column("verb", sa.String(length=64), nullable=False),
        sa.Column("owner", sa.String(length=200), nullable=False),
        sa.Column("state", sa.String(length=16), nullable=False),
        sa.Column("progress", sa.Float(), nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.Column("request", sa.LargeBinary(), nullable=False),
        sa.Column("answer", sa.LargeBinary(), nullable=True),
        sa.Column("media_type", sa.String(length=100), nullable=False),
        sa.Column("made_at", _INSTANT, nullable=False),
        sa.Column("changed_at", _INSTANT, nullable=False),
        sa.Column("leased_until", _INSTANT, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_jobs"),
    )
    op.create_index("ix_jobs_owner", "jobs", ["owner"])
    op.create_index("ix_jobs_state_made_at", "jobs", ["state", "made_at"])
    op.create_table(
        "tokens",
        sa.Column("id", _KEY, autoincrement=True, nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("hint", sa.String(length=16), nullable=False),
        sa.Column("owner", sa.String(length=200), nullable=False),
        sa.Column("scopes", sa.String(length=64), nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.Column("created_at", _INSTANT, nullable=False),
        sa.Column("expires_at", _INSTANT, nullable=True),
        sa.Column("revoked_at", _INSTANT, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_tokens"),
        sa.UniqueConstraint("digest", name="uq_tokens_digest"),
    )
    op.create_index("ix_tokens_owner", "tokens", ["owner"])
    op.create_table(
        "documents",
        sa.Column("key", _KEY, autoincrement=True, nullable=False),
        sa.Column("kind", sa.String(length=32), nullable=False),
        sa.Column("id", _PLAIN, nullable=False),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("state", sa.String(length=16), nullable=False),
        sa.Column("owner", sa.String(length=200), nullable=False),
        sa.Column("created_at", _INSTANT, nullable=False),
        sa.Column("changed_at", _INSTANT, nullable=False),
        sa.Column("published_at", _INSTANT, nullable=True),
        sa.Column("review_note", sa.Text(), nullable=False),
        sa.Column("pictures", _NAMES, nullable=False),
        sa.Column("title", _LINE, nullable=False),
        sa.Column("summary", sa.Text(), nullable=False),
        sa.Column("licence", sa.String(length=64), nullable=False),
        sa.Column("language", sa.String(length=35), nullable=False),
        sa.Column("pages", sa.Integer(), nullable=False),
        sa.Column("sheets", sa.Integer(), nullable=False),
        sa.Column("photos", sa.Integer(), nullable=False),
        sa.Column("cuts", sa.Integer(), nullable=False),
        sa.Column("page_width", sa.Integer(), nullable=False),
        sa.Column("page_height", sa.Integer(), nullable=False),
        sa.Column("names", _NAMES, nullable=False),
        sa.Column("words", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["digest"], ["contents.digest"], name="fk_documents_digest_contents"),
        sa.PrimaryKeyConstraint("key", name="pk_documents"),
        sa.UniqueConstraint("kind", "id", name="uq_documents_kind_id"),
    )
    op.create_index("ix_documents_kind_owner_key", "documents", ["kind", "owner", "key"])
    op.create_index("ix_documents_kind_state_changed_at_key", "documents", ["kind", "state", "changed_at", "key"])
    op.create_index("ix_documents_kind_state_created_at_key", "documents", ["kind", "state", "created_at", "key"])
    op.create_index("ix_documents_kind_state_cuts_key", "documents", ["kind", "state", "cuts", "key"])
    op.create_index("ix_documents_kind_state_id", "documents", ["kind", "state", "id"])
    op.create_index(
        "ix_documents_kind_state_page_width_page_height_key",
        "documents",
        ["kind", "state", "page_width", "page_height", "key"],
    )
    op.create_index("ix_documents_kind_state_pages_key", "documents", ["kind", "state", "pages", "key"])
    op.create_index("ix_documents_kind_state_photos_key", "documents", ["kind", "state", "photos", "key"])
    op.create_index("ix_documents_kind_state_sheets_key", "documents", ["kind", "state", "sheets", "key"])
    op.create_index("ix_documents_kind_state_title_key", "documents", ["kind", "state", "title", "key"])
    op.create_table(
        "labels",
        sa.Column("document_key", _KEY, nullable=False),
        sa.Column("field", sa.String(length=16), nullable=False),
        sa.Column("value", _LINE, nullable=False),
        sa.ForeignKeyConstraint(["document_key"], ["documents.key"], name="fk_labels_document_key_documents"),
        sa.PrimaryKeyConstraint("document_key", "field", "value", name="pk_labels"),
    )
    op.create_index("ix_labels_field_value_document_key", "labels", ["field", "value", "document_key"])
    op.create_table(
        "lineage",
        sa.Column("child_key", _KEY, nullable=False),
        sa.Column("parent_key", _KEY, nullable=False),
        sa.Column("parent_revision", sa.Integer(), nullable=False),
        sa.Column("parent_licence", sa.String(length=64), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["child_key"], ["documents.key"], name="fk_lineage_child_key_documents"),
        sa.ForeignKeyConstraint(["parent_key"], ["documents.key"], name="fk_lineage_parent_key_documents"),
        sa.PrimaryKeyConstraint("child_key", "parent_key", name="pk_lineage"),
    )
    op.create_index("ix_lineage_parent_key", "lineage", ["parent_key"])
    op.create_table(
        "request_keys",
        sa.Column("owner", sa.String(length=200), nullable=False),
        sa.Column("key", sa.String(length=255), nullable=False),
        sa.Column("fingerprint", sa.String(length=64), nullable=False),
        sa.Column("document_key", _KEY, nullable=False),
        sa.Column("made_at", _INSTANT, nullable=False),
        sa.ForeignKeyConstraint(["document_key"], ["documents.key"], name="fk_request_keys_document_key_documents"),
        sa.PrimaryKeyConstraint("owner", "key", name="pk_request_keys"),
    )
    op.create_table(
        "revisions",
        sa.Column("document_key", _KEY, nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("action", sa.String(length=16), nullable=False),
        sa.Column("state", sa.String(length=16), nullable=False),
        sa.Column("digest", sa.String(length=64), nullable=False),
        sa.Column("pictures", _NAMES, nullable=False),
        sa.Column("who", sa.String(length=200), nullable=False),
        sa.Column("at", _INSTANT, nullable=False),
        sa.Column("note", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["digest"], ["contents.digest"], name="fk_revisions_digest_contents"),
        sa.ForeignKeyConstraint(["document_key"], ["documents.key"], name="fk_revisions_document_key_documents"),
        sa.PrimaryKeyConstraint("document_key", "number", name="pk_revisions"),
    )
    _add_search()


def downgrade() -> None:
    """To nothing."""
    for table in _TABLES:
        op.drop_table(table)


def _add_search() -> None:
    """The words of documents: a virtual table of SQLite, or lexemes with an index in PostgreSQL."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute("CREATE VIRTUAL TABLE search USING fts5(words, tokenize='unicode61', prefix='2 3')")
        return
    op.create_table(
        "search",
        sa.Column("document_key", _KEY, sa.ForeignKey("documents.key", name="fk_search_document_key_documents")),
        sa.Column("words", TSVECTOR(), nullable=False),
        sa.PrimaryKeyConstraint("document_key", name="pk_search"),
    )
    op.create_index("ix_search_words", "search", ["words"], postgresql_using="gin")
