"""The leaf shawl, the socks with the short-row heel and the hat with leaning ribs.

The shawl is drawn from the chart in its own pattern, so that the picture is of that shawl.
"""
import pathlib

import numpy as np

from canvas import Canvas, linen, moved, paper, path, wood
from canvas import straight
from fabric import F
from palette import *  # noqa: F403 - the colour names
from small import sock_pair
from swatches import box, brioche_pieces

PATTERNS = pathlib.Path(__file__).resolve().parent.parent / "patterns"


def leaves():
    """The repeat of the chart as an array of characters, row 0 at the bottom."""
    text = (PATTERNS / "eelgrass-shawl.md").read_text(encoding="utf-8")
    rows = text.split("rows: |\n")[1].split("```")[0].split()
    return np.array([list(row[1:15]) for row in rows])


def eelgrass():
    c = Canvas(1600, 1200, linen("#d8d2c2", 41), 140)
    # the scarf: 53 stitches, of which five at either side are garter
    w, asp, sts, edge = 12.2, 0.715, 53, 5
    chart = leaves()
    inside = lambda k: (k >= edge) & (k < sts - edge)
    at = lambda r, k: chart[np.mod(r, 24).astype(int), np.mod(k - edge, 14).astype(int)]
    hole = lambda r, k: (at(r, k) == "o") & inside(k) & (r < 164)
    # decreases lie on top of the fabric and catch the light
    raised = lambda r, k: np.where(np.isin(at(r, k), ("/", "\\", "^")) & inside(k), 1, 0)
    turn, about, high = -7, (800, 600), sts * w
    x0, x1, y0 = -80, 1380, 600 - high / 2
    place = lambda points: moved(points, turn=turn, about=about)
    # the end drawn out to a point at each pin
    end = [(x1 + 16 * abs(np.cos(np.pi * 3 * t)), y0 + high * t) for t in np.linspace(0, 1, 60)]
    field = straight(*place([(x0, y0)])[0], w, w * asp, turn=turn + 90)
    whole = c.piece(place([(x0, y0)] + end + [(x0, y0 + high)]), field, w, asp, [SAMPHIRE, "#a3b064"], seed=900,
                    colour=raised, hole=hole, hole_size=0.53, fine=0.88)
    rims = [box(x0, y0, x1 + 30, y0 + edge * w), box(x0, y0 + high - edge * w, x1 + 30, y0 + high),
            box(x1 - 26, y0, x1 + 30, y0 + high)]
    for n, rim in enumerate(rims):
        c.piece(c.mask(place(rim)) * whole, field, w, asp * 0.8, [SAMPHIRE], ridges=True, seed=904 + n, lift=0.4)
    for t in (0, 1 / 3, 2 / 3, 1):
        x, y = place([(x1 + 14, y0 + 4 + (high - 8) * t)])[0]
        c.solid([(x + 7 * np.cos(a), y + 7 * np.sin(a)) for a in np.linspace(0, 6.28, 30)], CHALK, shadow=0.4, edge=0.9, spread=4)
    c.lay(puff=0.25, spread=7, shadow=0.48, drop=0.6)
    return c.image()


def bight():
    plain = lambda r, k: np.zeros_like(r).astype(int)
    return sock_pair(Canvas(1200, 1600, paper("#d2cbbd", 43), 142), [SAMPHIRE], INK, plain, ribbed_heel=False, seed=920)


def groyne():
    c = Canvas(1600, 1200, wood("#b1a28b", 45, 240), 144)
    cx, base, top, hw, w, asp = 800, 930, 250, 360, 17, 1.22
    crown = path("M 440 700 Q 430 560 520 420 Q 620 272 800 262 Q 980 272 1080 420 Q 1170 560 1160 700 L 1166 800 L 434 800")

    def field(x, y):
        up = np.clip((base - y) / (base - top), 0, 0.995)
        # ribs lean to the left for a third of the height, and back to the right
        lean = np.interp(up, [0, 0.24, 0.46, 0.68, 1], [0, 0, 5.2, 0, 0])
        k = np.where(up > 0.55, np.sqrt(np.maximum(0.004, 1 - ((up - 0.55) / 0.45) ** 2)), 1.0)
        k = np.maximum(k, 0.28)
        return ((x - cx) / (w * k) + lean).astype(F), ((base - y) / (w * asp) + 0.7 * ((x - cx) / hw) ** 2).astype(F)
    brioche_pieces(c, crown, field, w, asp, ESTUARY, "#41586a", 940, edge=0.5, shadow=0.3,
                   tint=lambda X, Y: 1.05 - 0.26 * (np.abs(X - cx) / 380) ** 3)
    # the brim is turned up, so its other face shows
    brim = path("M 424 776 Q 800 812 1176 776 Q 1186 860 1178 946 Q 800 984 422 946 Q 414 860 424 776")
    flat = lambda x, y: (((x - cx) / (w * 0.94)).astype(F), ((952 - y - 34 * (1 - ((x - cx) / 380) ** 2)) / (w * asp)).astype(F))
    brioche_pieces(c, brim, flat, w, asp, ESTUARY, "#41586a", 944, edge=0.55, shadow=0.5,
                   tint=lambda X, Y: 1.08 - 0.26 * (np.abs(X - cx) / 390) ** 3)
    c.lay(puff=0.6, spread=16, shadow=0.48)
    return c.image((180, 165, 1420, 1095))


PICTURES = {"eelgrass-shawl": eelgrass, "bight-socks": bight, "groyne-hat": groyne}
