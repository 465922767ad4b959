"""A PostgreSQL of our own: a private cluster on a free port, made for the tests and gone with them."""

import os
import pwd
import shutil
import socket
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import psycopg

INSTALL = ["apt-get", "install", "-y", "-qq", "--no-install-recommends", "postgresql"]
ADVICE = "The tests need PostgreSQL's initdb and postgres. On Debian, as root: apt-get install postgresql"


@contextmanager
def cluster() -> Iterator[str]:
    """The address of an empty cluster, without the name of a database."""
    programs = _programs()
    folder = Path(tempfile.mkdtemp(prefix="spreadwright-pg-"))
    owner = _owner()
    shutil.chown(folder, owner)
    port = _free_port()

    def run(program: str, *arguments: str) -> None:
        log = folder / "log"
        done = subprocess.run(
            [str(programs / program), "-D", str(folder / "data"), *arguments],
            user=owner,
            cwd=folder,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE if program == "initdb" else None,
            check=False,
        )
        if done.returncode:
            raise RuntimeError(
                f"{program} failed: {(done.stderr or b'').decode()} {log.read_text() if log.exists() else ''}"
            )

    run("initdb", "-U", "keeper", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync")
    options = f"-p {port} -k {folder} -c listen_addresses=127.0.0.1 -c max_connections=120 -c fsync=off"
    try:
        run("pg_ctl", "-w", "-l", str(folder / "log"), "-o", options, "start")
        yield f"postgresql://keeper@127.0.0.1:{port}"
    finally:
        run("pg_ctl", "-m", "immediate", "stop")
        shutil.rmtree(folder, ignore_errors=True)


@contextmanager
def database(cluster_address: str, name: str, template: str = "template0") -> Iterator[str]:
    """The address of a new database."""
    with psycopg.connect(f"{cluster_address}/postgres", autocommit=True) as connection:
        connection.execute(f"CREATE DATABASE {name} TEMPLATE {template}")
        yield f"{cluster_address}/{name}"
        connection.execute(f"DROP DATABASE {name} WITH (FORCE)")


def _programs() -> Path:
    found = _installed()
    if found is None and os.getuid() == 0 and shutil.which("apt-get"):
        subprocess.run(["apt-get", "update", "-qq"], check=True)
        subprocess.run(
            INSTALL, check=True, stdout=subprocess.DEVNULL, env={**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        )
        found = _installed()
    if found is None:
        raise RuntimeError(ADVICE)
    return found


def _installed() -> Path | None:
    """The folder that holds both programs; links are followed, since PostgreSQL looks for its files beside itself."""
    there = [Path(name).resolve().parent for name in [shutil.which("initdb")] if name]
    there += sorted(Path("/usr/lib/postgresql").glob("*/bin"), reverse=True)
    return next((folder for folder in there if (folder / "postgres").exists() and (folder / "initdb").exists()), None)


def _owner() -> int:
    """Somebody else than root, as whom PostgreSQL refuses to run."""
    if os.getuid() != 0:
        return os.getuid()
    for name in ("postgres", "nobody"):
        try:
            return pwd.getpwnam(name).pw_uid
        except KeyError:
            continue
    raise RuntimeError("There is nobody but root to run PostgreSQL as.")


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port
