//! The guardian's face: calm, carved, and just opening its eyes.

use glam::{Vec2, Vec3, vec2, vec3};

use super::canvas::Canvas;
use super::curve::Curve;
use super::guardian::AXIS;
use super::tone::{bump, ramp};

/// Centre of the face, and half its width and height.
const CENTRE: Vec2 = Vec2::new(AXIS, 222.0);
const HALF: Vec2 = Vec2::new(90.0, 122.0);
/// Centre of the eye on the right, in face units.
const EYE: Vec2 = Vec2::new(0.42, -0.10);

/// The oval that bounds the face, larger or smaller.
pub(super) fn outline(scale: f32) -> Curve {
    let half = [[0.0, -1.0], [0.50, -0.90], [0.88, -0.50], [0.98, -0.02], [0.84, 0.46], [0.48, 0.86], [0.0, 1.02]];
    Curve::mirrored(0.0, &half).moved(|at| CENTRE + at * HALF * scale)
}

/// The face's own coordinates, folded onto its right half: 1 is its edge.
fn unit(at: Vec2) -> Vec2 {
    let place = (at - CENTRE) / HALF;
    vec2(place.x.abs(), place.y)
}

/// A bell with its own width and height.
fn mound(at: Vec2, centre: [f32; 2], spread: [f32; 2]) -> f32 {
    bump(((at - Vec2::from(centre)) / Vec2::from(spread)).length())
}

/// The line of the upper lid, across the eye from -1 to 1.
fn upper_lid(across: f32) -> f32 {
    -0.062 * (1.0 - across * across) - 0.010 * across
}

/// The line of the lower lid.
fn lower_lid(across: f32) -> f32 {
    0.056 * (1.0 - across * across) - 0.010 * across
}

/// The arch of the brow.
fn brow_line(across: f32) -> f32 {
    -0.315 + 0.60 * (across - 0.40) * (across - 0.40)
}

/// How far between the lids a place is: above zero in the opening.
fn between_lids(place: Vec2) -> f32 {
    let across = (place.x - EYE.x) / 0.235;
    if across.abs() > 1.0 {
        return -1.0;
    }
    let down = place.y - EYE.y;
    (down - upper_lid(across)).min(lower_lid(across) - down)
}

/// The face's heights; `mask` is how far the place belongs to the face.
pub(super) fn height(at: Vec2, mask: f32) -> f32 {
    if mask <= 0.0 {
        return 0.0;
    }
    let p = unit(at);
    let oval = (1.0 - 0.82 * (p * vec2(0.95, 0.86)).length_squared()).max(0.05).sqrt() * 92.0;
    let brow = 8.0 * bump((p.y - brow_line(p.x)) / 0.085) * ramp(-0.02, 0.34, p.x) * ramp(0.86, 0.62, p.x);
    let socket = -19.0 * mound(p, [0.40, -0.12], [0.27, 0.16]);
    let globe = 15.0 * (1.0 - ((p - EYE) / vec2(0.25, 0.125)).length_squared()).max(0.0).sqrt();
    let lids = 2.6 * bump((between_lids(p) + 0.016) / 0.013) * ramp(0.26, 0.21, (p.x - EYE.x).abs());
    let width = 0.095 + 0.06 * ramp(-0.10, 0.26, p.y) + 0.10 * ramp(-0.12, -0.42, p.y);
    let bridge =
        (10.0 + 25.0 * ramp(-0.22, 0.24, p.y)) * bump(p.x / width) * ramp(-0.46, -0.10, p.y) * ramp(0.42, 0.26, p.y);
    let wings = 7.0 * mound(p, [0.145, 0.245], [0.062, 0.06]) - 3.5 * mound(p, [0.075, 0.315], [0.04, 0.03]);
    let cheeks = 9.0 * mound(p, [0.54, 0.20], [0.26, 0.22]) - 5.0 * mound(p, [0.55, 0.56], [0.18, 0.20]);
    let fold = -1.6 * bump((p.x - 0.20 - 0.42 * (p.y - 0.26)) / 0.035) * ramp(0.22, 0.30, p.y) * ramp(0.56, 0.44, p.y);
    let smile = 0.505 - 0.16 * p.x * p.x;
    let corner = ramp(0.33, 0.14, p.x);
    let upper = 6.5 * bump((p.y - smile + 0.048 - 0.02 * bump(p.x / 0.05)) / 0.038) * corner;
    let lower = 8.0 * bump((p.y - smile - 0.062) / 0.050) * ramp(0.27, 0.10, p.x);
    let part = -8.0 * bump((p.y - smile) / 0.015) * ramp(0.34, 0.26, p.x);
    let groove = -3.0 * mound(p, [0.0, 0.39], [0.035, 0.055]) - 3.0 * mound(p, [0.0, 0.66], [0.20, 0.045]);
    let dimple = -1.5 * mound(p, [0.34, 0.485], [0.03, 0.03]);
    let chin = 12.0 * mound(p, [0.0, 0.82], [0.20, 0.13]);
    oval + 46.0
        + brow
        + socket
        + globe
        + lids
        + bridge
        + wings
        + cheeks
        + fold
        + upper
        + lower
        + part
        + groove
        + dimple
        + chin
}

