"""Knitted fabric, worked out pixel by pixel.

A picture of fabric starts from two fields: `u` counts stitches to the right and
`v` counts rows upwards. Any bend of the cloth is a bend of those fields, so a
yoke, a sleeve and a heel are all drawn by the same code.
"""
import numpy as np
from PIL import Image

F = np.float32
# One table of small differences, looked up by row and column: no two stitches
# of hand knitting are quite alike.
UNEVEN = np.random.default_rng(7).normal(0, 1, (61, 67)).astype(F)


def noise(shape, scale, seed, stretch=(1, 1)):
    """Smooth noise of about unit spread; `scale` is the size of a blotch in pixels."""
    h = max(2, int(shape[0] / (scale * stretch[1])) + 3)
    w = max(2, int(shape[1] / (scale * stretch[0])) + 3)
    grid = np.random.default_rng(seed).normal(0, 1, (h, w)).astype(F)
    big = Image.fromarray(grid).resize((shape[1], shape[0]), Image.BICUBIC)
    return np.asarray(big, dtype=F)


def hexrgb(text):
    """A colour such as `#6b7f4c` as three figures from 0 to 1."""
    return np.array([int(text[i:i + 2], 16) / 255 for i in (1, 3, 5)], dtype=F)


def rib(u, knit, purl, share):
    """Gather a rib: the knit columns take `share` of each repeat. Gives u and relief."""
    n = knit + purl
    rep = np.floor(u / n)
    f = u / n - rep
    up = f < share
    out = np.where(up, knit * f / share, knit + purl * (f - share) / (1 - share))
    dome = np.where(up, np.sqrt(np.maximum(0, 1 - (2 * f / share - 1) ** 2)), 0)
    return (rep * n + out).astype(F), dome.astype(F)


def rib_kinds(knit, purl):
    """Knit and purl columns to go with `rib`."""
    return lambda row, col: (np.mod(col, knit + purl) >= knit)


