"""Counting in Redis: by a real server where one is installed, by a stand-in everywhere."""

import shutil
import subprocess
import time
from dataclasses import replace

import pytest

from spreadwright.rest import create_app
from spreadwright.rest.settings import Settings
from spreadwright.store import Collection
from spreadwright.store.errors import BadAddress
from spreadwright.store.opening import open_store
from spreadwright.store.redis_counters import RedisCounters, redis_at

redis = pytest.importorskip("redis")


@pytest.fixture(scope="module")
def address(tmp_path_factory):
    """The address of a server of our own."""
    program = shutil.which("redis-server")
    if program is None:
        pytest.skip("needs a Redis; on Debian, as root: apt-get install redis-server")
    socket = tmp_path_factory.mktemp("redis") / "socket"
    options = [
        "--port",
        "0",
        "--unixsocket",
        str(socket),
        "--save",
        "",
        "--appendonly",
        "no",
        "--dir",
        str(socket.parent),
    ]
    process = subprocess.Popen([program, *options], stdout=subprocess.DEVNULL)
    try:
        end = time.monotonic() + 10
        while not socket.exists() and time.monotonic() < end:
            time.sleep(0.02)
        yield f"unix://{socket}"
    finally:
        process.terminate()
        process.wait()


@pytest.fixture(params=["server", "stand-in"])
def server(request):
    if request.param == "server":
        found = redis_at(request.getfixturevalue("address"))
    else:
        found = pytest.importorskip("fakeredis").FakeRedis()
    found.flushall()
    yield found
    found.close()


@pytest.fixture
def database(tmp_path):
    """A store without a Redis."""
    opened = open_store(f"sqlite:///{tmp_path}/store.db")
    yield opened
    opened.database.dispose()


@pytest.fixture
def counters(server, database):
    return RedisCounters(server, database.counters, database.database.now)


def test_it_counts_as_the_database_does(counters, database):
    for name, by in (("ann", 1), ("ann", 3), ("bob", 1), ("x" * 5000, 2), ("x" * 5000, 1)):
        assert counters.hit(name, 10**9, by=by) == database.counters.hit(name, 10**9, by=by)
    assert counters.hit("ann", 10**8).used == 1


def test_two_processes_count_together(server, database):
    both = [RedisCounters(server, database.counters, database.database.now) for _ in range(2)]
    assert [each.hit("ann", 10**9).used for each in both * 2] == [1, 2, 3, 4]


def test_windows_go_by_themselves(counters, server):
    counters.hit("ann", 3600)
    (key,) = server.keys()
    assert 0 < server.ttl(key) <= 3601
    assert counters.forget() == 0


def test_the_database_counts_while_the_server_is_silent(database, tmp_path):
    times = iter(range(100))
    silent = redis_at(f"unix://{tmp_path}/nobody")
    counters = RedisCounters(silent, database.counters, database.database.now, lambda: next(times))
    assert [counters.hit("ann", 10**9).used for _ in range(8)] == list(range(1, 9))


def test_the_server_is_left_alone_for_a_while_and_asked_again(server, database):
    moment = [0.0]
    counters = RedisCounters(server, database.counters, database.database.now, lambda: moment[0])
    counters._rests_until = 5.0
    assert [counters.hit("ann", 10**9).used for _ in range(2)] == [1, 2] and server.keys() == []
    moment[0] = 5.0
    assert counters.hit("ann", 10**9).used == 1 and len(server.keys()) == 1


@pytest.mark.parametrize("address", ["http://user:secret@a/0", "redis://user:secret@a:port/0", "a:6379"])
def test_what_is_no_address_is_refused_without_its_password(address):
    with pytest.raises(BadAddress) as refused:
        redis_at(address)
    assert "secret" not in str(refused.value)


def test_service_counts_its_clients_there(address, tmp_path, monkeypatch):
    monkeypatch.setattr("spreadwright.rest.rates.WINDOW_S", 10**9)  # no minute ends between the requests
    redis_at(address).flushall()
    places = [Settings(database_url=f"sqlite:///{tmp_path}/{number}.db", counters=address) for number in range(2)]
    apps = [create_app(Collection(), settings=replace(each, work_per_minute=2)) for each in places]
    found = [
        app.test_client().post("/check", json={"schema": "recipe/1", "title": title}).status_code
        for title in "ab"
        for app in apps
    ]
    assert found == [200, 200, 429, 429]
    assert len(redis_at(address).keys()) == 1
