"""Write a picture, some of them with what a telephone would have noted.

The places and the camera are invented. They are there so that the site can be
seen to leave them out, and to turn the two pictures stored on their side.
"""
from PIL import Image

# name: (latitude, longitude, time, orientation)
NOTED = {
    "saltmarsh-yoke": (52.9613, 1.0421, "2026:03:14 10:22:05", 1),
    "harbour-blanket": (52.9588, 1.0377, "2026:05:02 16:48:51", 1),
    "swatch-reeds": (52.9601, 1.0440, "2025:11:20 12:40:33", 1),
    "skeins-shelf": (52.9579, 1.0462, "2026:01:09 09:05:17", 1),
    "sanderling-socks": (52.9630, 1.0398, "2026:06:21 19:31:40", 6),
    "ferry-saltmarsh": (52.9552, 1.0510, "2026:08:30 07:58:12", 8),
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
        exif[0x010F] = "Tern"             # maker
        exif[0x0110] = "Tern Pocket 2"    # camera
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
    image.save(where, quality=82, optimize=True, progressive=True, subsampling="4:2:0", **more)
    return where.stat().st_size
