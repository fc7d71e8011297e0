"""Makes square_up.json, once: maps from a wall to its photo, settled by OpenCV's findHomography (all points, no robust
method: a linear start, then least squares of the misses on the photo).

    pip install opencv-python-headless==5.0.0.93 numpy==2.4.6 scipy==1.17.1
    python square_up.py

A wall is z = 0, metres, x along and y up. A pinhole camera looks at it; marks are its pixels, rounded to a hundredth,
some with normal noise on the clicks. OpenCV holds its points in 32-bit floats, so SciPy's least squares on 64-bit ones must agree
with it before a case is kept. `grid` is the map as OpenCV settled it at places spread over the marks and a tenth beyond.
"""

import json
import pathlib

import cv2
import numpy as np
import scipy
from scipy.optimize import least_squares

rng = np.random.default_rng(20)


def camera(size, focal, stand, look, roll):
    """Pixels from the wall: a camera at `stand` that looks at `look` on the wall; roll in degrees."""
    stand, look = np.array(stand, float), np.array([*look, 0.0])
    ahead = (look - stand) / np.linalg.norm(look - stand)
    right = np.cross(ahead, [0.0, 1.0, 0.0])
    right /= np.linalg.norm(right)
    down = np.cross(ahead, right)
    c, s = np.cos(np.radians(roll)), np.sin(np.radians(roll))
    turned = np.array([[c, s, 0], [-s, c, 0], [0, 0, 1]]) @ np.array([right, down, ahead])
    lens = np.array([[focal, 0, size[0] / 2], [0, focal, size[1] / 2], [0, 0, 1]])
    return lens @ np.column_stack([turned[:, 0], turned[:, 1], -turned @ stand])


def apply(h, places):
    found = np.column_stack([places, np.ones(len(places))]) @ h.T
    return found[:, :2] / found[:, 2:]


front = [(0, 0), (9, 0), (9, 6), (0, 6)]
window = [(3.1, 2.6), (4.3, 2.6), (4.3, 4.0), (3.1, 4.0)]
scatter = lambda n, w, h: [(round(w * x, 3), round(h * y, 3)) for x, y in rng.uniform(0.0, 1.0, (n, 2))]
CASES = [
    # name, photo, focal px, camera, looks at, roll, places, noise px
    ("squarely", (4000, 3000), 3000, (4.5, 1.7, 12), (4.5, 3), 0, front, 0),
    ("from the left", (4000, 3000), 2800, (-3, 1.6, 9), (4, 3), 2, front, 0),
    ("very slanting", (4000, 3000), 2200, (-5, 1.6, 2.6), (1.5, 3), -3, front, 0),
    ("from below, rolled by 25", (4000, 3000), 1500, (5, 1.5, 7), (4.5, 3.3), 25, front, 0),
    ("lying on its side", (3000, 4000), 2900, (6, 1.6, 11), (4.5, 3), 90, front, 0),
    ("6000 px, one window", (6000, 4000), 4600, (7, 1.7, 10), (4, 3), 1, window, 0),
    ("6000 px, very slanting", (6000, 4000), 3600, (14.5, 1.7, 3), (8, 3), -4, front, 0),
    ("six, noise of 1.5", (4000, 3000), 2900, (1, 1.6, 10), (4.5, 3), 3, front + window[::2], 1.5),
    ("eight, 6000 px, noise of 3", (6000, 4000), 4200, (11, 1.6, 7), (4.5, 3), -6, front + window, 3.0),
    ("ten strewn, 6000 px, noise of 2", (6000, 4000), 4400, (-1, 1.6, 8), (4, 3), 8, scatter(10, 9, 6), 2.0),
    ("ten strewn, strong perspective, noise of 2", (4000, 3000), 1900, (-1.5, 1.5, 2.5), (3, 3), 12, scatter(10, 9, 6), 2.0),
    ("a wall far along the street, in metres from afar", (4032, 3024), 3100, (212, 1.6, 14), (209, 4), 1,
     [(200 + x, y) for x, y in front + window], 1.0),
]


def settle(wall, photo):
    # From a whole metre near the marks, so that 32 bits do.
    near = np.floor(wall.min(0))
    h, _ = cv2.findHomography(wall - near, photo, 0)
    h = h @ np.array([[1, 0, -near[0]], [0, 1, -near[1]], [0, 0, 1]])
    middle, scale = wall.mean(0), np.abs(wall - wall.mean(0)).max()
    small = (wall - middle) / scale
    start, _ = cv2.findHomography(small, photo, 0)
    miss = lambda p: (apply(np.append(p, 1.0).reshape(3, 3), small) - photo).ravel()
    best = least_squares(miss, start.ravel()[:8] / start[2, 2], x_scale="jac", method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    return h, lambda places: apply(np.append(best.x, 1.0).reshape(3, 3), (places - middle) / scale)


cases = []
for name, size, focal, stand, look, roll, places, noise in CASES:
    wall = np.array(places, float)
    true = camera(size, focal, stand, look, roll)
    photo = np.round(apply(true, wall) + rng.normal(0, 1, wall.shape) * noise, 2)
    low, high = wall.min(0), wall.max(0)
    low, high = low - 0.1 * (high - low), high + 0.1 * (high - low)
    grid = np.array([(x, y) for y in np.linspace(low[1], high[1], 5) for x in np.linspace(low[0], high[0], 7)])
    h, other = settle(wall, photo)
    apart = np.abs(apply(h, grid) - other(grid)).max()
    print(f"{name}: OpenCV and SciPy {apart:.4f} px apart; truth {np.abs(apply(h, grid) - apply(true, grid)).max():.2f} px; "
          f"photo {photo.min(0)} {photo.max(0)}")
    assert apart < 0.03, name
    cases.append({
        "name": name,
        "photo": size,
        "noise": noise,
        "marks": [{"photo": p, "wall": w} for p, w in zip(photo.round(2).tolist(), wall.tolist())],
        "grid": [{"wall": w, "photo": p} for w, p in zip(grid.round(9).tolist(), apply(h, grid).round(4).tolist())],
    })

library = f"OpenCV {cv2.__version__}, NumPy {np.__version__}, checked by SciPy {scipy.__version__}"
# One mark or place a line.
lines = ["{", f' "library": {json.dumps(library)},', ' "cases": [']
for i, case in enumerate(cases):
    lines.append(f'  {{ "name": {json.dumps(case["name"])}, "photo": {json.dumps(case["photo"])}, "noise": {case["noise"]},')
    for key in ("marks", "grid"):
        lines.append(f'    "{key}": [')
        lines.append(",\n".join("      " + json.dumps(item) for item in case[key]))
        lines.append("    ]," if key == "marks" else "    ] }" + ("," if i + 1 < len(cases) else ""))
lines += [" ]", "}"]
text = "\n".join(lines) + "\n"
json.loads(text)
pathlib.Path(__file__).with_name("square_up.json").write_text(text)
