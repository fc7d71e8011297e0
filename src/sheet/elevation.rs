//! What is lit, to scale, as seen from the projector, with where the picture lands on it.

use super::{
    Digits, Landed, SIGNS, Weight,
    draw::{Sketch, Stand},
    flow::SMALL,
    pose::level,
    scale::{Scale, around, clipped, hull, within},
};
use crate::light::{Beam, Night};
use glam::{DVec3, Vec3};

/// The plane that is drawn: its origin, to the right, and upwards as seen from the projector.
struct Plane {
    at: DVec3,
    right: DVec3,
    up: DVec3,
}

impl Plane {
    fn of(night: &Night, beam: &Beam, landed: &Landed) -> Self {
        if let Some(edges) = &landed.edges {
            let face = edges.face;
            let axis = |v: Vec3| v.as_dvec3().normalize_or_zero();
            return Self { at: face.corner.as_dvec3(), right: axis(face.u), up: axis(face.v) };
        }
        let forward = beam.lens.forward.with_y(0.0).try_normalize().unwrap_or(Vec3::NEG_Z);
        let (right, up) = level(forward);
        let middle =
            landed.targets.first().and_then(|target| night.place(target)).map(|place| place.middle.with_y(0.0));
        let at = middle.unwrap_or(beam.lens.at + 2.0 * forward).as_dvec3();
        Self { at, right: right.as_dvec3(), up: up.as_dvec3() }
    }

    fn at(&self, point: DVec3) -> [f64; 2] {
        let way = point - self.at;
        [way.dot(self.right), way.dot(self.up)]
    }

    /// Where a ray of the picture meets the plane.
    fn met(&self, beam: &Beam, uv: [f32; 2]) -> Option<[f64; 2]> {
        let normal = self.right.cross(self.up);
        let (from, along) = (beam.lens.at.as_dvec3(), beam.lens.direction(uv[0], uv[1]).as_dvec3());
        let far = (self.at - from).dot(normal) / along.dot(normal);
        (far > 0.0 && far < 1e3).then(|| self.at(from + far * along))
    }
}

/// The outline of each target on the plane.
fn outlines(night: &Night, plane: &Plane, landed: &Landed) -> Vec<Vec<[f64; 2]>> {
    if let Some(edges) = &landed.edges {
        let face = edges.face;
        let ring = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];
        return vec![ring.map(|(s, t)| plane.at(face.point(s, t).as_dvec3())).to_vec()];
    }
    let of_target = |target: &String| {
        let corners = night.names.number(target).into_iter().flat_map(|owner| night.corners_of(owner));
        hull(corners.map(|corner| plane.at(corner.as_dvec3())).collect())
    };
    landed.targets.iter().map(of_target).collect()
}

