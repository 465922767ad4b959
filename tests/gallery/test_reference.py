from spreadwright.document import KINDS, schema
from spreadwright.gallery.prose.reference import chapters


def members():
    return [
        (chapter, section, member)
        for chapter in chapters()
        for section in chapter.sections
        for member in section.members
    ]


def test_every_kind_of_document_has_a_chapter():
    assert [chapter.kind for chapter in chapters()] == list(KINDS)


def test_every_member_has_meaning_and_example():
    assert [
        (section.id, member.name) for _, section, member in members() if not (member.meaning and member.example)
    ] == []


def test_every_top_level_member_is_there():
    for chapter in chapters():
        assert [member.name for member in chapter.sections[0].members] == list(schema(chapter.kind)["properties"])


def test_required_members_are_marked():
    trimmer = next(section for _, section, _ in members() if section.id == "bench-trimmer")
    assert [m.name for m in trimmer.members if not m.is_required] == ["shortest", "hand", "stack", "accuracy"]
    assert trimmer.members[-1].default == '"1/64 in"'


def test_members_of_other_schemas_are_followed():
    titles = [member for chapter, _, member in members() if chapter.kind == "paper-set" and member.name == "unit"]
    assert titles[0].form.startswith("One of") and titles[0].meaning
