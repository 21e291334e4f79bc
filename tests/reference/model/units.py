"""Text with a unit -> SI number. A small parser written for this reference alone."""

import math
import re

BASE = {  # symbol: factor to SI, prefixable
    "m": (1.0, True), "in": (0.0254, False), "ft": (0.3048, False), "g": (1e-3, True),
    "lb": (0.45359237, False), "oz": (0.028349523125, False), "s": (1.0, True), "min": (60.0, False), "h": (3600.0, False),
    "N": (1.0, True), "lbf": (4.4482216152605, False), "ozf": (0.27801385095378125, False), "Pa": (1.0, True),
    "inH2O": (249.08891, False), "rad": (1.0, False), "deg": (math.pi / 180, False), "V": (1.0, True), "A": (1.0, True),
    "ohm": (1.0, True), "H": (1.0, True), "F": (1.0, True), "T": (1.0, True), "G": (1e-4, True), "K": (1.0, False),
    "W": (1.0, True), "J": (1.0, True), "mph": (0.44704, False), "%": (0.01, False), "Hz": (1.0, True),
}
PREFIX = {"p": 1e-12, "n": 1e-9, "u": 1e-6, "m": 1e-3, "c": 1e-2, "d": 1e-1, "k": 1e3, "M": 1e6}
NUMBER = re.compile(r"^\s*([+-]?\d+(?:\.\d*)?(?:[eE][+-]?\d+)?|[+-]?\.\d+(?:[eE][+-]?\d+)?)\s*(.*?)\s*$")


def unit_factor(symbol):
    if symbol in BASE:
        return BASE[symbol][0]
    if symbol[0] in PREFIX and symbol[1:] in BASE and BASE[symbol[1:]][1]:
        return PREFIX[symbol[0]] * BASE[symbol[1:]][0]
    raise ValueError("unknown unit " + symbol)


def si(text):
    """SI value of a quantity text; temperatures come out in degrees Celsius; plain numbers pass through."""
    if isinstance(text, (int, float)) and not isinstance(text, bool):
        return float(text)
    number, unit = NUMBER.match(text).groups()
    value = float(number)
    if unit == "degC":
        return value
    if unit == "degF":
        return (value - 32.0) * 5.0 / 9.0
    for place, group in enumerate(unit.split("/")):
        for term in group.replace("*", " ").split():
            symbol, _, power = term.partition("^")
            value *= unit_factor(symbol) ** ((int(power) if power else 1) * (1 if place == 0 else -1))
    return value
