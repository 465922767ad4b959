"""The commands as values, read from themselves, for the reference in the gallery."""

import inspect
from collections.abc import Iterator
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:  # the gallery is loaded by those alone who build one
    from spreadwright.gallery import Command, Option


def commands(root: click.Context) -> tuple["Command", ...]:
    """The program itself and every command below it, by name.

    Args:
        root: The context of the outermost group.
    """
    return tuple(_commands(root))


def _commands(ctx: click.Context) -> Iterator["Command"]:
    yield _command(ctx)
    if isinstance(ctx.command, click.Group):
        for name in ctx.command.list_commands(ctx):
            command = ctx.command.get_command(ctx, name)
            if command and not command.hidden:
                yield from _commands(click.Context(command, ctx, name))


def _command(ctx: click.Context) -> "Command":
    from spreadwright.gallery import Command

    path = ctx.command_path
    usage = " ".join([path, *ctx.command.collect_usage_pieces(ctx)])
    paragraphs = inspect.cleandoc(ctx.command.help or "").split("\n\n")
    meaning = tuple(" ".join(each.split()) for each in paragraphs)
    return Command(path.partition(" ")[2] or path, usage, meaning, tuple(_options(ctx)))


def _options(ctx: click.Context) -> Iterator["Option"]:
    """Arguments that may be left out, then options, without those that every command has, such as `--help`."""
    for parameter in ctx.command.params:
        default = parameter.get_default(ctx)
        if isinstance(parameter, click.Option) and not parameter.hidden and parameter.expose_value:
            yield _option(parameter, ctx)
        elif isinstance(parameter, click.Argument) and isinstance(default, str):
            from spreadwright.gallery import Option

            yield Option((), parameter.make_metavar(ctx).strip("[]"), "", default)


def _option(option: click.Option, ctx: click.Context) -> "Option":
    from spreadwright.gallery import Option

    variable = option.envvar
    return Option(
        tuple(option.opts),
        "" if option.is_flag else _value(option, ctx),
        option.help or "",
        option.get_help_extra(ctx).get("default", ""),
        variable if isinstance(variable, str) else ", ".join(variable or ()),
        option.required,
        option.multiple,
    )


def _value(option: click.Option, ctx: click.Context) -> str:
    kind = option.type
    if isinstance(kind, click.IntRange | click.FloatRange):
        return f"{_bound(kind.min)}..{_bound(kind.max)}"
    words = option.make_metavar(ctx)
    return words.strip("[]") if isinstance(kind, click.Choice) else words


def _bound(number: float | None) -> str:
    return "" if number is None else str(number)
