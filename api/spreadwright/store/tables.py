"""The tables, as models; `migrations` makes them, and a test compares the two."""

from datetime import UTC, datetime

from sqlalchemy import (
    JSON,
    BigInteger,
    DateTime,
    Dialect,
    Float,
    ForeignKey,
    Index,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Text,
    TypeDecorator,
    UniqueConstraint,
)
from sqlalchemy.dialects.postgresql import JSONB
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

NAMING = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s_%(referred_table_name)s",
    "pk": "pk_%(table_name)s",
}
Key = BigInteger().with_variant(Integer, "sqlite")
"""SQLite numbers rows by itself only where the type is INTEGER."""
Names = JSON().with_variant(JSONB(), "postgresql")
Plain = String(64, collation="C").with_variant(String(64), "sqlite")
"""Ids sort by code point on both, whatever language a server speaks."""
Line = String(400, collation="C").with_variant(String(400), "sqlite")


class Instant(TypeDecorator[datetime]):
    """A point in time, UTC; SQLite has no time zones, so it is kept there without."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """To what the database keeps."""
        if value is None:
            return None
        moment = value.astimezone(UTC)
        return moment.replace(tzinfo=None) if dialect.name == "sqlite" else moment

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """From what the database keeps."""
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Base(DeclarativeBase):
    """Every table."""

    metadata = MetaData(naming_convention=NAMING)


class ContentRow(Base):
    """Bytes by their hash: what stands in documents, and pictures. Written once, never changed."""

    __tablename__ = "contents"
    digest: Mapped[str] = mapped_column(String(64), primary_key=True)
    data: Mapped[bytes] = mapped_column(LargeBinary)


class DocumentRow(Base):
    """A document as it stands, with what it is found by."""

    __tablename__ = "documents"
    key: Mapped[int] = mapped_column(Key, primary_key=True, autoincrement=True)
    kind: Mapped[str] = mapped_column(String(32))
    id: Mapped[str] = mapped_column(Plain)
    revision: Mapped[int] = mapped_column(Integer)
    digest: Mapped[str] = mapped_column(ForeignKey("contents.digest"), index=True)
    state: Mapped[str] = mapped_column(String(16))
    owner: Mapped[str] = mapped_column(String(200))
    created_at: Mapped[datetime] = mapped_column(Instant)
    changed_at: Mapped[datetime] = mapped_column(Instant)
    published_at: Mapped[datetime | None] = mapped_column(Instant)
    review_note: Mapped[str] = mapped_column(Text, default="")
    pictures: Mapped[dict[str, str]] = mapped_column(Names)
    title: Mapped[str] = mapped_column(Line)
    summary: Mapped[str] = mapped_column(Text)
    licence: Mapped[str] = mapped_column(String(64))
    language: Mapped[str] = mapped_column(String(35))
    pages: Mapped[int] = mapped_column(Integer)
    sheets: Mapped[int] = mapped_column(Integer)
    photos: Mapped[int] = mapped_column(Integer)
    cuts: Mapped[int] = mapped_column(Integer)
    page_width: Mapped[int] = mapped_column(Integer)
    page_height: Mapped[int] = mapped_column(Integer)
    names: Mapped[dict[str, list[str]]] = mapped_column(Names)
    words: Mapped[str] = mapped_column(Text)

    __table_args__ = (
        UniqueConstraint("kind", "id"),
        Index(None, "kind", "state", "id"),
        Index(None, "kind", "state", "title", "key"),
        Index(None, "kind", "state", "created_at", "key"),
        Index(None, "kind", "state", "changed_at", "key"),
        Index(None, "kind", "state", "pages", "key"),
        Index(None, "kind", "state", "sheets", "key"),
        Index(None, "kind", "state", "photos", "key"),
        Index(None, "kind", "state", "cuts", "key"),
        Index(None, "kind", "state", "page_width", "page_height", "key"),
        Index(None, "kind", "owner", "key"),
    )


class RevisionRow(Base):
    """One step in the life of a document."""

    __tablename__ = "revisions"
    document_key: Mapped[int] = mapped_column(ForeignKey("documents.key"), primary_key=True)
    number: Mapped[int] = mapped_column(Integer, primary_key=True)
    action: Mapped[str] = mapped_column(String(16))
    state: Mapped[str] = mapped_column(String(16))
    digest: Mapped[str] = mapped_column(ForeignKey("contents.digest"), index=True)
    pictures: Mapped[dict[str, str]] = mapped_column(Names)
    who: Mapped[str] = mapped_column(String(200))
    at: Mapped[datetime] = mapped_column(Instant)
    note: Mapped[str] = mapped_column(Text)


class LabelRow(Base):
    """One of several values of a document: a tag, an author, a role, its licence or its language."""

    __tablename__ = "labels"
    document_key: Mapped[int] = mapped_column(ForeignKey("documents.key"), primary_key=True)
    field: Mapped[str] = mapped_column(String(16), primary_key=True)
    value: Mapped[str] = mapped_column(Line, primary_key=True)

    __table_args__ = (Index(None, "field", "value", "document_key"),)


class LineageRow(Base):
    """What a document is derived from, and from which revision: the licence of that one binds."""

    __tablename__ = "lineage"
    child_key: Mapped[int] = mapped_column(ForeignKey("documents.key"), primary_key=True)
    parent_key: Mapped[int] = mapped_column(ForeignKey("documents.key"), primary_key=True, index=True)
    parent_revision: Mapped[int] = mapped_column(Integer)
    parent_licence: Mapped[str] = mapped_column(String(64))
    place: Mapped[int] = mapped_column(Integer)


class RequestKeyRow(Base):
    """A request that created a document, so that the same request again finds it."""

    __tablename__ = "request_keys"
    owner: Mapped[str] = mapped_column(String(200), primary_key=True)
    key: Mapped[str] = mapped_column(String(255), primary_key=True)
    fingerprint: Mapped[str] = mapped_column(String(64))
    document_key: Mapped[int] = mapped_column(ForeignKey("documents.key"))
    made_at: Mapped[datetime] = mapped_column(Instant)


class TokenRow(Base):
    """A token, of which only the hash is known here."""

    __tablename__ = "tokens"
    id: Mapped[int] = mapped_column(Key, primary_key=True, autoincrement=True)
    digest: Mapped[str] = mapped_column(String(64), unique=True)
    hint: Mapped[str] = mapped_column(String(16))
    owner: Mapped[str] = mapped_column(String(200), index=True)
    scopes: Mapped[str] = mapped_column(String(64))
    note: Mapped[str] = mapped_column(Text)
    created_at: Mapped[datetime] = mapped_column(Instant)
    expires_at: Mapped[datetime | None] = mapped_column(Instant)
    revoked_at: Mapped[datetime | None] = mapped_column(Instant)


class CounterRow(Base):
    """How often something happened in one window of time."""

    __tablename__ = "counters"
    name: Mapped[str] = mapped_column(String(200), primary_key=True)
    starts: Mapped[int] = mapped_column(BigInteger, primary_key=True)
    used: Mapped[int] = mapped_column(Integer)
    ends: Mapped[int] = mapped_column(BigInteger, index=True)


class JobRow(Base):
    """Work that takes longer than a request."""

    __tablename__ = "jobs"
    id: Mapped[str] = mapped_column(String(64), primary_key=True)
    verb: Mapped[str] = mapped_column(String(64))
    owner: Mapped[str] = mapped_column(String(200), index=True)
    state: Mapped[str] = mapped_column(String(16))
    progress: Mapped[float] = mapped_column(Float)
    words: Mapped[str] = mapped_column(Text)
    request: Mapped[bytes] = mapped_column(LargeBinary)
    answer: Mapped[bytes | None] = mapped_column(LargeBinary)
    media_type: Mapped[str] = mapped_column(String(100))
    made_at: Mapped[datetime] = mapped_column(Instant)
    changed_at: Mapped[datetime] = mapped_column(Instant)
    leased_until: Mapped[datetime | None] = mapped_column(Instant)
    tries: Mapped[int] = mapped_column(Integer, server_default="0")

    __table_args__ = (Index(None, "state", "made_at"),)
