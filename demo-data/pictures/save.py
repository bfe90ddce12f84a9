"""Write a picture, some of them with what a telephone would have noted.

The camera is invented, and the places are out at sea. They are there so that the site can be
seen to leave them out, and to turn the two pictures stored on their side.
"""
from PIL import Image

# name: (latitude, longitude, time, orientation)
NOTED = {
    "saltmarsh-yoke": (53.4613, 2.6421, "2026:03:14 10:22:05", 1),
    "harbour-blanket": (53.4588, 2.6377, "2026:05:02 16:48:51", 1),
    "swatch-reeds": (53.4601, 2.6440, "2025:11:20 12:40:33", 1),
    "skeins-shelf": (53.4579, 2.6462, "2026:01:09 09:05:17", 1),
    "sanderling-socks": (53.4630, 2.6398, "2026:06:21 19:31:40", 6),
    "ferry-saltmarsh": (53.4552, 2.6510, "2026:08:30 07:58:12", 8),
}
# How the stored pixels lie for each orientation, so that a viewer turns them back.
STORED = {1: None, 6: Image.Transpose.ROTATE_90, 8: Image.Transpose.ROTATE_270}


def degrees(value):
    """Degrees, minutes and seconds of an angle, as EXIF keeps them."""
    d = int(value)
    m = int((value - d) * 60)
    return (float(d), float(m), round((value - d - m / 60) * 3600, 2))


def save(image, name, folder):
    """Write one picture; gives its size in bytes."""
    more = {}
    if name in NOTED:
        lat, lon, when, turn = NOTED[name]
        exif = Image.Exif()
        exif[0x010F] = "Sallow"           # maker
        exif[0x0110] = "Sallow One"    # camera
        exif[0x0112] = turn
        exif[0x0132] = when
        exif.get_ifd(0x8769)[0x9003] = when
        gps = exif.get_ifd(0x8825)
        gps[1], gps[2] = "N", degrees(lat)
        gps[3], gps[4] = "E", degrees(lon)
        gps[5], gps[6] = b"\x00", 3.0
        more["exif"] = exif
        if STORED[turn] is not None:
            image = image.transpose(STORED[turn])
    where = folder / f"{name}.jpg"
    image.save(where, quality=78, optimize=True, progressive=True, subsampling="4:2:0", **more)
    return where.stat().st_size
