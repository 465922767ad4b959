"""The first shape: documents and their revisions, what they are found by, tokens, counters and jobs."""

from typing import Any

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
    _add_contents()
    _add_counters()
    _add_jobs()
    _add_tokens()
    _add_documents()
    _add_labels()
    _add_lineage()
    _add_request_keys()
    _add_revisions()
    _add_search()


def downgrade() -> None:
    """To nothing."""
    for table in _TABLES:
        op.drop_table(table)


def _add_contents() -> None:
    op.create_table(
        "contents",
        _needed("digest", sa.String(64)),
        _needed("data", sa.LargeBinary()),
        _key("contents", "digest"),
    )


def _add_counters() -> None:
    op.create_table(
        "counters",
        _needed("name", sa.String(200)),
        _needed("starts", sa.BigInteger()),
        _needed("used", sa.Integer()),
        _needed("ends", sa.BigInteger()),
        _key("counters", "name", "starts"),
    )
    _index("counters", "ends")


def _add_jobs() -> None:
    op.create_table(
        "jobs",
        _needed("id", sa.String(64)),
        _needed("verb", sa.String(64)),
        _needed("owner", sa.String(200)),
        _needed("state", sa.String(16)),
        _needed("progress", sa.Float()),
        _needed("words", sa.Text()),
        _needed("request", sa.LargeBinary()),
        sa.Column("answer", sa.LargeBinary()),
        _needed("media_type", sa.String(100)),
        _needed("made_at", _INSTANT),
        _needed("changed_at", _INSTANT),
        sa.Column("leased_until", _INSTANT),
        _key("jobs", "id"),
    )
    _index("jobs", "owner")
    _index("jobs", "state", "made_at")


def _add_tokens() -> None:
    op.create_table(
        "tokens",
        _needed("id", _KEY),
        _needed("digest", sa.String(64)),
        _needed("hint", sa.String(16)),
        _needed("owner", sa.String(200)),
        _needed("scopes", sa.String(64)),
        _needed("note", sa.Text()),
        _needed("created_at", _INSTANT),
        sa.Column("expires_at", _INSTANT),
        sa.Column("revoked_at", _INSTANT),
        _key("tokens", "id"),
        sa.UniqueConstraint("digest", name="uq_tokens_digest"),
    )
    _index("tokens", "owner")


def _add_documents() -> None:
    op.create_table(
        "documents",
        _needed("key", _KEY),
        _needed("kind", sa.String(32)),
        _needed("id", _PLAIN),
        _needed("revision", sa.Integer()),
        _needed("digest", sa.String(64)),
        _needed("state", sa.String(16)),
        _needed("owner", sa.String(200)),
        _needed("created_at", _INSTANT),
        _needed("changed_at", _INSTANT),
        sa.Column("published_at", _INSTANT),
        _needed("review_note", sa.Text()),
        _needed("pictures", _NAMES),
        _needed("title", _LINE),
        _needed("summary", sa.Text()),
        _needed("licence", sa.String(64)),
        _needed("language", sa.String(35)),
        _needed("pages", sa.Integer()),
        _needed("sheets", sa.Integer()),
        _needed("photos", sa.Integer()),
        _needed("cuts", sa.Integer()),
        _needed("page_width", sa.Integer()),
        _needed("page_height", sa.Integer()),
        _needed("names", _NAMES),
        _needed("words", sa.Text()),
        _refers("documents", "digest", "contents.digest"),
        _key("documents", "key"),
        sa.UniqueConstraint("kind", "id", name="uq_documents_kind_id"),
    )
    _index("documents", "kind", "owner", "key")
    _index("documents", "kind", "state", "changed_at", "key")
    _index("documents", "kind", "state", "created_at", "key")
    _index("documents", "kind", "state", "cuts", "key")
    _index("documents", "kind", "state", "id")
    _index("documents", "kind", "state", "page_width", "page_height", "key")
    _index("documents", "kind", "state", "pages", "key")
    _index("documents", "kind", "state", "photos", "key")
    _index("documents", "kind", "state", "sheets", "key")
    _index("documents", "kind", "state", "title", "key")


def _add_labels() -> None:
    op.create_table(
        "labels",
        _needed("document_key", _KEY),
        _needed("field", sa.String(16)),
        _needed("value", _LINE),
        _refers("labels", "document_key", "documents.key"),
        _key("labels", "document_key", "field", "value"),
    )
    _index("labels", "field", "value", "document_key")


def _add_lineage() -> None:
    op.create_table(
        "lineage",
        _needed("child_key", _KEY),
        _needed("parent_key", _KEY),
        _needed("parent_revision", sa.Integer()),
        _needed("parent_licence", sa.String(64)),
        _needed("place", sa.Integer()),
        _refers("lineage", "child_key", "documents.key"),
        _refers("lineage", "parent_key", "documents.key"),
        _key("lineage", "child_key", "parent_key"),
    )
    _index("lineage", "parent_key")


def _add_request_keys() -> None:
    op.create_table(
        "request_keys",
        _needed("owner", sa.String(200)),
        _needed("key", sa.String(255)),
        _needed("fingerprint", sa.String(64)),
        _needed("document_key", _KEY),
        _needed("made_at", _INSTANT),
        _refers("request_keys", "document_key", "documents.key"),
        _key("request_keys", "owner", "key"),
    )


def _add_revisions() -> None:
    op.create_table(
        "revisions",
        _needed("document_key", _KEY),
        _needed("number", sa.Integer()),
        _needed("action", sa.String(16)),
        _needed("state", sa.String(16)),
        _needed("digest", sa.String(64)),
        _needed("pictures", _NAMES),
        _needed("who", sa.String(200)),
        _needed("at", _INSTANT),
        _needed("note", sa.Text()),
        _refers("revisions", "digest", "contents.digest"),
        _refers("revisions", "document_key", "documents.key"),
        _key("revisions", "document_key", "number"),
    )


def _add_search() -> None:
    """The words of documents: a virtual table of SQLite, or lexemes with an index in PostgreSQL."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute("CREATE VIRTUAL TABLE search USING fts5(words, tokenize='unicode61', prefix='2 3')")
        return
    op.create_table(
        "search",
        _needed("document_key", _KEY),
        _needed("words", TSVECTOR()),
        _refers("search", "document_key", "documents.key"),
        _key("search", "document_key"),
    )
    op.create_index("ix_search_words", "search", ["words"], postgresql_using="gin")


def _needed(name: str, kind: Any) -> sa.Column[Any]:
    """A column that is never empty."""
    return sa.Column(name, kind, nullable=False)


def _key(table: str, *columns: str) -> sa.PrimaryKeyConstraint:
    return sa.PrimaryKeyConstraint(*columns, name=f"pk_{table}")


def _refers(table: str, column: str, to: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint([column], [to], name=f"fk_{table}_{column}_{to.partition('.')[0]}")


def _index(table: str, *columns: str) -> None:
    op.create_index(f"ix_{table}_{'_'.join(columns)}", table, list(columns))
