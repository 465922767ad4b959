"""What a schema refuses, as findings in the words of the trade, with what would be right."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from jsonschema.exceptions import ValidationError

from spreadwright.document.pointer import pointer
from spreadwright.errors import Finding, error, nearest_hint


@dataclass(frozen=True, slots=True)
class _Refusal:
    """One error of the validator: the value, the rule that it breaks, and the schema that holds the rule."""

    where: str
    step: Any
    value: Any
    rule: str | None
    wanted: Any
    shape: dict[str, Any]
    message: str

    is_name: bool

    @property
    def title(self) -> str:
        """What the value is called: by the member that holds it, else by the schema."""
        named = self.step if isinstance(self.step, str) and self.step and not self.is_name else None
        return f"“{named or self.shape.get('title', 'This')}”"


def findings_of(failure: ValidationError) -> Iterator[Finding]:
    """The findings that one error of the validator amounts to."""
    shape: Any = failure.schema
    path = list(failure.absolute_path)
    each = _Refusal(
        where=pointer(*path),
        step=path[-1] if path else "",
        value=failure.instance,
        rule=failure.validator if isinstance(failure.validator, str) else None,
        wanted=failure.validator_value,
        shape=shape if isinstance(shape, dict) else {},
        message=failure.message,
        is_name="propertyNames" in failure.absolute_schema_path,
    )
    match each.rule:
        case "additionalProperties":
            yield from _unknown_members(each)
        case "required":
            yield _missing_member(each)
        case "oneOf":
            if isinstance(each.value, dict):  # anything else is refused for its type
                yield _not_one_of(each)
        case "not":
            yield _not_together(each)
        case _:
            yield _wrong(each)


def _unknown_members(each: _Refusal) -> Iterator[Finding]:
    known = each.shape.get("properties", {})
    for name in each.value:
        if name not in known:
            message = f"The member “{name[:60]}” is not known here."
            yield error("unknown-member", each.where + pointer(name), message, nearest_hint(name, known))


def _missing_member(each: _Refusal) -> Finding:
    name = next(n for n in each.wanted if each.message.startswith(f"'{n}'"))
    example = _short(each.shape.get("properties", {}).get(name, {}).get("examples", [""])[0])
    remedy = _ended(f"Add “{name}”, for example {example}")
    return error("missing-member", each.where, f"The member “{name}” is missing.", remedy)


def _not_one_of(each: _Refusal) -> Finding:
    names = [branch["required"][0] for branch in each.wanted]
    have = [name for name in names if name in each.value]
    measured = "this one has " + " and ".join(f"“{name}”" for name in have) if have else "this one has none of them"
    choice = "“" + "”, “".join(names[:-1]) + f"” or “{names[-1]}”"
    remedy = "Keep one of them." if have else f"Add one of them, for example “{names[0]}”: “1/2”."
    return error("needs-exactly-one", each.where, f"A placement has {choice}; {measured}.", remedy)


def _not_together(each: _Refusal) -> Finding:
    if "description" in each.shape:
        return error("members-not-together", each.where, f"{each.title} cannot stand here.", each.shape["description"])
    message = f"“{each.step}” cannot stand beside the other content of this part."
    remedy = "A part is one thing: a piece, a spare, or cut further into columns or rows."
    return error("members-not-together", each.where, message, remedy)


def _wrong(each: _Refusal) -> Finding:
    is_value = f"{each.title} is {_short(each.value)}."
    match each.rule:
        case "type":
            return error("wrong-type", each.where, f"{each.title} is {_a_kind(each.value)}.", _type_remedy(each))
        case "const" if each.shape.get("title") == "Schema":
            return error("unknown-schema", each.where, is_value, f"Write {_short(each.wanted)}.")
        case "const":
            return error("wrong-value", each.where, is_value, f"Write {_short(each.wanted)}, or leave it out.")
        case "enum":
            return error("wrong-value", each.where, is_value, _enum_remedy(each))
        case "pattern":
            return error("wrong-text", each.where, is_value, _shape_remedy(each))
        case _:
            return error("wrong-value", each.where, f"{each.title} {_measured(each)}.", _shape_remedy(each))


def _a_kind(value: Any) -> str:
    names: dict[type, str] = {dict: "an object", list: "a list", str: "text", bool: "true or false", type(None): "null"}
    return names.get(type(value), "a number")


def _type_remedy(each: _Refusal) -> str:
    if each.wanted == "string" and isinstance(each.value, int | float) and not isinstance(each.value, bool):
        return f"Write it as text: “{each.value}”."
    wanted = {"object": "an object", "array": "a list", "string": "text", "boolean": "true or false"}
    return f"Write {wanted.get(str(each.wanted), 'a whole number')}."


def _enum_remedy(each: _Refusal) -> str:
    words = [choice for choice in each.wanted if isinstance(choice, str)]
    hint = nearest_hint(each.value, words) if isinstance(each.value, str) and words else ""
    if hint.startswith("Did"):
        return hint
    return "Write one of: " + ", ".join(_short(choice) for choice in each.wanted) + "."


def _shape_remedy(each: _Refusal) -> str:
    example = each.shape.get("examples", [None])[0]
    described: str = each.shape.get("description", "See the schema.")
    return _ended(f"{described} For example {_short(example)}") if example is not None else described


def _measured(each: _Refusal) -> str:
    if each.rule == "minLength":
        return "is empty"
    if each.rule == "uniqueItems":
        return "holds something twice"
    bound = str(each.rule)[:3]
    if bound not in ("min", "max"):
        return "holds more than it may"
    names: dict[type, str] = {str: "character", list: "item", dict: "member"}
    counted = names.get(type(each.value))
    if counted is None:
        return f"is {each.value}, {'less' if bound == 'min' else 'more'} than {each.wanted}"
    has = f"has {len(each.value)} {counted}{'s' if len(each.value) != 1 else ''}"
    are = "is" if each.wanted == 1 else "are"
    wanted = f"at least {each.wanted} {are} needed" if bound == "min" else f"at most {each.wanted} {are} allowed"
    return f"{has}; {wanted}"


def _short(value: Any) -> str:
    shown = json.dumps(value, ensure_ascii=False)
    return shown if len(shown) <= 60 else shown[:59] + "…"


def _ended(sentence: str) -> str:
    return sentence if sentence.endswith("…") else sentence + "."