/// Draws it into a frame; the numbers are those of the list of points beside it.
pub(super) fn draw(
    night: &Night,
    beam: &Beam,
    landed: &Landed,
    digits: Digits,
    at: [f64; 2],
    size: [f64; 2],
) -> Sketch {
    let mut sketch = Sketch::default();
    let plane = Plane::of(night, beam, landed);
    let targets = outlines(night, &plane, landed);
    let ring = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];
    let picture: Vec<[f64; 2]> = ring.iter().filter_map(|uv| plane.met(beam, *uv)).collect();
    let spots: Vec<Option<[f64; 2]>> = landed.spots.iter().map(|spot| plane.met(beam, spot.uv)).collect();
    let inner = ([at[0] + 22.0, at[1] + 14.0], [size[0] - 34.0, size[1] - 52.0]);
    // A target far larger than the picture is cut off; the picture and its numbers are not.
    let Some((low, high)) = around(&picture, 0.35, 0.15) else { return sketch };
    let (mut lowest, mut highest) = (low, high);
    if let Some((t_low, t_high)) = around(&targets.concat(), 0.0, 0.0) {
        for i in 0..2 {
            let span = high[i] - low[i];
            lowest[i] = lowest[i].min(t_low[i].max(low[i] - 0.6 * span));
            highest[i] = highest[i].max(t_high[i].min(high[i] + 0.6 * span));
        }
    }
    let scale = Scale::fitted(lowest, highest, inner.0, inner.1);
    let on = |points: &[[f64; 2]]| points.iter().map(|p| scale.at(*p)).collect::<Vec<_>>();
    for target in targets.iter().map(|target| on(target)) {
        sketch.area(&within(&target, inner.0, inner.1), 0.88);
        for (i, a) in target.iter().enumerate() {
            let b = target[(i + 1) % target.len()];
            if let Some(part) = clipped(*a, b, inner.0, inner.1) {
                sketch.line(&part, 1.6, 0.0);
            }
        }
    }
    let corners = on(&picture);
    if corners.len() == 4 {
        let mut closed = corners.clone();
        closed.push(corners[0]);
        sketch.dashed(&closed, 1.0, 0.0, [5.0, 2.5]);
    }
    let mut taken = sizes(&mut sketch, &scale, landed, digits, inner);
    // Where the bar of the scale stands.
    taken.push(([at[0] + 50.0, at[1] + size[1] - 22.0], [50.0, 10.0]));
    for (number, spot) in spots.iter().enumerate() {
        let Some(spot) = spot else { continue };
        let point = scale.at(*spot);
        let arm = 4.0;
        sketch.line(&[[point[0] - arm, point[1]], [point[0] + arm, point[1]]], 0.7, 0.0);
        sketch.line(&[[point[0], point[1] - arm], [point[0], point[1] + arm]], 0.7, 0.0);
        let middle = scale.at(spots.get(4).copied().flatten().unwrap_or_default());
        // Corners have their numbers outside, the points along the middle beside it.
        let way = if number < 4 { (point[1] - middle[1]).signum().atan2((point[0] - middle[0]).signum()) } else { 0.0 };
        let tries = (0..48).map(|i| {
            let (turn, out) = (f64::from(i % 8) * std::f64::consts::FRAC_PI_4, 12.0 + 8.0 * f64::from(i / 8));
            [point[0] + out * (way + turn).cos(), point[1] + out * (way + turn).sin()]
        });
        let free = |p: &[f64; 2]| {
            let inside =
                (0..2).all(|i| p[i] > at[i] + 6.0) && p[0] < at[0] + size[0] - 6.0 && p[1] < at[1] + size[1] - 20.0;
            inside && taken.iter().all(|(q, half)| (0..2).any(|i| (p[i] - q[i]).abs() > half[i] + 6.5))
        };
        if let Some(found) = tries.into_iter().find(free) {
            taken.push((found, [6.5, 6.5]));
            sketch.line(&[point, found], 0.4, 0.0);
            sketch.numbered(found, SIGNS.get(number).unwrap_or(&""));
        }
    }
    sketch.bar(&scale, digits, [at[0] + 4.0, at[1] + size[1] - 15.0]);
    let says = format!("From the projector, {}; dashed: picture", scale.says());
    sketch.text([at[0] + 0.5 * size[0], at[1] + size[1] - 4.0], SMALL, Weight::Regular, Stand::Middle, &says);
    sketch
}

/// A middle, and half a width and height.
type Box = ([f64; 2], [f64; 2]);

/// Width and height of a flat target that is drawn whole; the answer is where their numbers stand.
fn sizes(
    sketch: &mut Sketch,
    scale: &Scale,
    landed: &Landed,
    digits: Digits,
    (at, size): ([f64; 2], [f64; 2]),
) -> Vec<Box> {
    let mut taken = Vec::new();
    let Some(edges) = &landed.edges else { return taken };
    let (wide, tall) = (f64::from(edges.face.u.length()), f64::from(edges.face.v.length()));
    let (low, high) = (scale.at([0.0, 0.0]), scale.at([wide, tall]));
    let inside = |x: f64, i: usize| x >= at[i] - 0.5 && x <= at[i] + size[i] + 0.5;
    if inside(low[0], 0) && inside(high[0], 0) {
        let y = low[1].min(at[1] + size[1]) + 14.0;
        sketch.dimension([low[0], y], [high[0], y], &digits.drawn(wide));
        taken.push(([0.5 * (low[0] + high[0]), y - 5.0], [30.0, 6.0]));
    }
    if inside(low[1], 1) && inside(high[1], 1) {
        let x = low[0].max(at[0]) - 10.0;
        sketch.dimension([x, low[1]], [x, high[1]], &digits.drawn(tall));
        taken.push(([x - 5.0, 0.5 * (low[1] + high[1])], [6.0, 30.0]));
    }
    taken
}