def cables(u, v, panels, repeat):
    """Cross ropes of stitches in each panel `(start, stitches, rows)` of a repeat.

    At every crossing the strand moving right (left, if rows is negative) lies
    in front. Gives the new u, relief, and True where the ground is purled.
    """
    rep = np.floor(u / repeat)
    f = u - rep * repeat
    out, dome = u.copy(), np.zeros_like(u)
    purl = np.zeros(u.shape, bool)
    for start, n, rows in panels:
        q = f - start
        inside = (q >= 0) & (q < n)
        way = 1 if rows > 0 else -1
        phase = v * (np.pi / abs(rows))
        swing = (np.tanh(1.25 * np.sin(phase)) / np.tanh(1.25)).astype(F)
        c, sw = n / 2, n / 2 * 1.13
        front_a = (np.cos(phase) * way) > 0
        picked = np.zeros(u.shape, bool)
        for layer in (0, 1):
            # layer 0 is the strand in front, layer 1 the one passing behind
            sign = np.where(front_a == (layer == 0), 1, -1)
            ua = q - (c + sign * swing * (n / 4) * 0.94) + sw / 2
            hit = inside & ~picked & (ua > 0) & (ua < sw)
            x = 2 * ua / sw - 1
            cross = np.abs(np.cos(phase)) ** 2
            lift = np.sqrt(np.maximum(0, 1 - x * x)) - (0.45 * cross if layer else 0)
            dome = np.where(hit, lift, dome)
            local = rep * repeat + start + ua * (n / 2) / sw + np.where(sign > 0, n // 2, 0)
            out = np.where(hit, local, out)
            picked |= hit
        purl |= inside & ~picked
    return out.astype(F), dome.astype(F), purl


def open_holes(u, v, asp, hole, size):
    """Push the stitches apart round each yarn over; gives u, v and what still covers."""
    bu, bv = np.floor(u), np.floor(v)
    best = np.full(u.shape, 9, F)
    hx, hy = np.zeros_like(u), np.zeros_like(u)
    for dr in (-1, 0, 1):
        for dc in (-1, 0, 1):
            yes = hole(bv + dr, bu + dc)
            dx = u - (bu + dc + 0.5)
            dy = (v - (bv + dr + 0.5)) * asp
            d = np.where(yes, np.sqrt(dx * dx + dy * dy), 9)
            near = d < best
            best = np.where(near, d, best)
            hx, hy = np.where(near, dx, hx), np.where(near, dy, hy)
    reach = 1.15
    d = np.maximum(best, 1e-3)
    to = np.where(d < reach, np.maximum(0, (d - size) / (reach - size) * reach), d)
    k = np.where(best < reach, to / d - 1, 0)
    cover = np.clip((best - size) / 0.1, 0, 1)
    return (u + hx * k).astype(F), (v + hy * k / asp).astype(F), cover.astype(F)


def garter(v):
    """Let the purled row of each pair stand up and the other sink. Gives v and relief."""
    pair = np.floor(v / 2)
    f = v / 2 - pair
    share = 0.70
    up = f < share
    out = np.where(up, f / share, 1 + (f - share) / (1 - share))
    dome = np.where(up, np.sqrt(np.maximum(0, 1 - (2 * f / share - 1) ** 2)), -0.15)
    return (pair * 2 + out).astype(F), dome.astype(F)


def strands(u, v, asp, purl=None, fine=1.0):
    """Height of the yarn at each pixel, and which stitch it belongs to.

    A knit stitch is a V of two strands, point down, its point lying over the
    head of the stitch below. A purl stitch is a pair of interlocked arcs.
    Gives height 0 to 1, row, column, and place along and across the strand.
    """
    col, base = np.floor(u), np.floor(v)
    x = u - col - 0.5
    ax = np.abs(x)
    # leg from (0.02, low) to (0.46, high), in stitch widths
    lx, ly = 0.43, 1.30 * asp
    ln = np.hypot(lx, ly)
    dx, dy = lx / ln, ly / ln
    half, wide = ln / 2 * 1.12, 0.205 * fine
    h = np.zeros(u.shape, F)
    row = base.copy()
    t = np.zeros(u.shape, F)
    s = np.zeros(u.shape, F)
    for dk in (0, -1, 1):
        y = (v - (base + dk) - 0.5) * asp
        px = ax - 0.245
        tt = (px * dx + y * dy) / half
        ss = (px * dy - y * dx) / wide
        # thinner towards the point, as the strand turns away behind
        r = 1 - ss * ss * (1.0 + 0.25 * tt) - tt ** 4
        hh = np.sqrt(np.maximum(0, r)) * (0.92 - 0.16 * tt)
        better = hh > h
        h = np.where(better, hh, h)
        row = np.where(better, base + dk, row)
        t = np.where(better, tt, t)
        s = np.where(better, ss * np.sign(x), s)
    if purl is not None and purl.any():
        y = v - base
        wave = np.cos(2 * np.pi * x)
        top = (y - (0.70 + 0.15 * wave)) / 0.25
        low = (y - (0.26 + 0.15 * wave)) / 0.25
        ht = np.sqrt(np.maximum(0, 1 - top * top)) * (0.80 + 0.20 * wave)
        hl = np.sqrt(np.maximum(0, 1 - low * low)) * (0.74 - 0.20 * wave)
        up = ht >= hl
        h = np.where(purl, np.maximum(ht, hl), h)
        row = np.where(purl, base, row)
        t = np.where(purl, x * 2, t)
        s = np.where(purl, np.where(up, top, low), s)
    return h.astype(F), row, col, t, s


def shade(h, relief, px, lift):
    """Light from the upper left on heights given in stitch widths of `px` pixels."""
    z = (h * 0.30 + relief * lift) * px
    gy, gx = np.gradient(z)
    lx, ly, lz = -0.45, -0.55, 0.70
    lit = (lz - gx * lx - gy * ly) / np.sqrt(1 + gx * gx + gy * gy)
    close = 0.60 + 0.40 * np.minimum(1, h * 1.25)
    return ((0.60 + 0.66 * np.clip(lit, 0, 1.02)) * close).astype(F)


def cloth(u, v, px, asp, palette, colour=None, purl=None, warp=None, cable=None,
          hole=None, hole_size=0.34, relief=None, ridges=False, lift=0.35, seed=1, uneven=1.0, fine=1.0):
    """Paint fabric: gives colour and cover (less than 1 in the holes of lace).

    `px` is the width of a stitch in pixels, `asp` row height over stitch width,
    `ridges` makes garter stitch. `colour(row, col)` picks from `palette`, `purl(row, col)` says which are purled.
    """
    shape = u.shape
    u = (u + noise(shape, px * 1.7, seed) * 0.045 * uneven
         + noise(shape, px * 14, seed + 1) * 0.16 * uneven).astype(F)
    v = (v + noise(shape, px * 1.7, seed + 2) * 0.05 * uneven
         + noise(shape, px * 14, seed + 3) * 0.22 * uneven).astype(F)
    rel = np.zeros(shape, F)
    forced = None
    cover = np.ones(shape, F)
    if warp:
        u, rel = rib(u, *warp)
    if cable:
        u, dome, forced = cables(u, v, *cable)
        rel = rel + dome
    if hole:
        u, v, cover = open_holes(u, v, asp, hole, hole_size)
    if ridges:
        v, dome = garter(v)
        rel = rel + dome
        purl = lambda row, col: np.mod(row, 2) == 0
    if relief:
        rel = rel + relief(u, v)
    kinds = purl(np.floor(v), np.floor(u)) if purl else None
    if cable:
        # a rope is knitted whatever the ground says
        kinds = forced if kinds is None else ((kinds & (rel <= 0)) | forced)
    h, row, col, t, s = strands(u, v, asp, kinds, fine)
    ri, ci = row.astype(int), col.astype(int)
    pal = np.stack([hexrgb(c) for c in palette])
    rgb = pal[colour(ri, ci)] if colour else np.broadcast_to(pal[0], shape + (3,))
    light = shade(h, rel, px, lift)
    light = light * (1 + 0.045 * uneven * UNEVEN[ri % 61, ci % 67])
    if purl and not (warp or ridges):
        # purl bumps throw small shadows: a figure in knit and purl shows by them
        light = light * np.where(kinds, 0.84, 1.03)
    # the twist of a plied yarn, seen when the stitches are large enough
    if px > 22:
        light = light * (1 + 0.07 * np.sin(9.5 * t + 2.6 * s))
    light = light * (0.80 + 0.20 * np.clip(rel + 0.55, 0, 1)) if (warp or cable or ridges) else light
    # shadows in wool keep their colour: darken by power as well as by scale
    deep = np.clip(light, 0.05, 1.5)[..., None]
    grey = rgb.mean(-1, keepdims=True)
    rgb = rgb * 0.82 + grey * 0.18
    out = rgb * deep * 0.95 + (1 - deep) * 0.05 + (1 - rgb) * np.clip(deep - 1, 0, 0.5) * 0.3
    return np.clip(out, 0, 1).astype(F), cover
