"""Pullovers, a cardigan, a gansey, a vest and a baby's jacket, lying flat.

Outlines are given for the right half, measured from the middle of the neck.
"""
import numpy as np

from canvas import (Canvas, both, linen, mirror, paper, path, round_about, straight, tapered, wood)
from fabric import rib_kinds
from palette import *  # noqa: F403 - the colour names

RIB2 = dict(purl=rib_kinds(2, 2), warp=(2, 2, 0.62), lift=0.42)
RIB1 = dict(purl=rib_kinds(1, 1), warp=(1, 1, 0.62), lift=0.36)


class Place:
    """Where a garment lies: its middle, its top, and how large it is."""

    def __init__(self, cx, top, s):
        self.cx, self.top, self.s = cx, top, s

    def half(self, text):
        """Points of the right half."""
        return [(self.cx + x * self.s, self.top + y * self.s) for x, y in path(text)]

    def whole(self, text):
        """A half outline closed with its mirror image."""
        return both(self.half(text), self.cx)

    def y(self, y):
        return self.top + y * self.s

    def oval(self, y, rx, ry):
        return [(self.cx + rx * self.s * np.cos(a), self.top + (y + ry * np.sin(a)) * self.s)
                for a in np.linspace(0, 2 * np.pi, 90)]


def each_side(points, cx):
    """The right and the left of a pair."""
    return ((1, points), (-1, mirror(points, cx)))


def sleeves(c, p, outline, cuff, x, y, angle, w, asp, pal, rib, seed, taper=-0.00035, colour=None, purl=None,
            cuff_pal=None, body_kw=None):
    """A pair of sleeves with ribbed cuffs; (x, y) is the middle of the cuff line."""
    masks = []
    for side, pts in each_side(p.half(outline), p.cx):
        ox, oy = p.cx + side * x * p.s, p.y(y)
        tint = lambda X, Y, side=side: 1 - 0.20 * np.exp(-((X - p.cx) * side / p.s - 330) ** 2 / 9000) \
            * np.clip((Y - p.top) / (500 * p.s), 0, 1)
        f = tapered(ox, oy, w, w * asp, turn=-angle * side, taper=taper / p.s)
        m = c.piece(pts, f, w, asp, pal, seed=seed + side, colour=colour, purl=purl, edge=0.35, spread=16,
                    tint=tint, **(body_kw or {}))
        masks.append(m)
    for side, pts in each_side(p.half(cuff), p.cx):
        ox, oy = p.cx + side * x * p.s, p.y(y)
        c.piece(pts, straight(ox, oy, w * 0.86, w * asp, turn=-angle * side), w, asp, cuff_pal or pal,
                seed=seed + 7 + side, edge=0.35, shadow=0.2, spread=8, **rib)
    return masks


def neckband(c, p, y, rx, ry, deep, w, asp, pal, rib, seed, inside=True):
    """A ribbed round neck: the back's wrong side seen through it, then the band."""
    if inside:
        c.piece(p.oval(y, rx, ry), straight(p.cx, p.y(y), w, w * asp), w, asp, pal, seed=seed,
                purl=lambda r, k: r < 1e9, tint=lambda X, Y: 0.62 + 0.20 * np.clip((Y - p.y(y)) / (ry * p.s), -1, 1))
    ring = c.mask(p.oval(y, rx + deep, ry + deep)) * (1 - c.mask(p.oval(y, rx, ry)))
    n = 2 * np.pi * (rx + deep / 2) * p.s / (w * 0.84)
    n = round(n / 4) * 4
    tint = lambda X, Y: np.where(Y < p.y(y), 0.84, 1.0) + 0 * X
    c.piece(ring, round_about(p.cx, p.y(y), n, w * asp, (rx + deep) * p.s, rx / ry * 0.8), w, asp, pal,
            seed=seed + 1, shadow=0.32, edge=0.4, spread=6, tint=tint, **rib)


TORSO = "M 0 2 L 112 2 Q 205 26 300 84 Q 334 190 331 312 Q 324 560 324 826 L 0 826"
HEM = "M 0 822 L 324 822 Q 322 872 308 912 Q 150 920 0 920"
SLEEVE = "M 116 3 Q 328 52 424 250 L 586 770 L 462 811 L 326 330 Q 280 160 116 3"
CUFF = "M 585 766 L 458 809 Q 470 850 492 890 L 602 853 Q 592 806 585 766"


