from datetime import timedelta
from threading import Thread


def test_windows_count_up_and_begin_anew(store, clock):
    first = store.counters.hit("ann", 60)
    second = store.counters.hit("ann", 60, by=3)
    assert (first.used, second.used) == (1, 4)
    assert second.resets_at > clock.moment
    assert store.counters.hit("bob", 60).used == 1
    clock.moment += timedelta(minutes=2)
    assert store.counters.hit("ann", 60).used == 1
    store.counters.forget()
    assert store.counters.hit("ann", 60).used == 2


def test_names_of_any_length_are_counted_apart(store):
    assert [store.counters.hit("x" * 5000 + end, 3600).used for end in ("a", "b", "a")] == [1, 1, 2]


def test_nothing_is_lost_when_many_count(store):
    threads = [Thread(target=lambda: [store.counters.hit("all", 10**9) for _ in range(20)]) for _ in range(4)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert store.counters.hit("all", 10**9).used == 81
