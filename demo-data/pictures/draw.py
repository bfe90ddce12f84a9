"""Draw the pictures of the demo: knitted fabric and garments, stitch by stitch.

Nothing here is a photograph. How to run, in an environment of your own:

    python3 -m venv /tmp/pictures && /tmp/pictures/bin/pip install -r requirements.txt
    /tmp/pictures/bin/python draw.py              all of them, about five minutes on one core
    /tmp/pictures/bin/python draw.py swatch-lace  only those named

Files go to ../photos beside this folder. Every seed is fixed, so the same
versions of the two libraries give the same files.
"""
import pathlib
import sys
import time

sys.dont_write_bytecode = True  # nothing but pictures is left behind

import garments  # noqa: E402
import more  # noqa: E402
import small  # noqa: E402
import swatches  # noqa: E402
from save import save  # noqa: E402

PICTURES = {**garments.PICTURES, **small.PICTURES, **swatches.PICTURES, **more.PICTURES}


def main(names):
    """Draw the named pictures, or all when none is named."""
    out = pathlib.Path(__file__).resolve().parent.parent / "photos"
    out.mkdir(exist_ok=True)
    unknown = [n for n in names if n not in PICTURES]
    if unknown:
        sys.exit("no such picture: " + ", ".join(unknown))
    for name in names or PICTURES:
        begun = time.monotonic()
        size = save(PICTURES[name](), name, out)
        print(f"{name}.jpg  {size // 1024} KB  {time.monotonic() - begun:.1f} s", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
