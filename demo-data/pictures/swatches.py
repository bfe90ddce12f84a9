"""Swatches seen close, skeins on a shelf, and the colours laid out."""
import numpy as np

from canvas import SS, Canvas, linen, paper, path, moved, straight, wood
from fabric import hexrgb, noise
from palette import *  # noqa: F403 - the colour names


def box(x0, y0, x1, y1, bulge=0):
    """A rectangle whose sides may bow a little inwards."""
    mx, my, b = (x0 + x1) / 2, (y0 + y1) / 2, bulge
    return path(f"M {x0} {y0} Q {mx} {y0 + b} {x1} {y0} Q {x1 - b} {my} {x1} {y1} "
                f"Q {mx} {y1 - b} {x0} {y1} Q {x0 + b} {my} {x0} {y0}")


def reeds():
    c = Canvas(1600, 1200, paper(OAT), 11)
    motif = grid(REEDS)

    def colour(row, col):
        r = np.mod(row, 27)
        fig = motif[np.clip(r - 5, 0, 17), np.mod(col + np.where(np.mod(row // 27, 2) == 1, 6, 0), 12)]
        out = np.where((r >= 5) & (r < 23), fig, 0)
        return np.where((r == 1) & (np.mod(col, 2) == 0), 2, out)
    c.piece(box(-60, -60, 1660, 1260), straight(20, 1210, 25, 19.5), 25, 0.78,
            [REED, CHALK, MADDER], colour=colour, seed=21)
    c.lay(puff=0, hairs=1500, fold=0.035)
    return c.image()


def cable():
    c = Canvas(1600, 1200, wood("#8d8275", 5), 12)
    out = box(170, 120, 1430, 1085, 22)
    edge = box(170, 1000, 1430, 1085, 0)
    field = straight(232, 1085, 20, 15.6)
    # two purl, rope of six, two purl, rope of eight, per repeat of eighteen
    panels = [(2, 6, 9), (11, 6, -9)]
    m = c.piece(out, field, 20, 0.78, [SAND], cable=(panels, 18), lift=1.0, seed=5,
                purl=lambda r, k: (np.mod(k, 18) < 2) | (np.mod(k, 18) == 8) | (np.mod(k, 18) == 9)
                | (np.mod(k, 18) == 10) | (np.mod(k, 18) == 17))
    hem = c.mask(edge) * m
    c.piece(hem, straight(232, 1085, 20, 15.6), 20, 0.78, [SAND], edge=0.25, seed=6,
            ridges=True)
    # still on the needle
    c.solid(moved(path("M 60 106 L 1560 106 Q 1585 113 1560 122 L 60 122 Q 40 114 60 106")),
            "#9a7b52", shadow=0.45, edge=0.9, spread=6)
    for i in range(62):
        x = 186 + i * 20
        loop = path(f"M {x - 7} 138 Q {x - 9} 98 {x + 1} 97 Q {x + 11} 98 {x + 8} 138 "
                    f"L {x + 3} 138 L {x - 2} 138")
        c.solid(loop, SAND, shadow=0.22, edge=0.8, spread=4)
    c.lay(puff=0.4, hairs=1800)
    return c.image()


LEAF = {(0, 5), (0, 7), (2, 4), (2, 8), (4, 3), (4, 9), (6, 2), (6, 10), (8, 1), (8, 11),
        (10, 0), (12, 1), (12, 11), (14, 2), (14, 10), (16, 3), (16, 9), (18, 4), (18, 8), (6, 6),
        (8, 5), (8, 7), (10, 6)}


def leaf(row, col):
    """The yarn overs of a leaf lace, twelve stitches by twenty rows."""
    table = np.zeros((20, 12), bool)
    for r, k in LEAF:
        table[r, k % 12] = True
    return table[np.mod(row, 20).astype(int), np.mod(col, 12).astype(int)]


def lace():
    c = Canvas(1600, 1200, linen("#4f636d", 8, 6), 13)
    pts = []
    # blocked on pins: the edges drawn out to a point at each
    n = 9
    x0, y0, x1, y1 = 220, 130, 1380, 1070
    def side(a, b):
        for i in range(n):
            for f in np.linspace(0, 1, 12, endpoint=False):
                t = (i + f) / n
                d = 15 * np.sin(np.pi * f)
                nx, ny = -(b[1] - a[1]), b[0] - a[0]
                ln = np.hypot(nx, ny)
                yield (a[0] + (b[0] - a[0]) * t + nx / ln * d, a[1] + (b[1] - a[1]) * t + ny / ln * d)
    for a, b in (((x0, y0), (x1, y0)), ((x1, y0), (x1, y1)), ((x1, y1), (x0, y1)), ((x0, y1), (x0, y0))):
        pts += list(side(a, b))
    m = c.piece(pts, straight(224, 1064, 19.2, 15.4), 19.2, 0.80, [MIST], hole=lambda r, k: leaf(r - 4, k),
                hole_size=0.56, seed=9, fine=0.86)
    edge = m * (1 - c.mask(box(262, 172, 1338, 1028)))
    c.piece(edge, straight(224, 1064, 19.2, 15.4), 19.2, 0.80, [MIST], ridges=True,
            seed=9, lift=0.4)
    for i in range(n + 1):
        t = i / n
        for x, y in ((x0 + (x1 - x0) * t, y0), (x0 + (x1 - x0) * t, y1),
                     (x0, y0 + (y1 - y0) * t), (x1, y0 + (y1 - y0) * t)):
            c.solid([(x + 6 * np.cos(a), y + 6 * np.sin(a)) for a in np.linspace(0, 6.28, 30)],
                    "#e8e2d2", shadow=0.4, edge=0.9, spread=4)
    c.lay(puff=0.2, spread=6, hairs=900, shadow=0.5, drop=0.5)
    return c.image()


def brioche_pieces(c, out, field, w, asp, rib_colour, furrow, seed, tint=None, edge=0.0, shadow=0.0,
                   share=0.74):
    """Brioche: tall, puffed knit ribs with the second colour deep between them."""
    return c.piece(out, field, w, asp, [rib_colour, furrow], warp=(1, 1, share), lift=0.62, seed=seed,
                   colour=lambda r, k: np.mod(k, 2), tint=tint, edge=edge, shadow=shadow, uneven=0.9)


def brioche():
    c = Canvas(900, 675, linen("#d9d0bd", 4), 14)
    brioche_pieces(c, box(90, 70, 810, 605, 12), straight(93, 610, 17, 27), 22, 1.25, HEATHER, OAT, 31)
    # a corner folded over to show the other face, the colours changed about
    c.a = c.a * (1 - c.mask([(820, 322), (552, 615), (820, 615)]))
    fold = path("M 806 330 Q 700 440 556 603 Q 535 470 549 345 Q 680 318 806 330")
    brioche_pieces(c, fold, straight(553, 330, 17, 27, turn=92), 22, 1.25, OAT, HEATHER, 32,
                   edge=0.75, shadow=0.55)
    c.lay(puff=0.45, spread=9, hairs=900)
    return c.image()


def garter():
    c = Canvas(1600, 1200, paper("#e6dfd0"), 15)
    field = straight(226, 1050, 23, 13.5, turn=-4)
    out = moved(box(230, 150, 1370, 1050, 14), turn=-4, about=(800, 600))
    seq = np.array([0] * 14 + [1] * 4 + [0] * 6 + [2] * 2 + [0] * 6 + [1] * 4)
    c.piece(out, field, 23, 0.59, [SAMPHIRE, CHALK, MUD], colour=lambda r, k: seq[np.mod(r // 2 * 2, len(seq))],
            ridges=True, lift=0.55, seed=41)
    # two ends left to darn in
    end = [(1372 + 70 * t + 34 * np.sin(5 * t), 905 + 150 * t * t) for t in np.linspace(0, 1.6, 50)]
    yarn(c, end, 11, SAMPHIRE)
    c.lay(puff=0.5, hairs=2000)
    return c.image()


def yarn(c, line, width, colour, shadow=0.3):
    """A length of plied yarn along a line."""
    p = np.array(line)
    d = np.gradient(p, axis=0)
    d = d / np.maximum(1e-6, np.hypot(d[:, 0], d[:, 1]))[:, None]
    nrm = np.stack([-d[:, 1], d[:, 0]], 1) * width / 2
    c.solid([tuple(q) for q in np.concatenate([p + nrm, (p - nrm)[::-1]])], colour,
            shadow=shadow, edge=0.9, spread=4)


def hank(c, cx, cy, length, thick, colour, seed, turn=0):
    """A skein twisted upon itself, its two halves wound round each other."""
    reach = int(length / 2 + 6)
    box = (slice(max(0, (cy - reach) * SS), max(0, (cy + reach) * SS)),
           slice(max(0, (cx - reach) * SS), max(0, (cx + reach) * SS)))
    a = np.radians(turn)
    gx, gy = c.x[box] - cx, c.y[box] - cy
    x, y = gx * np.cos(a) + gy * np.sin(a), -gx * np.sin(a) + gy * np.cos(a)
    ends = np.clip(1 - (np.abs(x) / (length / 2)) ** 4, 0, 1)
    # where the halves pass, the outline swells and narrows
    pitch = thick * 0.86
    r = thick / 2 * np.sqrt(ends) * (1 + 0.055 * np.cos(2 * np.pi * x / pitch))
    m = np.clip((r - np.abs(y)) * 1.5 + 0.5, 0, 1) * (np.abs(x) < length / 2)
    yn = np.clip(y / np.maximum(r, 1), -1, 1)
    # across the face the twist shows as slanting S-shaped lobes
    lean = x / pitch + 0.50 * np.arcsin(yn) / 1.57
    lobe = np.floor(lean)
    f = lean - lobe
    bulge = np.sqrt(np.maximum(0.0, 1 - (2 * f - 1) ** 2))
    width = thick / 15
    across = (np.arcsin(2 * f - 1) / 1.57 * 0.5 * pitch * 0.8 + noise(x.shape, 40, seed) * width * 0.3
              + yn * thick * 0.07) / width
    k = across - np.floor(across) - 0.5
    h = np.sqrt(np.maximum(0.02, 1 - 3.2 * k * k))
    twist = 1 + 0.08 * np.sin((y - x * 0.5) / width * 2.6 + k * 5 + np.floor(across) * 2.3)
    light = (0.46 + 0.58 * h) * twist * (1 - 0.18 * k) * (1 + 0.05 * np.sin(np.floor(across) * 12.9 + lobe))
    light = light * (0.40 + 0.66 * bulge) * (1.08 - 0.40 * yn ** 2 - 0.20 * yn)
    rgb = hexrgb(colour) * light[..., None]
    c.top[box] = c.top[box] * (1 - m[..., None]) + rgb * m[..., None]
    c.a[box] = np.maximum(c.a[box], m)


def band(c, cx, cy, thick, wide, colour, block, turn=0):
    """A paper band round the middle, a block of colour at one end of it."""
    t = thick * 0.54
    p = path(f"M {cx - wide / 2} {cy - t} Q {cx} {cy - t - 5} {cx + wide / 2} {cy - t} "
             f"L {cx + wide / 2} {cy + t} Q {cx} {cy + t + 6} {cx - wide / 2} {cy + t}")
    c.solid(moved(p, turn=turn, about=(cx, cy)), colour, shadow=0.3, edge=0.35, spread=9)
    q = path(f"M {cx - wide / 2 + 8} {cy - t * 0.55} L {cx + wide / 2 - 8} {cy - t * 0.55} "
             f"L {cx + wide / 2 - 8} {cy + t * 0.05} L {cx - wide / 2 + 8} {cy + t * 0.05}")
    c.solid(moved(q, turn=turn, about=(cx, cy)), block, shadow=0, edge=0)


def shelf():
    c = Canvas(1600, 1200, paper("#d8d0bf"), 16)
    boards = (600, 1130)
    rows = [[(REED, CHALK), (CHALK, OAT), (MADDER, OAT), (ESTUARY, CHALK)],
            [(SAND, CHALK), (HEATHER, OAT), (PEAT, SAND), (SAMPHIRE, CHALK)]]
    for k, y in enumerate(boards):
        c.solid(path(f"M -40 {y} L 1640 {y} L 1640 {y + 44} L -40 {y + 44}"), "#a08a6b",
                shadow=0, edge=0.35, spread=8)
        c.lay(puff=0, hairs=0, shadow=0.5)
    for k, y in enumerate(boards):
        for i, (shade, paperish) in enumerate(rows[k]):
            for j, (dx, dy) in enumerate(((0, -62), (10, -178), (-6, -294))):
                if j == 2 and (i + k) % 2:
                    continue
                cx, cy = 220 + i * 390 + dx, y + dy
                hank(c, cx, cy, 352, 122, shade, 60 + k * 20 + i * 4 + j)
                band(c, cx + (8 if j else -4), cy, 116, 84, "#ece5d5" if j != 1 else "#e3dac6", shade)
                c.lay(puff=0.42, spread=10, hairs=260, shadow=0.34, fold=0, drop=0.6)
    return c.image()


def colours():
    c = Canvas(1600, 1200, linen("#e9e2d3", 6), 17)
    shades = [REED, SAMPHIRE, CHALK, SAND, MADDER, BLUSH, HEATHER, ESTUARY, TEAL, MIST, MUD, PEAT]
    rng = np.random.default_rng(4)
    for i, s in enumerate(shades):
        cx, cy = 245 + (i % 4) * 370, 215 + (i // 4) * 385
        turn = float(rng.normal(0, 2.2))
        out = moved(box(cx - 128, cy - 128, cx + 128, cy + 128, 9), turn=turn, about=(cx, cy))
        f = straight(cx, cy + 128, 14, 11, turn=turn)
        m = c.piece(out, f, 14, 0.78, [s], seed=70 + i)
        inner = moved(box(cx - 106, cy - 106, cx + 106, cy + 106, 4), turn=turn, about=(cx, cy))
        c.piece(m * (1 - c.mask(inner)), f, 14, 0.78, [s], seed=70 + i, ridges=True)
        end = [(cx + 120 + 40 * t + 14 * np.sin(4 * t + i), cy + 118 + 44 * t * t * np.cos(i))
               for t in np.linspace(0, 1.3, 30)]
        yarn(c, end, 8, s)
        c.lay(puff=0.5, spread=8, hairs=260, shadow=0.38, drop=0.8)
    return c.image()


PICTURES = {"swatch-reeds": reeds, "swatch-cable": cable, "swatch-lace": lace, "swatch-brioche": brioche,
            "swatch-garter": garter, "skeins-shelf": shelf, "marsh-colours": colours}