def yoke_pullover(c, p, w, pal, seed):
    """A pullover with a stranded round yoke of reeds."""
    asp = 0.78
    arms = sleeves(c, p, SLEEVE, CUFF, 523, 790, 17.6, w, asp, pal, RIB2, seed)
    dots = lambda r, k: np.where((r == 3) & (np.mod(k, 2) == 0), 1, 0)
    body = c.piece(p.whole(TORSO), straight(p.cx, p.y(826), w, w * asp, bow=4), w, asp, pal, seed=seed + 20,
                   shadow=0.38, edge=0.35, spread=14, colour=dots)
    c.piece(p.whole(HEM), straight(p.cx + w, p.y(920), w * 0.95, w * asp), w, asp, pal, seed=seed + 21,
            shadow=0.18, edge=0.3, spread=8, **RIB2)
    # the yoke runs over body and sleeves alike, in two bands with fewer stitches above
    cy, squash = p.y(-70), 1.22
    reach = np.sqrt((c.x - p.cx) ** 2 + ((c.y - cy) * squash) ** 2) / p.s
    all_over = np.maximum(body, np.maximum(*arms))
    motif, wave = grid(REEDS), grid(WAVES)
    h = w * asp * 1.02
    low_rows = int(220 * p.s / h)

    def low(r, k):
        fig = motif[np.clip(r - 6, 0, 17), np.mod(k, 12)]
        out = np.where((r >= 6) & (r < 24), fig, 0)
        out = np.where((r == 1) | (r == 3), 1, out)
        return np.where((r == 2) & (np.mod(k, 2) == 0), 2, np.where(r == 2, 1, out))

    def high(r, k):
        fig = wave[np.clip(r - 4, 0, 3), np.mod(k, 12)]
        out = np.where((r >= 4) & (r < 8), fig, 0)
        out = np.where((r == 1) & (np.mod(k, 2) == 0), 2, out)
        out = np.where((r == 10) & (np.mod(k, 2) == 0), 2, out)
        return np.where((r == 12) & (np.mod(k, 4) < 2), 1, out)
    rim = 468
    split = rim - low_rows * h / p.s
    n_low = round(2 * np.pi * (rim * 0.62 + split * 0.38) * p.s / w / 24) * 24
    for n, r0, mask, chart, sd in ((n_low, rim, (reach < rim) & (reach >= split), low, 22),
                                   (n_low * 2 // 3, split, reach < split, high, 23)):
        c.piece(all_over * mask, round_about(p.cx, cy, n, h, r0 * p.s, squash), w, asp, pal,
                colour=chart, seed=seed + sd)
    neckband(c, p, 34, 108, 46, 31, w, asp, pal, RIB2, seed + 30)


def saltmarsh():
    c = Canvas(1600, 1200, linen("#e7dfce", 3), 101)
    yoke_pullover(c, Place(800, 150, 1.04), 8.6, [REED, CHALK, MADDER], 200)
    c.lay(puff=0.55, spread=13)
    return c.image()


def ferry():
    c = Canvas(1600, 1200, wood("#a39684", 9, 300), 102)
    yoke_pullover(c, Place(800, 130, 1.62), 12.5, [TEAL, CHALK, GORSE], 220)
    c.lay(puff=0.55, spread=18, shadow=0.5)
    img = c.image()
    # held a little crooked, as a picture taken on deck would be
    return img.rotate(-9, resample=3).crop((190, 130, 1410, 1045)).resize((1600, 1200), 1).resize((900, 675), 1)


def round_button(c, x, y, r, colour="#8a6f52"):
    """A button sewn through two holes."""
    ring = lambda k: [(x + k * np.cos(a), y + k * np.sin(a)) for a in np.linspace(0, 6.28, 40)]
    c.solid(ring(r), colour, shadow=0.5, edge=0.8, spread=4)
    c.solid(ring(r * 0.68), colour, shadow=0, edge=0.35, spread=3)
    for d in (-1, 1):
        c.solid([(x + d * r * 0.24 + 0.13 * r * np.cos(a), y + 0.13 * r * np.sin(a))
                 for a in np.linspace(0, 6.28, 14)], "#3a2e22", shadow=0, edge=0)


def front_band(c, p, outer, inner, bottom, w, asp, pal, seed, v_turn, split):
    """Neck and front bands in rib, worked outwards from the edge, meeting at the middle."""
    ring = c.mask(p.whole(outer)) * (1 - c.mask(p.whole(inner)))
    xs = (c.x - p.cx) / p.s
    low = (c.y > p.y(split))
    back = (c.y <= p.y(4))
    c.piece(ring * back, straight(p.cx, p.y(0), w * 0.9, w * asp), w, asp, pal, seed=seed, edge=0.3, spread=6,
            tint=lambda X, Y: 0.85 + 0 * X, **RIB1)
    for side in (-1, 1):
        c.piece(ring * ~back * ~low * (xs * side > 0), straight(p.cx, p.y(split), w * 0.9, w * asp,
                turn=side * (90 - v_turn)), w, asp, pal, seed=seed + 2 + side, edge=0.35, shadow=0.2, spread=6, **RIB1)
    if bottom:
        c.piece(p.whole(bottom), straight(p.cx - 40, p.y(split), w * 0.9, w * asp, turn=90), w, asp, pal,
                seed=seed + 6, edge=0.4, shadow=0.34, spread=6, **RIB1)


def ebb():
    c = Canvas(1600, 1200, wood("#b3a48d", 12, 260), 103)
    p, w, asp = Place(800, 130, 1.05), 8.8, 0.78
    pal, band = [ESTUARY], [OAT]
    ebbing = {0, 1, 4, 5, 9, 10, 15, 16, 22, 30, 39}
    tide = lambda r, k: np.isin(r, [float(e) for e in ebbing])
    sleeves(c, p, SLEEVE, CUFF, 523, 790, 17.6, w, asp, pal, RIB1, 300, purl=tide, cuff_pal=pal)
    c.piece(p.whole(TORSO), straight(p.cx, p.y(826), w, w * asp, bow=4), w, asp, pal, seed=320, purl=tide,
            shadow=0.42, edge=0.4, spread=14)
    c.piece(p.whole(HEM), straight(p.cx, p.y(920), w * 0.92, w * asp), w, asp, pal, seed=321, shadow=0.18,
            edge=0.3, spread=8, **RIB1)
    inside = "M 0 -8 Q 62 -8 84 12 Q 62 150 0 282"
    c.piece(p.whole(inside), straight(p.cx, p.y(200), w, w * asp), w, asp, pal, seed=322,
            purl=lambda r, k: r < 1e9, tint=lambda X, Y: 0.66 + 0 * X)
    for side in (-1, 1):
        q = path("M 92 560 L 252 560 L 250 752 L 94 752")
        q = [(p.cx + side * x * p.s, p.y(y)) for x, y in q]
        c.piece(q, straight(p.cx + side * 172 * p.s, p.y(752), w, w * asp), w, asp, pal, seed=324 + side,
                shadow=0.3, edge=0.4, spread=6)
        q = path("M 90 548 L 254 548 L 254 590 L 90 590")
        q = [(p.cx + side * x * p.s, p.y(y)) for x, y in q]
        c.piece(q, straight(p.cx + side * 172 * p.s, p.y(590), w * 0.92, w * asp), w, asp, band, seed=326 + side,
                shadow=0.28, edge=0.4, spread=5, **RIB1)
    front_band(c, p, "M 0 -44 Q 92 -44 126 6 Q 104 150 30 316 L 0 330", inside,
               "M 0 268 L 12 262 L 31 300 L 31 921 L 0 922", w, asp, band, 330, 23, 300)
    for y in (330, 446, 562, 678, 794, 892):
        round_button(c, p.cx, p.y(y), 17)
    c.lay(puff=0.55, spread=13)
    return c.image()


def gansey():
    c = Canvas(1200, 1600, paper("#ddd6c6", 7), 104)
    p, w, asp = Place(600, 205, 1.14), 8.8, 0.74
    pal = ["#4d6676"]
    # drop shoulders: the sleeve is set straight on to the side of the body
    sleeve = "M 240 44 Q 346 62 366 170 Q 410 380 462 800 L 352 822 L 284 360 Q 262 180 240 44"
    cuff = "M 463 796 L 349 819 Q 352 870 368 904 L 468 886 Q 468 840 463 796"

    def moss(r, k):
        return np.mod(r + k, 2) == 0

    def chest(r, k):
        """Panels from the middle out: ladder, moss diamond, with a purl stitch each side."""
        q = np.mod(np.abs(k + 0.5) + 8.5, 36)
        ladder = (q < 16) & (((np.mod(r, 8) < 2) & (q > 2) & (q < 14)) | (q == 1) | (q == 15))
        d = np.abs(q - 26) + np.abs(np.mod(r, 26) - 13) * 0.72
        diamond = (q >= 18) & (q < 35) & (((d < 7.6) & (d > 6.1)) | ((d < 4.4) & moss(r, k)))
        ridge = (r >= -5) & (r < 0) & np.isin(np.mod(r, 5), (0, 3))
        return np.where(r >= 0, ladder | diamond | (q == 17) | (q == 35), ridge)
    up = int(380 * p.s / (w * asp))
    arm = lambda r, k: chest(r - int(460 * p.s / (w * asp)), k)
    sleeves(c, p, sleeve, cuff, 408, 806, 9.5, w, asp, pal, RIB2, 340, purl=arm)
    body = "M 0 4 L 118 4 L 292 54 Q 306 200 302 420 L 300 826 L 0 826"
    hem = "M 0 822 L 300 822 Q 300 880 290 916 Q 150 922 0 922"
    c.piece(p.whole(body), straight(p.cx, p.y(826), w, w * asp), w, asp, pal, seed=342, shadow=0.45,
            edge=0.42, spread=13, purl=lambda r, k: chest(r - up, k))
    c.piece(p.whole(hem), straight(p.cx + w, p.y(922), w * 0.95, w * asp), w, asp, pal, seed=343, shadow=0.2,
            edge=0.3, spread=8, **RIB2)
    for side in (-1, 1):
        strap = [(p.cx + side * x * p.s, p.y(y)) for x, y in path("M 112 3 L 291 54 L 295 90 L 128 46")]
        c.piece(strap, straight(p.cx + side * 200 * p.s, p.y(60), w, w * asp, turn=15 * side), w, asp, pal, ridges=True,
                seed=345 + side, shadow=0.15)
    neckband(c, p, 30, 104, 38, 36, w, asp, pal, RIB2, 347)
    c.lay(puff=0.6, spread=13, shadow=0.5)
    return c.image()


def marram():
    c = Canvas(1200, 1600, linen("#6f7a70", 14, 5.6), 105)
    p, w, asp = Place(600, 190, 1.3), 9.6, 0.78
    pal = [SAND]
    body = ("M 0 4 L 92 4 L 214 44 Q 206 170 214 262 Q 228 338 316 368 Q 320 600 318 830 L 0 830")
    hem = "M 0 826 L 318 826 Q 316 890 304 930 Q 150 936 0 936"
    inside = "M 0 -2 Q 60 0 78 12 Q 66 180 0 352"
    panels = [(4, 6, 8), (14, 8, -11), (26, 6, -8)]
    ground = lambda r, k: np.isin(np.mod(k, 36), (2, 3, 10, 11, 12, 13, 22, 23, 24, 25, 32, 33))
    f = straight(p.cx - 18 * w, p.y(830), w, w * asp)
    c.piece(p.whole(body), f, w, asp, pal, seed=360, cable=(panels, 36), purl=ground, lift=1.15, edge=0.4, spread=13)
    c.piece(p.whole(hem), straight(p.cx, p.y(936), w * 0.92, w * asp), w, asp, pal, seed=361, shadow=0.25,
            edge=0.3, spread=8, **RIB2)
    c.piece(p.whole(inside), straight(p.cx, p.y(200), w, w * asp), w, asp, pal, seed=362,
            purl=lambda r, k: r < 1e9, tint=lambda X, Y: 0.60 + 0 * X)
    front_band(c, p, "M 0 -34 Q 84 -34 112 8 Q 96 190 10 392 L 0 410", inside, None, w, asp, pal, 364, 16, 900)
    for side in (-1, 1):
        arm = path("M 196 38 L 230 48 Q 226 170 236 256 Q 250 322 318 346 L 317 378 Q 226 352 206 268 Q 190 170 196 38")
        arm = [(p.cx + side * x * p.s, p.y(y)) for x, y in arm]
        c.piece(arm, straight(p.cx + side * 220 * p.s, p.y(200), w * 0.9, w * asp, turn=90 * side), w, asp, pal,
                seed=368 + side, shadow=0.25, edge=0.45, spread=6, **RIB1)
    c.lay(puff=0.5, spread=13, shadow=0.5)
    return c.image()


def beacon():
    c = Canvas(1600, 1200, paper("#dfe0d6", 15), 106)
    # a child's, with raglan sleeves: wider for its length, sleeves shorter, the stitches larger on it
    p, w, asp = Place(800, 205, 1.06), 11.4, 0.78
    pal = [MADDER, CHALK, GORSE]
    torso = "M 0 2 L 92 4 Q 190 160 322 306 Q 318 480 316 660 L 0 660"
    hem = "M 0 656 L 316 656 Q 312 704 302 736 Q 150 742 0 742"
    sleeve = "M 60 4 Q 300 30 424 228 L 596 520 L 476 592 L 318 318 Q 200 190 60 4"
    cuff = "M 594 516 L 473 589 Q 488 622 514 652 L 622 588 Q 604 550 594 516"
    band = charted(FLAME, 34)

    def chest(r, k):
        out = np.where((r >= 33) & (r < 50), band(r, k + 5), 0)
        out = np.where((r == 30) | (r == 31) | (r == 51) | (r == 52), 2, out)
        return np.where(np.isin(r, (6, 7)), 1, out)
    arm = lambda r, k: np.where(np.isin(r, (6, 7)), 1, np.where(np.isin(r, (11, 12)), 2, 0))
    sleeves(c, p, sleeve, cuff, 535, 556, 30.5, w, asp, pal, RIB1, 380, colour=arm)
    c.piece(p.whole(torso), straight(p.cx - w / 2, p.y(660), w, w * asp, bow=4), w, asp, pal, seed=383, shadow=0.42,
            edge=0.4, spread=14, colour=chest)
    c.piece(p.whole(hem), straight(p.cx, p.y(742), w * 0.92, w * asp), w, asp, pal, seed=384, shadow=0.2,
            edge=0.3, spread=8, **RIB1)
    neckband(c, p, 30, 100, 44, 34, w, asp, [CHALK], RIB1, 389)
    c.lay(puff=0.6, spread=14)
    return c.image()


def cockle():
    c = Canvas(1600, 1200, linen("#cfd4cb", 18), 107)
    p, w, asp = Place(800, 215, 1.0), 11.6, 0.62
    pal = [OAT, BLUSH]
    torso = "M 0 2 L 112 2 Q 190 22 262 70 Q 330 190 334 310 Q 360 540 384 740 Q 200 764 0 764"
    sleeve = "M 150 10 Q 330 50 440 190 L 640 420 L 522 512 L 330 330 Q 250 160 150 10"
    cuff = "M 636 416 L 518 508 L 552 552 L 672 460"
    sleeves(c, p, sleeve, cuff, 580, 464, 37, w, asp, pal, dict(ridges=True), 400, cuff_pal=[BLUSH],
            body_kw=dict(fine=1.0), colour=None)
    c.piece(p.whole(torso), tapered(p.cx, p.y(764), w, w * 0.76, taper=0.00030, bow=-6), w, 0.76, pal, seed=403,
            shadow=0.4, edge=0.4, spread=14)
    # the garter yoke and edge
    cy = p.y(-60)
    reach = np.sqrt((c.x - p.cx) ** 2 + ((c.y - cy) * 1.2) ** 2) / p.s
    body = c.a * (reach < 400)
    c.piece(body, round_about(p.cx, cy, 236, w * asp, 400 * p.s, 1.2), w, asp, pal, ridges=True, seed=405,
            colour=lambda r, k: np.where(np.isin(r // 2, (1, 2, 6, 11)), 1, 0), shadow=0.12)
    c.piece(p.whole("M 0 708 L 377 686 Q 384 724 388 756 Q 200 782 0 782"),
            straight(p.cx, p.y(770), w, w * asp, bow=-10), w, asp, [BLUSH], ridges=True, seed=406, shadow=0.2,
            edge=0.3, spread=7)
    neckband(c, p, 28, 98, 40, 26, w, asp, [BLUSH], dict(ridges=True), 408)
    c.piece(p.whole("M 0 84 L 30 84 L 30 782 L 0 783"), straight(p.cx - 28, p.y(400), w, w * asp, turn=90), w, asp,
            [BLUSH], ridges=True, seed=410, shadow=0.36, edge=0.4, spread=6)
    for y in (112, 190, 268):
        round_button(c, p.cx, p.y(y), 17, "#e9e2d2")
    c.lay(puff=0.6, spread=14)
    return c.image()


PICTURES = {"saltmarsh-yoke": saltmarsh, "ebb-cardigan": ebb, "gannet-gansey": gansey, "marram-vest": marram,
            "beacon-pullover": beacon, "cockle-jacket": cockle, "ferry-saltmarsh": ferry}
