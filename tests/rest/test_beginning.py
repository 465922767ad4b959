from pathlib import Path

import pytest

from spreadwright.rest.beginning import NotConfigured, is_loopback, settings_for, show_first_token
from spreadwright.rest.settings import BadSetting, Settings, described

KEPT = "sqlite:////srv/store.db"


@pytest.mark.parametrize(
    ("host", "expected"), [("127.0.0.1", True), ("::1", True), ("localhost", True), ("0.0.0.0", False), ("a.b", False)]
)
def test_loopback_is_known(host, expected):
    assert is_loopback(host) is expected


def test_public_address_without_a_database_is_refused(monkeypatch):
    monkeypatch.delenv("SPREADWRIGHT_DATABASE_URL", raising=False)
    assert settings_for("127.0.0.1").database_url == ""
    with pytest.raises(NotConfigured, match="SPREADWRIGHT_DATABASE_URL"):
        settings_for("0.0.0.0")


def test_public_service_counts_its_clients(monkeypatch):
    monkeypatch.setenv("SPREADWRIGHT_DATABASE_URL", KEPT)
    assert settings_for("0.0.0.0").work_per_minute > 0 == settings_for("::1").work_per_minute


@pytest.mark.parametrize(
    ("name", "value"), [("WIDEST_PX", "9999999"), ("LOG", "loud"), ("SEARCH_S", "-1"), ("PUBLIC_URL", "ftp://x")]
)
def test_setting_that_is_not_understood_is_named_without_its_value(name, value):
    with pytest.raises(BadSetting) as refused:
        Settings.from_environment({f"SPREADWRIGHT_{name}": value})
    assert f"SPREADWRIGHT_{name}" in str(refused.value) and value not in str(refused.value)


def test_every_setting_is_described_with_its_default():
    page = (Path(__file__).parents[2] / "site/docs/deployment.md").read_text()
    assert [name for name, default, words in described() if f"| `{name}` | {default} | {words} |" not in page] == []


def test_first_token_is_shown_once(folder, capsys):
    from spreadwright.rest import create_app
    from spreadwright.store import Collection

    app = create_app(Collection(folder))
    show_first_token(app, "0.0.0.0")
    assert capsys.readouterr().err == ""
    show_first_token(app, "127.0.0.1")
    secret = capsys.readouterr().err.split()[-1]
    show_first_token(app, "127.0.0.1")
    assert capsys.readouterr().err == ""
    asked = {"Authorization": f"Bearer {secret}"}
    assert app.test_client().get("/recipes?state=draft", headers=asked).json["recipes"] == []
