"""Why a colourway ranks where it does, in a sentence of the language spoken now.

The best one is told by what it is best at, and by its weak side if it has one. Every other one is told by how many
points it is behind, by the part that costs it most beside the best, and by the part in which it is better, if any is.
"""

from collections.abc import Callable, Mapping

from spreadwright.colour.weakness import Weakness
from spreadwright.colour.worth import Ranked, Wish
from spreadwright.model import quoted, quoted_face_title
from spreadwright.words import decimal, grouped, listed, title
from spreadwright.words import gettext as _

STRONG, WEAK = 80.0, 70.0
"""Points of a part from which it is worth praise, and up to which its weakness is told."""
_EQUAL = 0.05
"""Points that are not shown."""


def reason(
    ranked: Ranked,
    best: Ranked,
    count: int,
    wish: Wish | None = None,
    roles: Mapping[str, str] | None = None,
    *,
    is_proved: bool = True,
) -> str:
    """Why it ranks where it does.

    Args:
        ranked: One colourway.
        best: The first of the list that it stands in.
        count: How many colourways there are in all.
        wish: What was wished for beside the parts that always count.
        roles: What each role is called; otherwise by its id.
        is_proved: Whether none of all is better than the first of the list; otherwise it is only the best one found.
    """
    sentence = _of_best(ranked, count, wish, is_proved=is_proved) if ranked is best else _of_other(ranked, best, wish)
    return " ".join((sentence, *_repeated(ranked, roles or {}), *_merged(ranked, roles or {})))


def _of_best(ranked: Ranked, count: int, wish: Wish | None, *, is_proved: bool) -> str:
    strong = [name for name, points in ranked.parts.items() if points >= STRONG]
    strong.sort(key=lambda name: -ranked.parts[name] * ranked.shares[name])
    praised = [praise for name in strong[:2] if (praise := _praise(name, wish))]
    weakest = min(ranked.parts, key=lambda name: ranked.parts[name], default="")
    blame = _blame(weakest, ranked, wish) if weakest and ranked.parts[weakest] <= WEAK else ""
    told = (_proved if is_proved else _found)(bool(praised), bool(blame))
    return told.format(count=grouped(count), strong=listed(praised), weak=blame)


def _proved(has_praise: bool, has_blame: bool) -> str:
    if has_praise and has_blame:
        return _("The best of {count}: {strong}. Its weak side: {weak}.")
    if has_praise:
        return _("The best of {count}: {strong}.")
    if has_blame:
        return _("The best of {count}, though not a strong one: {weak}.")
    return _("The best of {count}, even in everything that counts.")


def _found(has_praise: bool, has_blame: bool) -> str:
    """Of a search that was stopped: there may be better ones."""
    if has_praise and has_blame:
        return _("The best that was found among {count}: {strong}. Its weak side: {weak}.")
    if has_praise:
        return _("The best that was found among {count}: {strong}.")
    if has_blame:
        return _("The best that was found among {count}, though not a strong one: {weak}.")
    return _("The best that was found among {count}, even in everything that counts.")


def _of_other(ranked: Ranked, best: Ranked, wish: Wish | None) -> str:
    behind = best.score - ranked.score
    if behind < _EQUAL:
        return _("As good as the best, in other papers.")
    gains = {name: (ranked.parts[name] - best.parts.get(name, 0)) * ranked.shares[name] for name in ranked.parts}
    costs, helps = min(gains, key=lambda name: gains[name]), max(gains, key=lambda name: gains[name])
    blame = _blame(costs, ranked, wish)
    praise = _praise(helps, wish) if gains[helps] >= 1 and ranked.parts[helps] >= STRONG else ""
    if blame and praise:
        told = _("{points} points behind the best: {weak}. In its favour: {strong}.")
    elif blame:
        told = _("{points} points behind the best: {weak}.")
    else:
        told = _("{points} points behind the best, a little less in everything that counts.")
    return told.format(points=decimal(f"{behind:.1f}"), weak=blame, strong=praise)


def _repeated(ranked: Ranked, called: Mapping[str, str]) -> list[str]:
    """Says that a paper plays several roles, which takes more sheets of it."""
    roles: dict[str, list[str]] = {}
    for role, choice in ranked.colourway.choices:
        roles.setdefault(quoted(title(choice.paper.title)), []).append(quoted(called.get(role, role)))
    told = _("{paper} is used for {roles}.")
    return [told.format(paper=paper, roles=listed(names)) for paper, names in roles.items() if len(names) > 1]


def _merged(ranked: Ranked, called: Mapping[str, str]) -> list[str]:
    """Says that pieces of two roles are lost in one another."""
    told = _("Nothing tells {roles} apart where they meet.")
    return [told.format(roles=listed([quoted(called.get(role, role)) for role in pair])) for pair in ranked.merged]


def _praise(name: str, wish: Wish | None) -> str:
    praises = {
        "separation": _("the papers stand well apart where they meet"),
        "grey": _("it reads in grey and with deficient colour vision"),
        "calm": _("no busy print meets another"),
        "balance": _("strong papers lie in small areas and quiet ones in large ones"),
        "captions": _("captions are easy to read"),
    }
    return wish.praise if wish and name == wish.name else praises.get(name, "")


def _blame(name: str, ranked: Ranked, wish: Wish | None) -> str:
    if wish and name == wish.name:
        return wish.blame
    weak = ranked.weak.get(name)
    return _BLAMES[name](weak) if weak and name in _BLAMES else ""


def _separation(weak: Weakness) -> str:
    if weak.papers[0] == weak.papers[1]:
        return _("{paper} meets itself").format(paper=quoted_face_title(weak.papers[0]))
    told = _("{one} and {other} differ by no more than {figure} (CIEDE2000)")
    return _pair(told, weak, f"{weak.figure:.0f}")


def _grey(weak: Weakness) -> str:
    if weak.papers[0] == weak.papers[1]:
        return _("{paper} meets itself").format(paper=quoted_face_title(weak.papers[0]))
    told = _("in grey or with deficient colour vision {one} and {other} come close (contrast {figure} : 1)")
    return _pair(told, weak, f"{int(weak.figure * 10) / 10:.1f}")


def _calm(weak: Weakness) -> str:
    if len(weak.papers) == 1:
        return _("{paper} is a busy print beside photographs").format(paper=quoted_face_title(weak.papers[0]))
    return _pair(_("{one} and {other} are two busy prints that meet"), weak, "")


def _balance(weak: Weakness) -> str:
    told = _("{paper} is too strong for {share} % of the paper in sight")
    if weak.figure < 0:
        told = _("{paper} is too quiet for {share} % of the paper in sight")
    return told.format(paper=quoted_face_title(weak.papers[0]), share=f"{100 * weak.share:.0f}")


def _captions(weak: Weakness) -> str:
    told = _("{paper} is dark or busy for writing (contrast with a pencil {figure} : 1)")
    figure = decimal(f"{int(weak.figure * 10) / 10:.1f}")
    return told.format(paper=quoted_face_title(weak.papers[0]), figure=figure)


_BLAMES: Mapping[str, Callable[[Weakness], str]] = {
    "separation": _separation,
    "grey": _grey,
    "calm": _calm,
    "balance": _balance,
    "captions": _captions,
}


def _pair(told: str, weak: Weakness, figure: str) -> str:
    one, other = (quoted_face_title(paper) for paper in weak.papers)
    return told.format(one=one, other=other, figure=decimal(figure))
