"""Hats, mitts, socks, shawls, scarves, and a blanket, lying flat."""
import numpy as np

from canvas import Canvas, linen, moved, paper, path, round_about, straight, wood
from fabric import F, rib_kinds
from garments import RIB1, RIB2
from palette import *  # noqa: F403 - the colour names
from swatches import box, brioche_pieces, yarn


def fringe(c, points, down, length, colours, seed, width=6, per=3):
    """Knotted tassels at each point, hanging along `down`."""
    rng = np.random.default_rng(seed)
    dx, dy = down
    for i, (x, y) in enumerate(points):
        shade = colours[i % len(colours)]
        for j in range(per):
            off, bend = (j - (per - 1) / 2) * width * 0.9, rng.normal(0, 7)
            ln = length * rng.uniform(0.9, 1.06)
            line = []
            for t in np.linspace(0, 1, 24):
                side = off * (0.35 + t) + bend * t * t + rng.normal(0, 0.15)
                line.append((x + dx * ln * t - dy * side, y + dy * ln * t + dx * side))
            yarn(c, line, width, shade, shadow=0.25)
        knot = [(x + dx * 9 + 8 * np.cos(a), y + dy * 9 + 8 * np.sin(a)) for a in np.linspace(0, 6.28, 24)]
        c.solid(knot, shade, shadow=0.35, edge=0.9, spread=3)


def hat():
    c = Canvas(1600, 1200, linen("#d9cdb8", 21), 120)
    cx, base, hw, w, asp = 800, 820, 372, 12.4, 0.80
    pal = [MADDER, SAND, PEAT]
    crown = path("M 428 822 Q 420 560 520 400 Q 620 262 800 254 Q 980 262 1080 400 Q 1180 560 1172 822")
    top_y = 250

    def field(x, y):
        # towards the crown the columns lean together, as the decreases make them
        up = np.clip((base - y) / (base - top_y), 0, 0.995)
        k = np.where(up > 0.30, np.sqrt(np.maximum(0.004, 1 - ((up - 0.30) / 0.70) ** 2)), 1.0)
        k = np.maximum(k, 0.30)
        return ((x - cx) / (w * k)).astype(F), ((base - y) / (w * asp) + 0.9 * ((x - cx) / hw) ** 2).astype(F)
    motif = grid(LANTERN)

    def colour(r, k):
        out = np.where((r >= 8) & (r < 21), motif[np.clip(r - 8, 0, 12), np.mod(k + 6, 13)], 0)
        out = np.where(np.isin(r, (4, 5, 23, 24)), 1, out)
        out = np.where(np.isin(r, (27, 28)) & (np.mod(k, 4) < 2), 1, out)
        # a light stitch up each line of decreases
        out = np.where((r > 30) & (np.mod(r, 2) == 0) & (np.mod(k, 8) == 0), 1, out)
        return np.where((r == 2) & (np.mod(k, 2) == 0), 1, out)
    c.piece(crown, field, w, asp, pal, colour=colour, seed=500, edge=0.5, spread=30)
    brim = path("M 420 800 Q 800 834 1180 800 Q 1190 880 1182 976 Q 800 1012 418 976 Q 410 880 420 800")
    c.piece(brim, straight(cx + w, 985, w * 0.9, w * asp, bow=5), w, asp, pal, seed=503, shadow=0.5, edge=0.55,
            spread=12, **RIB2)
    c.lay(puff=0.6, spread=16, shadow=0.46)
    return c.image((180, 165, 1420, 1095))


def set_out(pts, side, ox, oy, turn):
    """Place an outline drawn about (0, 0), mirrored for the left."""
    q = [(ox + side * x, oy + y) for x, y in pts]
    return moved(q, turn=turn, about=(ox, oy))


def lit_tube(ox, oy, half, turn, deep=0.16):
    """Shade towards both edges of a tube of cloth."""
    a = np.radians(turn)
    return lambda X, Y: 1 - deep * np.clip(np.abs((X - ox) * np.cos(a) + (Y - oy) * np.sin(a)) / half, 0, 1.2) ** 3


