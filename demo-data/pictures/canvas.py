"""The table the knitting lies on: grounds, outlines, soft shadows, saving.

Everything is worked at twice the size (`SS`) and made smaller at the end.
Positions are given in pixels of the finished picture.
"""
import re

import numpy as np
from PIL import Image, ImageDraw, ImageFilter

from fabric import F, cloth, hexrgb, noise

SS = 2


def blur(a, px):
    """Gaussian blur of a field from 0 to 1, `px` in finished pixels."""
    r = px * SS
    img = Image.fromarray((np.clip(a, 0, 1) * 255).astype(np.uint8))
    small = max(1, int(r // 6))
    size = img.size
    if small > 1:
        img = img.resize((size[0] // small, size[1] // small), Image.BOX)
    img = img.filter(ImageFilter.GaussianBlur(r / small))
    if small > 1:
        img = img.resize(size, Image.BICUBIC)
    return np.asarray(img, dtype=F) / 255


def path(text):
    """Points along an outline written with M, L, Q and C, as in SVG, absolute."""
    out, here = [], (0, 0)
    for op, args in re.findall(r"([MLQC])([^MLQC]*)", text):
        n = [float(k) for k in re.findall(r"-?[\d.]+", args)]
        step = {"M": 2, "L": 2, "Q": 4, "C": 6}[op]
        for i in range(0, len(n), step):
            p = [here] + [(n[i + j], n[i + j + 1]) for j in range(0, step, 2)]
            if step == 2:
                out.append(p[-1])
            else:
                for t in np.linspace(0, 1, 25)[1:]:
                    q = p
                    while len(q) > 1:
                        q = [((1 - t) * a[0] + t * b[0], (1 - t) * a[1] + t * b[1])
                             for a, b in zip(q, q[1:])]
                    out.append(q[0])
            here = p[-1]
    return out


def mirror(points, cx):
    """The same outline on the other side of the middle line."""
    return [(2 * cx - x, y) for x, y in points]


def both(points, cx):
    """Close half an outline (right side, top to bottom) with its mirror image."""
    return points + mirror(points, cx)[::-1]


def moved(points, dx=0, dy=0, turn=0, about=(0, 0), scale=1):
    """An outline turned (degrees, clockwise on the page), scaled and moved."""
    a = np.radians(turn)
    c, s = np.cos(a) * scale, np.sin(a) * scale
    ox, oy = about
    return [(ox + dx + (x - ox) * c - (y - oy) * s, oy + dy + (x - ox) * s + (y - oy) * c)
            for x, y in points]


def straight(x0, y0, w, h, turn=0, bow=0):
    """Flat fabric: stitches of w by h from (x0, y0), turned, rows sagging by `bow`."""
    a = np.radians(turn)

    def field(x, y):
        dx, dy = x - x0, y - y0
        p = dx * np.cos(a) + dy * np.sin(a)
        q = -dx * np.sin(a) + dy * np.cos(a)
        q = q - bow * (p / 300) ** 2
        return (p / w).astype(F), (-q / h).astype(F)
    return field


def tapered(x0, y0, w, h, turn=0, taper=0.0, bow=0):
    """As `straight`, but the columns draw together by `taper` per pixel upwards."""
    a = np.radians(turn)

    def field(x, y):
        dx, dy = x - x0, y - y0
        p = dx * np.cos(a) + dy * np.sin(a)
        q = -dx * np.sin(a) + dy * np.cos(a)
        q = q - bow * (p / 300) ** 2
        return (p / (w * np.maximum(0.05, 1 + taper * q))).astype(F), (-q / h).astype(F)
    return field


def round_about(cx, cy, n, h, r0, squash=1.0):
    """Rounds about a point: n stitches to a full turn, rows counted inwards from r0."""
    def field(x, y):
        dx, dy = x - cx, (y - cy) * squash
        r = np.sqrt(dx * dx + dy * dy)
        th = np.arctan2(-dx, dy)
        return (-th / (2 * np.pi) * n).astype(F), ((r0 - r) / h).astype(F)
    return field


class Canvas:
    """A ground with things laid on it, one after the other."""

    def __init__(self, w, h, ground, seed):
        self.w, self.h, self.seed = w, h, seed
        yy, xx = np.mgrid[0:h * SS, 0:w * SS].astype(F)
        self.x, self.y = xx / SS, yy / SS
        # the ground lies a little out of focus: the eye goes to the knitting
        self.rgb = np.stack([blur(k, 1.5) for k in np.moveaxis(ground(self), -1, 0)], -1)
        self.clear()

    def clear(self):
        """Start a fresh thing."""
        self.top = np.zeros((self.h * SS, self.w * SS, 3), F)
        self.a = np.zeros((self.h * SS, self.w * SS), F)

    def mask(self, points):
        """Cover of an outline, its edge a little uneven as knitting is."""
        img = Image.new("L", (self.w * SS, self.h * SS))
        ImageDraw.Draw(img).polygon([(x * SS, y * SS) for x, y in points], fill=255)
        m = np.asarray(img.filter(ImageFilter.GaussianBlur(2.2 * SS)), dtype=F) / 255
        wob = noise(m.shape, 7 * SS, self.seed + 90) * 0.09
        return np.clip((m - 0.5 + wob * (m > 0.02)) * 6 + 0.5, 0, 1)

    def piece(self, mask, field, w, asp, palette, shadow=0.0, spread=7, edge=0.0, tint=None, **kw):
        """Lay a piece of fabric on the thing being made.

        `shadow` darkens what is already there beside it; `edge` rounds it.
        """
        if isinstance(mask, list):
            mask = self.mask(mask)
        box = self.window(mask, spread * 3)
        if box is None:
            return mask
        u, v = field(self.x[box], self.y[box])
        rgb, cover = cloth(u, v, w * SS, asp, palette, **kw)
        if tint is not None:
            rgb = rgb * tint(self.x[box], self.y[box])[..., None]
        if edge:
            rgb = rgb * self.rounding(mask[box], edge, spread)[..., None]
        if shadow:
            sh = blur(np.roll(mask[box], (int(4 * SS), int(3 * SS)), (0, 1)), spread)
            self.top[box] = self.top[box] * (1 - shadow * sh * (1 - mask[box]))[..., None]
        m = mask[box] * cover
        self.top[box] = self.top[box] * (1 - m[..., None]) + rgb * m[..., None]
        self.a[box] = np.maximum(self.a[box] * (1 - mask[box] * (1 - cover)), m)
        return mask

    def rounding(self, mask, strength, spread):
        """Light and shade of a soft edge turning away."""
        b = blur(mask, spread)
        gy, gx = np.gradient(b)
        lit = (gx * 0.55 + gy * 0.75) * spread * SS
        return np.clip(1 + strength * (lit * 0.9 - (1 - b) * 0.55), 0.3, 1.3).astype(F)

    def window(self, m, margin):
        """The slices round what is covered, with a margin in finished pixels."""
        ys, xs = np.where(m.any(1))[0], np.where(m.any(0))[0]
        if not len(ys) or not len(xs):
            return None
        d = int(margin * SS)
        return (slice(max(0, ys[0] - d), ys[-1] + 1 + d), slice(max(0, xs[0] - d), xs[-1] + 1 + d))

    def solid(self, points, colour, shadow=0.3, edge=0.6, spread=5):
        """Something plain on the thing being made: a button, a needle, a shelf."""
        p = np.array(points) * SS
        d = int(spread * SS * 4)
        x0, y0 = np.maximum(0, p.min(0).astype(int) - d)
        x1, y1 = np.minimum((self.w * SS, self.h * SS), p.max(0).astype(int) + d)
        if x1 <= x0 or y1 <= y0:
            return
        box = (slice(y0, y1), slice(x0, x1))
        img = Image.new("L", (int(x1 - x0), int(y1 - y0)))
        ImageDraw.Draw(img).polygon([(x - x0, y - y0) for x, y in p], fill=255)
        m = np.asarray(img.filter(ImageFilter.GaussianBlur(0.7)), dtype=F) / 255
        top = self.top[box]
        if shadow:
            sh = blur(np.roll(m, (int(3 * SS), int(2 * SS)), (0, 1)), spread)
            top = top * (1 - shadow * sh * (1 - m))[..., None]
        lit = self.rounding(m, edge, spread) if edge else np.ones_like(m)
        rgb = hexrgb(colour) * lit[..., None]
        self.top[box] = top * (1 - m[..., None]) + rgb * m[..., None]
        self.a[box] = np.maximum(self.a[box], m)

    def lay(self, puff=0.5, spread=11, shadow=0.42, fold=0.05, hairs=2200, drop=1.0):
        """Set the finished thing down: round it, crease it, give it halo and shadow."""
        box = self.window(self.a, 110)
        if box is None:
            return
        a, ground = self.a[box], self.rgb[box]
        lit = self.rounding(a, puff, spread)
        if fold:
            lit = lit * (1 + fold * noise(a.shape, 150 * SS, self.seed + 5, (0.6, 1.6)))
        top = self.top[box] * lit[..., None]
        near = blur(np.roll(a, (int(3 * SS * drop), int(2 * SS * drop)), (0, 1)), 4)
        far = blur(np.roll(a, (int(16 * SS * drop), int(10 * SS * drop)), (0, 1)), 26 * drop)
        dark = 1 - shadow * (0.55 * near + 0.75 * far)
        ground = ground * np.stack([dark ** 0.94, dark, dark ** 1.05], -1)
        if hairs:
            ground = self.halo(a, top, ground, hairs)
        out = ground * (1 - a[..., None]) + top * a[..., None]
        if hairs:
            s = self.strokes(hairs // 2, a > 0.9, self.seed + 37, 11)[..., None] * 0.15
            out = out * (1 - s) + np.clip(out * 1.25 + 0.06, 0, 1) * s
        self.rgb[box] = out
        self.top[box] = 0
        self.a[box] = 0

    def strokes(self, n, near, seed, length=13):
        """Fine loose fibres, drawn where `near` is true."""
        rng = np.random.default_rng(seed)
        img = Image.new("L", near.shape[::-1])
        d = ImageDraw.Draw(img)
        ys, xs = np.where(near[::6, ::6])
        if not len(ys):
            return np.zeros(near.shape, F)
        for i in rng.integers(0, len(ys), n):
            x, y = xs[i] * 6.0, ys[i] * 6.0
            a, bend = rng.uniform(0, 6.3), rng.normal(0, 0.22)
            pts = [(x, y)]
            for _ in range(rng.integers(4, 8)):
                x += np.cos(a) * length * SS / 6
                y += np.sin(a) * length * SS / 6
                a += bend
                pts.append((x, y))
            d.line(pts, fill=int(rng.uniform(60, 150)), width=1)
        return np.asarray(img.filter(ImageFilter.GaussianBlur(0.6)), dtype=F) / 255

    def halo(self, a, top, ground, n):
        """Fibres standing off the edge, and a faint bloom of the yarn's own colour."""
        soft = blur(a, 3.0)
        s = self.strokes(n, (soft > 0.1) & (soft < 0.9), self.seed + 31)
        colour = np.stack([blur(top[..., i] * a, 9) for i in range(3)], -1)
        colour = colour / np.maximum(0.08, blur(a, 9))[..., None]
        m = np.clip(s * 0.75 + soft * 0.16 * (1 - a), 0, 0.8)[..., None]
        return ground * (1 - m) + np.clip(colour * 1.08, 0, 1) * m

    def image(self, crop=None):
        """The finished picture, or a part of it at the full size, with a gentle fall of light."""
        fall = 1.035 - 0.11 * (self.x / self.w * 0.45 + self.y / self.h * 0.55)
        rgb = np.clip(self.rgb * fall[..., None], 0, 1)
        img = Image.fromarray((rgb * 255 + 0.5).astype(np.uint8))
        if crop:
            img = img.crop(tuple(k * SS for k in crop))
        return img.resize((self.w, self.h), Image.BILINEAR)


def linen(colour, seed=3, thread=5.2):
    """A plain woven cloth, threads uneven and barely seen."""
    def make(c):
        x = c.x + noise(c.x.shape, 60, seed) * 0.8
        y = c.y + noise(c.x.shape, 60, seed + 1) * 0.8
        ix, iy = np.floor(x / thread), np.floor(y / thread)
        fx, fy = x / thread - ix - 0.5, y / thread - iy - 0.5
        over = np.mod(ix + iy, 2) == 0
        prof = np.where(over, 1 - 3 * fx * fx, 1 - 3 * fy * fy)
        slub = (noise(x.shape, 5, seed + 2, (26, 1)) + noise(x.shape, 5, seed + 3, (1, 26)))
        k = 1 + 0.06 * (prof - 0.75) + 0.011 * slub + 0.012 * noise(x.shape, 500, seed + 4)
        return (hexrgb(colour) * k[..., None]).astype(F)
    return make


def wood(colour, seed=3, plank=230, across=False):
    """Scrubbed boards with long grain."""
    def make(c):
        x, y = (c.y, c.x) if across else (c.x, c.y)
        n = np.floor((y + 60) / plank)
        along = (1, 90) if across else (90, 1)
        mid = (1, 16) if across else (16, 1)
        grain = noise(x.shape, 4, seed, along) * 0.6 + noise(x.shape, 22, seed + 1, mid)
        bend = noise(x.shape, 130, seed + 2, mid)
        rings = np.sin((y * 0.16 + bend * 5.5 + n * 2.1))
        tone = np.random.default_rng(seed).normal(0, 0.028, 64).astype(F)[n.astype(int) % 64]
        k = 1 + tone + 0.026 * grain + 0.022 * rings
        d = np.abs(np.mod(y + 60, plank) - 1.6)
        k = k * (1 - 0.42 * np.exp(-(d / 1.7) ** 2))
        return (hexrgb(colour) * k[..., None]).astype(F)
    return make


def paper(colour, seed=3):
    """Heavy paper, nearly plain."""
    def make(c):
        k = 1 + 0.006 * noise(c.x.shape, 5, seed) + 0.012 * noise(c.x.shape, 320, seed + 1)
        return (hexrgb(colour) * k[..., None]).astype(F)
    return make
