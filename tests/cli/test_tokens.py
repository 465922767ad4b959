import json

import pytest
from click.testing import CliRunner

from spreadwright.cli import main
from spreadwright.errors import SpreadwrightError
from spreadwright.store.opening import open_store


@pytest.fixture
def run(tmp_path):
    """Runs `spreadwright token` on a database of its own."""
    address = f"sqlite:///{tmp_path}/store.db"

    def invoke(*words):
        return CliRunner().invoke(main, ["token", *words], env={"SPREADWRIGHT_DATABASE_URL": address})

    invoke.store = lambda: open_store(address)
    return invoke


def test_token_is_shown_once_and_opens_what_was_asked_for(run):
    made = run("create", "--owner", "Ann", "--scope", "write", "--scope", "review")
    secret = made.stdout.strip()
    found = run.store().tokens.find(secret)
    assert (found.owner, found.scopes) == ("Ann", {"write", "review"})
    assert secret not in run("list").output and secret not in made.stderr


def test_revoked_token_opens_nothing(run):
    secret = run("create", "--owner", "Ann").stdout.strip()
    assert run("revoke", "1").exit_code == 0
    with pytest.raises(SpreadwrightError, match="revoked"):
        run.store().tokens.find(secret)
    (told,) = json.loads(run("list", "--json").stdout)["tokens"]
    assert told["state"].startswith("revoked")


def test_token_of_no_database_is_refused():
    result = CliRunner().invoke(main, ["token", "list"], env={"SPREADWRIGHT_DATABASE_URL": ""})
    assert result.exit_code == 2 and "SPREADWRIGHT_DATABASE_URL" in result.stderr


def test_revoking_an_unknown_token_is_refused(run):
    assert "None is known" in run("revoke", "7").stderr
    run("create", "--owner", "Ann")
    refused = run("revoke", "7")
    assert refused.exit_code == 2 and "Known: 1." in refused.stderr