def mitts():
    c = Canvas(1600, 1200, wood("#90816d", 23, 210, True), 121)
    w, asp = 11.4, 0.79
    for side in (-1, 1):
        ox, oy, turn = 800 + side * 262, 610 + side * 22, 7 * side
        at = lambda t: set_out(path(t), side, ox, oy, turn)
        thumb = at("M -110 70 Q -190 -20 -232 -140 L -150 -172 Q -110 -90 -60 -20")
        c.piece(thumb, straight(*set_out([(-150, -60)], side, ox, oy, turn)[0], w * 0.95, w * asp, turn=turn - 24 * side), w,
                asp, [SAMPHIRE], seed=520 + side, edge=0.5, spread=9)
        tip = at("M -236 -136 L -148 -171 L -160 -206 L -250 -172")
        c.piece(tip, straight(*set_out([(-195, -150)], side, ox, oy, turn)[0], w * 0.9, w * asp, turn=turn - 24 * side), w,
                asp, [SAMPHIRE], seed=524 + side, edge=0.4, shadow=0.25, spread=5, **RIB1)
        hand = at("M -142 260 Q -150 60 -146 -270 L 146 -270 Q 156 60 142 260")
        c.piece(hand, shifted(straight(*set_out([(0, 260)], 1, ox, oy, turn)[0], w, w * asp, turn=turn), 20), w, asp,
                    [SAMPHIRE], seed=526 + side, cable=([(13, 6, 7 * side), (21, 6, -7 * side)], 40),
                    purl=lambda r, k: np.isin(np.mod(k, 40), (11, 12, 19, 20, 27, 28)), lift=1.1,
                    edge=0.5, spread=14, shadow=0.4, tint=lit_tube(ox, oy, 146, turn))
        for t, sd in (("M -146 -266 L 146 -266 L 140 -334 L -140 -334", 530),
                      ("M -142 256 L 142 256 Q 140 350 150 430 L -150 430 Q -140 350 -142 256", 534)):
            c.piece(at(t), straight(ox, oy, w * 0.86, w * asp, turn=turn), w, asp, [SAMPHIRE], seed=sd + side, edge=0.4,
                    shadow=0.2, spread=8, **RIB2)
        c.lay(puff=0.6, spread=13, shadow=0.5)
    return c.image((190, 190, 1430, 1120))


def shifted(field, by):
    """The same fabric, its columns counted from elsewhere."""
    def out(x, y):
        u, v = field(x, y)
        return (u + by).astype(F), v
    return out


def socks():
    lines = stripes((14, 0), (2, 1), (3, 0), (1, 1), (3, 0), (2, 1))
    return sock_pair(Canvas(1200, 1600, paper("#c9cfc8", 25), 122), [CHALK, ESTUARY], MUD, lines, True, 540)


def sock_pair(c, pal, dark, lines, ribbed_heel, seed):
    """Two socks side by side: cuffs, heels and toes in the dark colour, the rest by `lines(row, col)`."""
    w, asp = 10.2, 0.78
    for n, (ox, oy) in enumerate(((215, 200), (450, 350))):
        # leg down the page, round the heel, foot to the right; the hinge is inside the ankle
        hx, hy = ox + 250, oy + 690
        leg = path(f"M {ox + 14} {oy + 120} L {ox + 250} {oy + 120} Q {ox + 252} {oy + 500} {hx + 6} {hy - 40} "
                   f"Q {hx + 14} {hy + 6} {hx + 60} {hy + 8} L {hx + 190} {hy + 14} Q {hx + 330} {hy + 22} {hx + 336} {hy + 132} "
                   f"Q {hx + 330} {hy + 236} {hx + 180} {hy + 246} L {hx - 60} {hy + 250} Q {hx - 236} {hy + 250} {hx - 240} {hy + 60} "
                   f"Q {hx - 226} {hy - 200} {ox + 14} {oy + 120}")

        def field(x, y):
            dx, dy = x - hx, y - hy
            r = np.sqrt(dx * dx + dy * dy)
            arc = np.arctan2(-dx, dy)          # 90 degrees at the leg, none at the foot
            in_leg, in_foot = dy < 0, (dx > 0) & (dy >= 0)
            u = np.where(in_leg, dx, np.where(in_foot, -dy, -r))
            v = np.where(in_leg, -dy, np.where(in_foot, -dx - 120 * np.pi / 2, -(np.pi / 2 - arc) * 120))
            return (u / w).astype(F), (v / (w * asp)).astype(F)
        m = c.piece(leg, field, w, asp, pal, seed=seed + n,
                    colour=lambda r, k: np.where(r > 14, lines(r, k), 0), edge=0.45, spread=16)
        toe = c.mask(path(f"M {hx + 190} {hy - 20} Q {hx + 215} {hy + 120} {hx + 178} {hy + 280} L {hx + 400} {hy + 280} "
                          f"L {hx + 400} {hy - 20}")) * m
        c.piece(toe, field, w, asp, [dark], seed=seed + 4 + n, edge=0.15, spread=10)
        heel = c.mask(path(f"M {hx - 300} {hy - 30} L {hx - 120} {hy - 20} Q {hx - 90} {hy + 90} {hx + 10} {hy + 132} L {hx + 26} {hy + 300} "
                           f"L {hx - 300} {hy + 300}")) * m
        c.piece(heel, straight(hx - 130, hy + 130, w, w * asp, turn=45), w, asp, [dark], seed=seed + 6 + n, edge=0.2, spread=8,
                purl=(lambda r, k: np.mod(k, 2) == 1) if ribbed_heel else None, shadow=0.15)
        cuff = path(f"M {ox + 12} {oy + 126} Q {ox + 22} {oy + 50} {ox + 16} {oy} L {ox + 248} {oy} Q {ox + 244} {oy + 60} {ox + 252} {oy + 126}")
        c.piece(cuff, straight(ox + 132, oy + 126, w * 0.88, w * asp), w, asp, [dark], seed=seed + 8 + n, edge=0.4, shadow=0.2,
                spread=8, **RIB2)
        c.lay(puff=0.6, spread=14, shadow=0.48)
    return c.image()