/// Colour on the face: a little flush on cheeks and lips, a dark line at the lids.
pub(super) fn paint(at: Vec2, skin: Vec3) -> Vec3 {
    let p = unit(at);
    if p.y > 1.3 {
        return skin;
    }
    let cheek = 0.30 * mound(p, [0.52, 0.22], [0.22, 0.16]);
    let smile = 0.505 - 0.16 * p.x * p.x;
    let lips = 0.5 * ramp(0.095, 0.06, (p.y - smile - 0.010).abs()) * ramp(0.31, 0.16, p.x);
    let lash = 0.75 * bump((between_lids(p) - 0.004) / 0.012) * ramp(0.265, 0.22, (p.x - EYE.x).abs());
    let brow = 0.42 * bump((p.y - brow_line(p.x)) / 0.022) * ramp(0.10, 0.2, p.x) * ramp(0.80, 0.62, p.x);
    skin.lerp(vec3(0.92, 0.52, 0.38), cheek)
        .lerp(vec3(0.74, 0.36, 0.28), lips)
        .lerp(vec3(0.16, 0.10, 0.08), lash.max(brow))
}

/// What shows between the lids: pale light with a ring of amber in it.
pub(super) fn open_eyes(canvas: &mut Canvas) {
    canvas.rework(|at, colour| {
        let p = unit(at);
        let open = ramp(0.004, 0.014, between_lids(p));
        if open <= 0.0 {
            return colour;
        }
        // Both look a little to the viewer's left, where the owl comes from.
        let side = if at.x < AXIS { -1.0 } else { 1.0 };
        let iris = ((at - CENTRE) / HALF - vec2(EYE.x * side - 0.03, EYE.y - 0.012)) * vec2(1.0, HALF.y / HALF.x);
        let from = iris.length();
        let shade = 0.45 + 0.55 * ramp(0.0, 0.04, between_lids(p));
        let white = vec3(0.98, 0.95, 0.86) * shade;
        let ring = vec3(1.0, 0.84, 0.36).lerp(vec3(0.56, 0.25, 0.04), ramp(0.075, 0.13, from));
        let eye = white.lerp(ring, ramp(0.136, 0.126, from)).lerp(vec3(0.03, 0.02, 0.02), ramp(0.056, 0.046, from));
        let gleam = ramp(0.026, 0.014, (iris + vec2(0.03, 0.032)).length());
        colour.lerp(eye.lerp(Vec3::ONE, gleam), open)
    });
    for side in [-1.0, 1.0] {
        let eye = CENTRE + EYE * HALF * vec2(side, 1.0);
        canvas.glow(eye, 40.0, &[(0.0, vec3(1.0, 0.86, 0.55), 0.20), (1.0, Vec3::ZERO, 0.0)]);
    }
}
