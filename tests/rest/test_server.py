import http.client
import signal
import socket
import subprocess
import sys
from contextlib import contextmanager

import pytest

from spreadwright.rest.server import refuse_taken

PROGRAM = """
import sys
from pathlib import Path
from threading import Event
from spreadwright.cli import signals
from spreadwright.rest import create_app, serve
from spreadwright.rest.worker import Worker
from spreadwright.store import Collection
signals.unwind_on_terminate()
told_to_end = Event()
handle_exit = Worker.handle_exit

def end(worker, *signal):
    told_to_end.set()
    handle_exit(worker, *signal)

Worker.handle_exit = end
app = create_app(Collection(Path(sys.argv[1])))

@app.get("/slow")
def slow():
    print("begun", flush=True)
    return "done" if told_to_end.wait(10) else "nobody told"

try:
    serve(app, "127.0.0.1", int(sys.argv[2]), workers=2)
finally:
    print("tidied up", flush=True)
"""


@contextmanager
def served(folder):
    """A running service: its process and its port."""
    command = [sys.executable, "-c", PROGRAM, str(folder), "0"]
    process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        line = process.stderr.readline()
        assert line.startswith("Spreadwright is at http://127.0.0.1:"), line
        yield process, int(line.split(":")[2].split("/")[0])
    finally:
        process.kill()
        process.wait()


def answer(port, method, path, body=None, headers=None):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request(method, path, body, headers or {})
    response = connection.getresponse()
    return response.status, response.headers.get_content_type(), response.read()


def test_requests_that_never_reach_the_application_get_problems(folder):
    with served(folder) as (_, port):
        assert answer(port, "GET", "/health")[:2] == (200, "application/json")
        assert answer(port, "GET", "/" + "a" * 9000)[:2] == (414, "application/problem+json")
        assert answer(port, "GET", "/", headers={"X-Long": "a" * 9000})[:2] == (431, "application/problem+json")
        assert answer(port, "G@T", "/")[:2] == (400, "application/problem+json")


def test_fifty_megabytes_are_refused_at_once(folder):
    with served(folder) as (_, port):
        head = b"POST /check HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 52428800\r\n\r\n"
        with socket.create_connection(("127.0.0.1", port), timeout=5) as client:
            client.sendall(head + b" " * 1000)
            assert client.recv(12) == b"HTTP/1.1 413"  # though most of the body was never sent


def test_half_a_body_is_not_taken_for_a_whole_one(folder):
    with served(folder) as (_, port), socket.create_connection(("127.0.0.1", port), timeout=10) as client:
        client.sendall(
            b"POST /plan HTTP/1.1\r\nHost: x\r\nContent-Type: text/plain\r\nContent-Length: 14\r\n\r\n7x7 le"
        )
        client.shutdown(socket.SHUT_WR)
        response = http.client.HTTPResponse(client)
        response.begin()
        assert response.status == 408 and b"problems/request-timeout" in response.read()


def test_chunks_that_are_none_are_refused(folder):
    head = b"POST /check HTTP/1.1\r\nHost: x\r\nTransfer-Encoding: chunked\r\n\r\n"
    with served(folder) as (_, port):
        for chunk in (b"ZZ\r\n{}\r\n0\r\n\r\n", b"-1\r\n{}\r\n0\r\n\r\n"):
            with socket.create_connection(("127.0.0.1", port), timeout=10) as client:
                client.sendall(head + chunk)
                response = http.client.HTTPResponse(client)
                response.begin()
                assert response.status == 400 and response.getheader("Content-Type") == "application/problem+json"


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_what_runs_is_finished_before_the_end(folder, how):
    with served(folder) as (process, port):
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
        connection.request("GET", "/slow")
        assert process.stdout.readline() == "begun\n"
        process.send_signal(how)
        assert connection.getresponse().read() == b"done"
        out, error = process.communicate(timeout=15)
        assert process.returncode == 0 and out == "tidied up\n" and "Traceback" not in error


def test_a_taken_port_is_one_line_and_exit_code_2(capsys):
    with socket.create_server(("127.0.0.1", 0)) as taken, pytest.raises(SystemExit) as left:
        refuse_taken(*taken.getsockname())
    error = capsys.readouterr().err
    assert left.value.code == 2 and error.count("\n") == 1 and "Address already in use" in error


@pytest.mark.parametrize("host", ["192.0.2.1", "256.1.1.1", "2001:db8::1", "::x", "a..b", "x" * 70])
def test_a_host_that_is_not_ours_is_one_line_and_exit_code_2(capsys, host):
    with pytest.raises(SystemExit) as left:
        refuse_taken(host, 8000)
    error = capsys.readouterr().err
    assert left.value.code == 2 and error.count("\n") == 1
    assert f"“{host}” is not an address of this machine" in error