def shawl():
    c = Canvas(1600, 1200, linen("#e2d8c4", 27), 123)
    cx, ty, half, deep, w, asp = 800, 180, 690, 800, 11.2, 0.80
    pal = [ESTUARY, CHALK, MIST, TEAL]
    # blocked: the lower edges drawn out into points
    n, pts = 15, [(cx - half, ty - 4), (cx, ty + 14), (cx + half, ty - 4)]
    def edge(a, b):
        nx, ny = (b[1] - a[1]), -(b[0] - a[0])
        ln = np.hypot(nx, ny)
        for i in range(n):
            for f in np.linspace(0, 1, 10, endpoint=False):
                t = (i + f) / n
                d = -24 * np.sin(np.pi * f) ** 0.8
                yield (a[0] + (b[0] - a[0]) * t - nx / ln * d * -1, a[1] + (b[1] - a[1]) * t - ny / ln * d * -1)
    pts += list(edge((cx + half, ty - 4), (cx, ty + deep))) + list(edge((cx, ty + deep), (cx - half, ty - 4)))
    ex, ey = deep, half
    ln = np.hypot(ex, ey)

    def field(x, y):
        # worked outwards from the middle of the top edge: rows lie along the lower edges
        dx, dy = np.abs(x - cx), y - ty
        v = (dx * ex + dy * ey) / ln
        u = (dx * ey - dy * ex) / ln
        return (u / w).astype(F), (v / (w * asp)).astype(F)
    last = int(half * deep / ln / (w * asp))

    def colour(r, k):
        d = last - r
        out = np.where(np.isin(d, (18, 19, 24, 25)), 1, 0)
        out = np.where((d < 18), 3, out)
        return np.where(np.isin(d, (34, 44, 54)), 2, out)

    def hole(r, k):
        d = last - r
        lines = np.isin(np.mod(r, 11), (5,)) & (np.mod(k, 3) == 0) & (d > 27)
        border = (d >= 0) & (d < 16) & (np.abs(np.mod(k, 10) - 5) == np.floor(d / 3)) & (np.mod(d, 3) == 1)
        return lines | border | ((d == 21) & (np.mod(k, 2) == 0))
    cloth = c.mask(pts) * (c.y < ty + deep - 46)
    m = c.piece(cloth, field, w, asp, pal, colour=colour, hole=hole, hole_size=0.54, seed=560, fine=0.9)
    spine = c.mask(path(f"M {cx - 13} {ty} L {cx + 13} {ty} L {cx + 13} {ty + deep + 20} L {cx - 13} {ty + deep + 20}")) * m
    c.piece(spine, straight(cx, ty, w, w * asp, turn=180), w, asp, pal, seed=562, shadow=0.3, edge=0.4, spread=4,
            colour=lambda r, k: np.where(r > deep / (w * asp) - 24, 3, 0))
    rim = c.mask(path(f"M {cx - half - 20} {ty - 30} L {cx} {ty - 12} L {cx + half + 20} {ty - 30} L {cx + half} {ty + 18} "
                      f"L {cx} {ty + 38} L {cx - half} {ty + 18}")) * m
    c.piece(rim, straight(cx, ty, w, 6.4), w, 0.57, pal, ridges=True, seed=564, shadow=0.2)
    c.lay(puff=0.25, spread=7, shadow=0.48, drop=0.6)
    return c.image()


