"""Makes tapes.json, once: points by tape, found by SciPy's general least squares from a start on the wanted side.

    pip install scipy==1.17.1 numpy==2.4.6
    python tapes.py

Known points, tapes rounded to the millimetre with normal noise of 5 mm, and where there are two tapes the height. The
misses of tape against distance are brought to nothing; how far the point moves for each unit of error is NumPy's largest
singular value of the inverse of the Jacobian, itself by differences (three steps, as SciPy takes it).
"""

import json
import pathlib

import numpy as np
import scipy
from scipy.optimize import least_squares

rng = np.random.default_rng(41)

# Name, known points, the point before noise, the direction of the wanted side.
CASES = [
    ("front, three window corners", [(0, 0.9, 0), (4.2, 0.9, 0), (2.0, 3.4, 0)], (1.2, 1.5, 3.8), (0, 0, 1)),
    ("front, a ridge and two corners", [(0, 0, 0), (9, 0, 0), (4.5, 6.2, -3)], (6.0, 2.2, 5.5), (0, 0, 1)),
    ("three posts on the ground", [(0, 0, 2), (5, 0, 2.5), (2, 0, 7)], (2.8, 2.9, 4.1), (0, 1, 0)),
    ("posts on a slope", [(-3, 0.2, 1), (2, -0.4, 3), (0.5, 0.6, 8)], (-0.6, 3.4, 3.9), (0, 1, 0)),
    ("a branch over three stakes, far off", [(200, 0, -80), (206, 0.3, -81), (203, 0.1, -75)], (203.2, 4.4, -78.5), (0, 1, 0)),
    ("slanting", [(0, 2.6, 0), (1.2, 2.6, 0), (0.6, 0.2, 0.4)], (3.0, 1.2, 2.0), (0, 0, 1)),
    ("behind the house", [(0, 0, -6), (9, 0, -6), (4.5, 4, -6)], (3.0, 1.1, -9.5), (0, 0, -1)),
    ("two corners and a height", [(0, 0, 0), (9, 0, 0)], (3.1, 0.4, 6.2), (0, 0, 1)),
    ("two heights and a third", [(0, 2.4, 0), (3, 0.3, -1)], (2.0, 1.6, 4.0), (0, 0, 1)),
    ("to the left of a fence", [(0, 1.2, 0), (0.4, 1.2, 8)], (-3.0, 0.5, 3.5), (-1, 0, 0)),
]


def settle(points, tapes, height, start):
    def misses(p):
        found = np.linalg.norm(p - points, axis=1) - tapes
        return found if height is None else np.append(found, p[1] - height)

    best = least_squares(misses, start, jac="3-point", xtol=1e-15, ftol=1e-15, gtol=1e-15)
    assert np.abs(best.fun).max() < 1e-9, best
    return best.x, 1.0 / np.linalg.svd(best.jac, compute_uv=False)[-1]


cases = []
for name, points, true, side in CASES:
    points, true, side = np.array(points, float), np.array(true, float), np.array(side, float)
    tapes = np.round(np.linalg.norm(true - points, axis=1) + rng.normal(0, 0.005, len(points)), 3)
    height = round(true[1], 3) if len(points) == 2 else None
    at, moves = settle(points, tapes, height, true + 0.3 * side)
    print(f"{name}: {np.linalg.norm(at - true) * 1000:.1f} mm from the truth, moves {moves:.3f}")
    assert side @ (at - points.mean(0)) > 0, name
    cases.append({"name": name, "points": points.tolist(), "tapes": tapes.tolist(), "height": height,
                  "side": side.tolist(), "at": at.round(9).tolist(), "moves": round(float(moves), 6)})

lines = ["{", f' "library": "SciPy {scipy.__version__}, NumPy {np.__version__}",', ' "cases": [']
lines.append(",\n".join("  " + json.dumps(case) for case in cases))
lines += [" ]", "}"]
text = "\n".join(lines) + "\n"
json.loads(text)
pathlib.Path(__file__).with_name("tapes.json").write_text(text)
