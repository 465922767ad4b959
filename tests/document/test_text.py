import json
import time

import pytest

from spreadwright.document import read_any
from spreadwright.document.text import DEEPEST, MOST_BYTES, MOST_VALUES, value
from spreadwright.errors import UnreadableDocument


def refused(data: bytes) -> UnreadableDocument:
    """How the bytes are refused, which must take less than a second."""
    start = time.process_time()
    with pytest.raises(UnreadableDocument) as refusal:
        read_any(data)
    assert time.process_time() - start < 1
    return refusal.value


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "no JSON"),
        (b"{", "no JSON"),
        (b"shopping list", "line 1, column 1"),
        (b"\xff\xfe{}", "UTF-8"),
        (b"[]", "no JSON object"),
        (b"7", "no JSON object"),
        (b'{"a": NaN}', "NaN"),
        (b'{"a": -Infinity}', "Infinity"),
        (b'{"a": 1e400}', "too large"),
        (b'{"a": ' + b"9" * 5000 + b"}", "5,000 digits"),
        (b'{"title": "a", "title": "b"}', "stands twice"),
        (b'{"title": "\\ud800"}', "surrogate"),
        (b'{"\\udfff": 1}', "surrogate"),
        (b" " * 50_000_000, "more than 1,048,576 bytes"),
        (b"[" * 10_000, "deeper"),
        (b'{"a":' * 10_000, "deeper"),
        (b'{"a": "' + b"\\" * 500_000, "no JSON"),
        (b'{"a": [' + b"0," * (MOST_VALUES + 1) + b"0]}", "more than 10,000 values"),
    ],
    ids=lambda part: part[:24],
)
def test_bytes_that_are_no_document_are_refused(data, words):
    refusal = refused(data)
    assert words in refusal.reason and refusal.remedy.endswith(".")


def test_cut_tree_of_100_000_parts_is_refused():
    column = {"width": "1", "piece": "mat"}
    assert "bytes" in refused(json.dumps({"sheets": [{"columns": [column] * 100_000}]}).encode()).reason


def test_large_document_of_faults_stays_quick():
    column = {"widht": 1, "piece": [], "times": "x"}
    start = time.process_time()
    findings = read_any(json.dumps({"sheets": [{"columns": [column] * 2400}]}).encode()).findings
    assert 0 < len(findings) < 1000
    assert time.process_time() - start < 2


@pytest.mark.parametrize(
    ("data", "where"),
    [
        (b'{"sheets": [{}, {"role": "a", "role": "b"}]}', "/sheets/1"),
        (b'{"a/b": {"c": 1, "c": 2}}', "/a~1b"),
        (b'{"tags": ["x", "\\ud83d"]}', "/tags/1"),
    ],
)
def test_refusal_says_where(data, where):
    assert refused(data).where == where


def test_what_is_within_bounds_is_read():
    nested = "[" * (DEEPEST - 1) + "]" * (DEEPEST - 1)
    assert value(f'{{"a": {nested}}}'.encode())["a"]
    assert value(b'\xef\xbb\xbf{"a": "[[[ \\" {{{ \\ud83d\\ude00"}')["a"].endswith("😀")
    assert value(b'"' + b"x" * (MOST_BYTES - 2) + b'"')