def wrap():
    c = Canvas(1600, 1200, linen("#e4e0d6", 29), 124)
    w, asp = 10.8, 0.78
    shades = [TEAL, ESTUARY, "#7f949b", MIST, "#c9cdc2", CHALK]

    def colour(r, k):
        # one shade slips into the next in stripes
        step, f = np.mod(np.floor(r / 24), 10), np.mod(r, 24)
        at = np.where(step < 6, step, 10 - step).astype(int)
        nxt = np.where(step < 5, at + 1, at - 1)
        return np.clip(np.where((f >= 16) & (np.mod(f, 4) < 2), nxt, at), 0, 5)
    eyelet = lambda r, k: (np.mod(r, 24) == 10) & (np.mod(k, 2) == 0)
    kw = dict(colour=colour, hole=eyelet, hole_size=0.42, lift=0.4)
    # the long way across, folded back on itself twice
    lower = moved(box(170, 560, 1360, 930, 6), turn=-5, about=(800, 600))
    upper = moved(box(250, 250, 1440, 640, 6), turn=3, about=(800, 600))
    f1, f2 = straight(170, 745, w, w * asp, turn=85), straight(1440, 445, w, w * asp, turn=-87)
    c.piece(lower, f1, w, asp, shades, seed=580, edge=0.4, spread=12, **kw)
    a, b = moved([(172, 566), (172, 924)], turn=-5, about=(800, 600))
    fringe(c, [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for t in np.linspace(0.02, 0.98, 19)],
           (-0.996, 0.087), 92, [TEAL], 3, width=4.6)
    c.lay(puff=0.5, spread=12, shadow=0.42)
    c.piece(upper, f2, w, asp, shades, seed=582, edge=0.4, spread=12, **kw)
    a, b = moved([(252, 256), (252, 634)], turn=3, about=(800, 600))
    fringe(c, [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for t in np.linspace(0.02, 0.98, 19)],
           (-0.9986, -0.052), 92, [ESTUARY], 4, width=4.6)
    c.lay(puff=0.5, spread=12, shadow=0.46)
    return c.image()


def cowl():
    c = Canvas(1600, 1200, paper("#d3cabb", 31), 125)
    cx, w, asp = 800, 21, 1.18
    body = path("M 350 330 Q 800 470 1250 330 Q 1286 620 1262 900 Q 800 1046 338 900 Q 314 620 350 330")
    well = path("M 350 330 Q 420 196 800 190 Q 1180 196 1250 330 Q 1130 474 800 478 Q 470 474 350 330")

    def field(x, y):
        t = np.clip((x - cx) / 468, -0.995, 0.995)
        return (np.arcsin(t) * 468 / (w * 0.86)).astype(F), ((950 - y - 75 * (1 - t * t)) / (w * asp)).astype(F)
    brioche_pieces(c, well, lambda x, y: field(x, 2 * 330 - y), w, asp, SAND, MUD, 600,
                   tint=lambda X, Y: 0.50 + 0.26 * np.clip((430 - Y) / 240, 0, 1))
    brioche_pieces(c, body, field, w, asp, MUD, SAND, 602, edge=0.4, shadow=0.5, share=0.72,
                   tint=lambda X, Y: 1.06 - 0.30 * (np.abs(X - cx) / 470) ** 3)
    c.lay(puff=0.6, spread=16, shadow=0.5)
    return c.image((150, 130, 1450, 1105))


