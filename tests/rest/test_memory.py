from spreadwright.rest.memory import Memory


def counted(memory, key, size):
    """The body of a key, and whether it had to be made."""
    made = []
    body = memory.body(key, lambda: made.append(key) or bytes(size))
    return len(body.data), bool(made)


def test_a_body_is_made_once():
    memory = Memory(100)
    assert counted(memory, "a", 40) == (40, True)
    assert counted(memory, "a", 40) == (40, False)


def test_what_was_not_asked_for_longest_goes_first():
    memory = Memory(100)
    for key in ("a", "b", "a", "c"):
        counted(memory, key, 40)
    assert counted(memory, "a", 40) == (40, False)
    assert counted(memory, "b", 40) == (40, True)


def test_a_body_larger_than_the_memory_throws_nothing_out():
    memory = Memory(100)
    counted(memory, "a", 40)
    assert counted(memory, "huge", 101) == (101, True)
    assert counted(memory, "huge", 101) == (101, True)
    assert counted(memory, "a", 40) == (40, False)
