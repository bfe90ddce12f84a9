"""Writes pint.csv: 1,000 seeded random values each for m, yd, g and oz, converted by an outside library.

Needs pint==0.25.3. The values and the answers are exact decimal strings, or rounded to 40 digits where the
quotient does not end. Run: python pint.py > pint.csv
"""

import decimal
import random

import pint

assert pint.__version__ == "0.25.3", pint.__version__
decimal.getcontext().prec = 40
units = pint.UnitRegistry(non_int_type=decimal.Decimal)
chance = random.Random(20261125)
pairs = [
    ("m", "yd", "meter", "yard"),
    ("yd", "m", "yard", "meter"),
    ("g", "oz", "gram", "ounce"),
    ("oz", "g", "ounce", "gram"),
]
print("value,unit,converted,into")
for unit, into, unit_name, into_name in pairs:
    for _ in range(1000):
        decimals = chance.randrange(0, 4)
        value = decimal.Decimal(chance.randrange(1, 10 ** (chance.randrange(1, 6) + decimals)))
        value = value.scaleb(-decimals)
        converted = (value * units(unit_name)).to(into_name).magnitude
        print(f"{value:f},{unit},{converted:f},{into}")