def scarf():
    c = Canvas(1200, 1600, linen("#c6ccc9", 33, 5.6), 126)
    w, asp = 11.6, 0.78
    line = stripes((22, 0), (4, 1), (4, 0), (22, 1), (4, 0), (4, 1))
    for turn, x0, y1, sd in ((-10, 610, 1290, 610), (7, 600, 1330, 614)):
        out = moved(box(x0 - 138, 150, x0 + 138, y1, 5), turn=turn, about=(600, 180))
        f = straight(*moved([(x0, y1)], turn=turn, about=(600, 180))[0], w, w * asp, turn=turn)
        c.piece(out, f, w, asp, [MADDER, CHALK], seed=sd, colour=line, edge=0.45, spread=12,
                warp=(4, 2, 0.76), purl=rib_kinds(4, 2), lift=0.6)
        a, b = moved([(x0 - 134, y1 - 4), (x0 + 134, y1 - 4)], turn=turn, about=(600, 180))
        rad = np.radians(turn)
        fringe(c, [(a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for t in np.linspace(0.03, 0.97, 12)],
               (-np.sin(rad), np.cos(rad)), 112, [MADDER, CHALK], sd, width=5.4)
        c.lay(puff=0.55, spread=12, shadow=0.46)
    return c.image()


def bonnet():
    c = Canvas(1600, 1200, paper("#e3dcd0", 35), 127)
    w, asp = 13.0, 0.78
    # seen from the side, the face to the left; ties first, so that they lie under the edge
    for line in ([(520, 850), (505, 905), (520, 960), (500, 1010), (512, 1050)],
                 [(575, 860), (592, 915), (576, 968), (600, 1015), (590, 1052)]):
        t = np.linspace(0, 1, 60)
        k = np.array(line, float)
        xs, ys = (np.interp(t * (len(k) - 1), range(len(k)), k[:, i]) for i in (0, 1))
        for _ in range(6):
            xs[1:-1] = (xs[:-2] + xs[1:-1] * 2 + xs[2:]) / 4
        yarn(c, list(zip(xs, ys)), 17, HEATHER)
        end = (xs[-1], ys[-1] + 6)
        c.solid([(end[0] + 15 * np.cos(a), end[1] + 13 * np.sin(a)) for a in np.linspace(0, 6.28, 30)], HEATHER,
                shadow=0.3, edge=0.9, spread=5)
    body = path("M 520 300 Q 800 220 1000 300 Q 1180 390 1174 590 Q 1168 760 1040 860 Q 780 880 520 864")
    c.piece(body, straight(560, 860, w, w * asp, turn=90), w, asp, [HEATHER, CHALK], seed=630, edge=0.45, spread=22,
            colour=lambda r, k: np.where(np.isin(np.mod(r, 14), (3, 7)) & (np.mod(k, 2) == 0), 1, 0))
    # the back gathered to a round
    hx, hy = 985, 585
    back = c.a * (((c.x - hx) ** 2 + (c.y - hy) ** 2) < 196 ** 2)
    c.piece(back, round_about(hx, hy, 78, w * asp, 196, 1.0), w, asp, [HEATHER, CHALK], seed=632,
            colour=lambda r, k: np.where((r == 2) & (np.mod(k, 3) == 0), 1, 0))
    brim = path("M 440 312 Q 480 288 548 292 Q 562 580 548 866 Q 480 874 446 862 Q 424 580 440 312")
    c.piece(brim, straight(444, 860, w, 8.2, turn=90), w, 0.62, [CHALK], ridges=True, seed=634, shadow=0.42, edge=0.45, spread=10)
    neck = path("M 520 838 Q 780 858 1058 832 Q 1052 872 1020 894 Q 780 910 500 898 Q 496 860 520 838")
    c.piece(neck, straight(760, 905, w * 0.9, w * asp, bow=6), w, asp, [HEATHER], seed=636, shadow=0.35, edge=0.45, spread=8, **RIB1)
    c.lay(puff=0.6, spread=16, shadow=0.44)
    return c.image((200, 205, 1440, 1135))


def blanket():
    c = Canvas(1600, 1200, wood("#a99c8a", 37, 250, True), 128)
    w, asp = 11.6, 0.60
    pal = [ESTUARY, OAT, MADDER, MUD]
    cx, cy, turn, sq, nx, ny = 790, 590, -7, 226, 5, 4
    plan = [[0, 1, 3, 0, 2], [2, 3, 0, 1, 3], [1, 0, 2, 3, 1], [3, 2, 1, 0, 0]]
    x0, y0 = cx - nx * sq / 2, cy - ny * sq / 2
    rim = moved(box(x0 - 34, y0 - 34, x0 + nx * sq + 34, y0 + ny * sq + 34, 10), turn=turn, about=(cx, cy))
    c.piece(rim, straight(cx, cy, w, w * asp, turn=turn), w, asp, [OAT], ridges=True, seed=640)
    for j in range(ny):
        for i in range(nx):
            ax, ay = x0 + i * sq, y0 + j * sq
            b = moved(box(ax, ay, ax + sq, ay + sq, 3), turn=turn, about=(cx, cy))
            mid = moved([(ax + sq / 2, ay + sq / 2)], turn=turn, about=(cx, cy))[0]
            c.piece(b, straight(*mid, w, w * asp, turn=turn + (90 if (i + j) % 2 else 0)), w, asp, [pal[plan[j][i]]],
                    ridges=True, seed=642 + i + 7 * j, edge=0.35, shadow=0.22, spread=7)
    # one corner turned over
    right, low = x0 + nx * sq + 34, y0 + ny * sq + 34
    gone = moved([(right + 30, low - 300), (right - 330, low + 30), (right + 40, low + 40)], turn=turn, about=(cx, cy))
    c.a = c.a * (1 - c.mask(gone))
    fold = moved(path(f"M {right - 2} {low - 272} Q {right - 140} {low - 140} {right - 300} {low - 2} Q {right - 318} {low - 150} "
                      f"{right - 296} {low - 290} Q {right - 160} {low - 300} {right - 2} {low - 272}"), turn=turn, about=(cx, cy))
    c.piece(fold, straight(*moved([(right - 290, low - 200)], turn=turn, about=(cx, cy))[0], w, w * asp, turn=turn), w, asp, [MUD],
            ridges=True, seed=690, shadow=0.6, edge=0.6, spread=14)
    c.lay(puff=0.5, spread=12, shadow=0.48)
    return c.image()


def mittens():
    c = Canvas(1600, 1200, linen("#b9a98d", 39, 5.4), 129)
    w, asp = 10.6, 0.82
    motif = grid(FISH)
    for side in (-1, 1):
        ox, oy, turn = 800 + side * 255, 620 - side * 18, 8 * side
        at = lambda t: set_out(path(t), side, ox, oy, turn)
        pal = [INK, CHALK, GORSE]
        thumb = at("M -90 150 Q -196 60 -250 -70 Q -262 -138 -216 -152 Q -176 -160 -150 -110 Q -110 -30 -70 40")
        dots = lambda r, k: np.where((np.mod(r, 2) == 0) & (np.mod(k + r // 2, 2) == 0), 1, 0)
        c.piece(thumb, straight(*set_out([(-160, 0)], side, ox, oy, turn)[0], w, w * asp, turn=turn - 30 * side), w, asp, pal,
                seed=700 + side, edge=0.5, spread=10, colour=dots)
        hand = at("M -150 232 Q -162 20 -152 -180 C -146 -310 -80 -392 0 -396 C 80 -392 146 -310 152 -180 Q 162 20 150 232")

        def colour(r, k):
            row, q = np.mod(r - 4, 12), np.mod(k + 5 + np.where(np.mod((r - 4) // 12, 2) == 1, 5, 0), 11)
            fig = motif[np.clip(row, 0, 7), q if side > 0 else 10 - q]
            out = np.where((r >= 4) & (row < 8), fig, 0)
            out = np.where((r >= 4) & (row == 10) & (np.mod(k, 4) == 0), 1, out)
            return np.where(np.isin(r, (1, 2)), 2, out)
        c.piece(hand, straight(*set_out([(0, 232)], 1, ox, oy, turn)[0], w, w * asp, turn=turn), w, asp, pal, seed=704 + side,
                colour=colour, edge=0.5, spread=14, shadow=0.42, tint=lit_tube(ox, oy, 152, turn))
        cuff = at("M -148 228 L 148 228 Q 140 330 150 418 L -150 418 Q -140 330 -148 228")
        c.piece(cuff, straight(*set_out([(0, 418)], 1, ox, oy, turn)[0], w * 0.86, w * asp, turn=turn), w, asp, [INK, CHALK],
                seed=708 + side, edge=0.4, shadow=0.2, spread=8, colour=lambda r, k: np.where(np.isin(r, (3, 4, 7, 8)), 1, 0), **RIB1)
        c.lay(puff=0.6, spread=13, shadow=0.5)
    return c.image((165, 190, 1445, 1150))


PICTURES = {"lantern-hat": hat, "turnstone-mitts": mitts, "sanderling-socks": socks, "tideline-shawl": shawl,
            "estuary-wrap": wrap, "driftwood-cowl": cowl, "buoy-scarf": scarf, "pebble-bonnet": bonnet,
            "harbour-blanket": blanket, "shoal-mittens": mittens}
