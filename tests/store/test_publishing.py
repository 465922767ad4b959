import json

import pytest

from builder import SOUND, spoilt
from spreadwright.errors import InvalidDocument
from spreadwright.store.errors import WrongState
from spreadwright.store.values import Action, State

BROKEN = spoilt(lambda recipe: recipe["placements"].pop())


def test_a_draft_is_published_withdrawn_and_published_again(store, recipe):
    published = store.publishing.publish("recipes", "window-seat", "rita", expected=1)
    assert (published.head.state, published.revision) == (State.PUBLISHED, 2)
    withdrawn = store.publishing.withdraw("recipes", "window-seat", "ann", expected=2)
    assert withdrawn.head.state is State.WITHDRAWN
    again = store.publishing.publish("recipes", "window-seat", "rita", expected=3)
    assert again.published_at == published.published_at
    actions = [each.action for each in store.history.revisions("recipes", "window-seat")]
    assert actions == [Action.PUBLISHED, Action.WITHDRAWN, Action.PUBLISHED, Action.CREATED]


def test_publishing_runs_the_check(store):
    store.documents.create("recipes", BROKEN, "ann", name="broken")
    with pytest.raises(InvalidDocument):
        store.publishing.publish("recipes", "broken", "ann", expected=1)
    assert store.documents.head("recipes", "broken").state is State.DRAFT


def test_what_is_published_stays_without_errors(store, recipe):
    store.publishing.publish("recipes", "window-seat", "ann", expected=1)
    with pytest.raises(InvalidDocument):
        store.documents.change("recipes", "window-seat", BROKEN, "ann", expected=2)
    better = json.dumps({**SOUND, "title": "Bay window"}).encode()
    assert store.documents.change("recipes", "window-seat", better, "ann", expected=2).head.state is State.PUBLISHED


def test_a_reviewer_says_why_not(store, recipe):
    refused = store.publishing.refuse("recipes", "window-seat", "rita", expected=1, note="The caption is too narrow.")
    assert (refused.review_note, refused.head.state) == ("The caption is too narrow.", State.DRAFT)
    published = store.publishing.publish("recipes", "window-seat", "rita", expected=2)
    assert published.review_note == ""


def test_states_that_do_not_follow_are_refused(store, recipe):
    with pytest.raises(WrongState):
        store.publishing.withdraw("recipes", "window-seat", "ann", expected=1)
    store.publishing.publish("recipes", "window-seat", "ann", expected=1)
    with pytest.raises(WrongState):
        store.publishing.publish("recipes", "window-seat", "ann", expected=2)
