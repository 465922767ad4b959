"""Ticks to the numbers that a picture holds: millimetres with at most three decimals."""

from functools import lru_cache

DECIMALS = 3
"""Finest decimal of a millimetre in a picture."""


@lru_cache(maxsize=65536)
def mm(ticks: int) -> str:
    """A length in millimetres, rounded half up to thousandths, without trailing zeros.

    >>> mm(8128), mm(1), mm(-160), mm(0)
    ('25.4', '0.003', '-0.5', '0')
    """
    return decimal(scaled(ticks, DECIMALS), DECIMALS)


def scaled(ticks: int, places: int) -> int:
    """A length in whole powers of ten of a millimetre, rounded half up."""
    return (2 * ticks * int(10**places) + 320) // 640


@lru_cache(maxsize=65536)
def decimal(value: int, places: int) -> str:
    """A whole number of `places` decimals as text.

    >>> decimal(1500, 3), decimal(-7, 2)
    ('1.5', '-0.07')
    """
    sign, size = ("-" if value < 0 else ""), abs(value)
    whole, rest = divmod(size, 10**places)
    return sign + (f"{whole}.{rest:0{places}d}".rstrip("0") if rest else str(whole))


def ratio(value: float) -> str:
    """An opacity, an angle or a scale with at most three decimals.

    >>> ratio(0.25), ratio(1.0), ratio(-0.0001)
    ('0.25', '1', '0')
    """
    return decimal(round(value * 1000), DECIMALS)


def exact_mm(ticks: int) -> str:
    """A length in millimetres, unrounded: 1/320 mm has six decimals.

    >>> exact_mm(127), exact_mm(97536), exact_mm(-160)
    ('0.396875', '304.8', '-0.5')
    """
    return decimal(ticks * 3125, 6)
