//! Means over area, against sums over the plane that are taken here and closed forms: planes turned and leant, lenses shifted and rolled.

use crate::lab::{DARK, Lab, close};
use gauzelight::{geometry::Quad, light::Lens, scene::Uv};
use glam::{DVec3, Vec3};

/// Lumens, throw ratio, and the lens's distance from the middle of what it lights, m.
const LUMENS: f64 = 100.0;
const RATIO: f64 = 1.4;
const AWAY: f64 = 2.8;
const PIXELS: (u32, u32) = (854, 480);

/// A cloth that faces the lens where it is neither turned nor leant, its middle 10 m up; and the station.
struct Case<'a> {
    size: [f64; 2],
    turn: f64,
    lean: f64,
    aim: &'a str,
    shift: [f64; 2],
    roll: f64,
    pose: &'a str,
}

impl Default for Case<'_> {
    fn default() -> Self {
        let aim = "aim: (0, 10, 0), target: \"cloth\"";
        Self { size: [60.0, 60.0], turn: 0.0, lean: 0.0, aim, shift: [0.0; 2], roll: 0.0, pose: "Table" }
    }
}

impl Case<'_> {
    fn lab(&self) -> Lab {
        let Case { size: [width, height], turn, lean, aim, roll, pose, .. } = self;
        // The middle of its top edge, so that its middle stays where it is.
        let half = 0.5 * height;
        let (lean_y, lean_z) = (half * lean.to_radians().cos(), half * lean.to_radians().sin());
        let (x, z) = (lean_z * turn.to_radians().sin(), lean_z * turn.to_radians().cos());
        let fields = format!(
            r#"{DARK} cloths: [(name: "cloth", fabric: "screen", at: ({x}, {}, {z}), width: {width}, height: {height},
                turn_deg: {turn}, tilt_deg: {lean})],
            stations: [(name: "station", projector: "16:9", content: (picture: "white"), lumens: {LUMENS}, throw_ratio: {RATIO},
                at: (0, 10, {AWAY}), {aim}, roll_deg: {roll}, pose: {pose})],"#,
            10.0 + lean_y
        );
        Lab::edited(&fields, |yard| {
            yard.projectors[0].pixels = PIXELS;
            yard.stations[0].shift = Some(Uv(self.shift));
        })
    }
}

/// What a sum over a plane comes to.
struct Sum {
    /// Lumens that land.
    landed: f64,
    /// The area where they land, m².
    area: f64,
}

impl Sum {
    fn mean(&self) -> f64 {
        self.landed / self.area
    }
}

/// A point of the plane in the raster, 0 to 1 where it is lit, and the illuminance that it would have there, lx:
/// `Φ / (w1 h1 z²) · |n·l| / cos α`.
fn at(lens: &Lens, normal: DVec3, point: DVec3) -> Option<([f64; 2], f64)> {
    let [right, up, forward, from] = [lens.right, lens.up, lens.forward, lens.at].map(Vec3::as_dvec3);
    let way = point - from;
    let z = way.dot(forward);
    let (w1, h1) = (1.0 / RATIO, f64::from(PIXELS.1) / f64::from(PIXELS.0) / RATIO);
    let (sx, sy) = (f64::from(lens.shift.x), f64::from(lens.shift.y));
    let uv = [way.dot(right) / (z * w1) + 0.5 - sx, 0.5 - way.dot(up) / (z * h1) + sy];
    let (slant, cos) = (normal.dot(way).abs() / way.length(), z / way.length());
    (z > 0.0).then(|| (uv, LUMENS / (w1 * h1 * z * z) * slant / cos))
}

/// Sums over a face point by point: first where light falls on it at all, coarsely, then there.
fn over(face: &Quad, lens: &Lens) -> Sum {
    const STEPS: u32 = 1200;
    let [corner, u, v] = [face.corner, face.u, face.v].map(Vec3::as_dvec3);
    let normal = u.cross(v).normalize();
    let lit = |s: f64, t: f64| {
        let (uv, lx) = at(lens, normal, corner + s * u + t * v)?;
        uv.iter().all(|x| (0.0..=1.0).contains(x)).then_some(lx)
    };
    let grid = |k: u32, [low, high]: [f64; 2]| low + (high - low) * (f64::from(k) + 0.5) / f64::from(STEPS);
    let mut span = [[1.0_f64, 0.0_f64]; 2];
    for (i, j) in (0..STEPS * STEPS).map(|k| (k % STEPS, k / STEPS)) {
        let at = [grid(i, [0.0, 1.0]), grid(j, [0.0, 1.0])];
        if lit(at[0], at[1]).is_some() {
            for axis in 0..2 {
                span[axis] = [span[axis][0].min(at[axis]), span[axis][1].max(at[axis])];
            }
        }
    }
    let span = span
        .map(|[low, high]| [low - 1.0 / f64::from(STEPS), high + 1.0 / f64::from(STEPS)].map(|x| x.clamp(0.0, 1.0)));
    let step = u.cross(v).length() * (span[0][1] - span[0][0]) * (span[1][1] - span[1][0]) / f64::from(STEPS * STEPS);
    let mut sum = Sum { landed: 0.0, area: 0.0 };
    for (i, j) in (0..STEPS * STEPS).map(|k| (k % STEPS, k / STEPS)) {
        if let Some(lx) = lit(grid(i, span[0]), grid(j, span[1])) {
            sum.landed += lx * step;
            sum.area += step;
        }
    }
    sum
}

fn face(lab: &Lab) -> Quad {
    lab.night.place("cloth").and_then(|place| place.face).expect("a cloth is flat")
}

/// 100 lm on a plane turned by φ: flux is kept, so that the mean is `Φ cos φ (1 − q)² / (w1 h1 z²)`, `q = (w1 tan φ / 2)²`.
#[test]
fn the_mean_is_flux_over_area_on_a_turned_plane() {
    for (turn, printed) in [(0.0, 44.48), (30.0, 35.3), (45.0, 23.9), (60.0, 8.48), (-30.0, 35.3), (-60.0, 8.48)] {
        let reading = Case { turn, ..Case::default() }.lab().reading();
        let phi = f64::to_radians(turn);
        let (w1, h1) = (1.0 / RATIO, f64::from(PIXELS.1) / f64::from(PIXELS.0) / RATIO);
        let q = (0.5 * w1 * phi.tan()).powi(2);
        let wanted = LUMENS * phi.cos() * (1.0 - q).powi(2) / (w1 * h1 * AWAY * AWAY);
        close(wanted, printed, 2e-3);
        close(reading.mean_on_target_lx.typical, wanted, 2e-3);
        assert_eq!(reading.misses, 0.0);
        // Nine places: the mean of `(1 + u tan φ)³` over u = −a, 0, a is `1 + 2 a² tan² φ`, `a = w1 / 3`.
        let nine = LUMENS / (w1 * h1 * AWAY * AWAY) * phi.cos() * (1.0 + 2.0 * (w1 / 3.0 * phi.tan()).powi(2));
        close(reading.phone_check.mean.typical, nine, 1e-4);
        close(reading.phone_check.lumens_per_lx.expect("it is lit"), LUMENS / nine, 1e-4);
    }
}

#[test]
fn means_on_slanting_planes_by_shifted_and_rolled_lenses() {
    let tables = [(20.0, 15.0), (-20.0, 25.0), (35.0, -20.0), (-40.0, -15.0), (50.0, 10.0), (0.0, 40.0), (0.0, -40.0)];
    for (turn, lean) in tables {
        for (shift, roll, pose) in [
            ([0.0, 0.5], 0.0, "Table"),
            ([-0.2, 0.3], 25.0, "Table"),
            ([0.0, 0.5], -10.0, "Upright"),
            ([0.1, -0.4], 0.0, "Ceiling"),
        ] {
            let lab = Case { size: [30.0, 30.0], turn, lean, shift, roll, pose, ..Case::default() }.lab();
            let (reading, sum) = (lab.reading(), over(&face(&lab), &lab.night.beams[0].lens));
            close(sum.landed, LUMENS, 5e-3);
            close(reading.mean_on_target_lx.typical, sum.mean(), 4e-3);
            let lens = &lab.night.beams[0].lens;
            for (place, i) in reading.phone_check.places.iter().zip(0..) {
                let point = DVec3::from(place.at.expect("all of it lands"));
                let (uv, lx) = at(lens, face(&lab).normal().as_dvec3(), point).expect("it is before the lens");
                let centre = [f64::from(i % 3), f64::from(i / 3)].map(|k| (2.0 * k + 1.0) / 6.0);
                assert!((0..2).all(|axis| (uv[axis] - centre[axis]).abs() < 1e-4), "{uv:?} for {centre:?}");
                close(place.lx.expect("all of it lands").typical, lx, 1e-3);
            }
        }
    }
}

/// Targets that a picture hangs over: the figures converge, wherever the edge runs between the cells.
#[test]
fn cells_at_an_edge_count_in_part() {
    for (size, turn, roll) in
        [([1.0, 0.7], 0.0, 0.0), ([1.03, 0.71], 30.0, 0.0), ([0.9, 1.9], 50.0, 12.0), ([1.515, 0.633], -45.0, -30.0)]
    {
        let lab = Case { size, turn, roll, shift: [0.05, 0.0], aim: "aim: \"cloth\"", ..Case::default() }.lab();
        let (reading, sum) = (lab.reading(), over(&face(&lab), &lab.night.beams[0].lens));
        close(reading.mean_on_target_lx.typical, sum.mean(), 5e-3);
        close(1.0 - reading.misses, sum.landed / LUMENS, 5e-3);
        assert_eq!(reading.targets.len(), 1);
        close(reading.targets[0].share, sum.landed / LUMENS, 5e-3);
    }
}

/// The picture is the whole of it on the plane where it lands; what lands on the target is told beside it.
#[test]
fn the_picture_s_size_is_not_that_of_its_target() {
    let lab = Case { size: [1.0, 0.5], ..Case::default() }.lab();
    let reading = lab.reading();
    let height = 2.0 * f64::from(PIXELS.1) / f64::from(PIXELS.0);
    close(reading.picture.width_m, 2.0, 1e-4);
    close(reading.picture.height_m, height, 1e-4);
    close(reading.picture.bottom_m, 10.0 - 0.5 * height, 1e-4);
    close(reading.lit.width_m, 1.0, 5e-3);
    close(reading.lit.height_m, 0.5, 5e-3);
    // Turned by φ its sides land at `z / cos φ · (w1/2) / (1 ∓ (w1/2) tan φ)` from its middle.
    let turned = Case { turn: 45.0, ..Case::default() }.lab().reading();
    let half = 0.5 / RATIO;
    close(turned.picture.width_m, AWAY * 2.0_f64.sqrt() * (half / (1.0 - half) + half / (1.0 + half)), 1e-4);
    close(turned.lit.width_m, turned.picture.width_m, 1e-4);
}

/// Along the middle of the picture, not the lens axis: with the picture half its height above the axis that is longer.
#[test]
fn lens_to_target_is_told_along_the_middle_of_the_picture() {
    let h1 = f64::from(PIXELS.1) / f64::from(PIXELS.0) / RATIO;
    let lab = Case { shift: [0.0, 0.5], ..Case::default() }.lab();
    let reading = lab.reading();
    close(reading.throw_m.unwrap(), AWAY, 1e-5);
    close(reading.depth_m.unwrap(), AWAY / (1.0 + (0.5 * h1).powi(2)).sqrt(), 1e-5);
}

/// On a turned plane a step along a row at height `v` is `z √(1/cos² φ + v² tan² φ) / (1 + u tan φ)²` long for each step of `u`: the
/// pixels in the corners of the far side are the coarsest.
#[test]
fn pixels_in_the_middle_and_where_they_are_coarsest() {
    let half_height = 0.5 * f64::from(PIXELS.1) / f64::from(PIXELS.0) / RATIO;
    for turn in [0.0, 30.0, 60.0] {
        let reading = Case { turn, ..Case::default() }.lab().reading();
        let (tan, cos) = (f64::to_radians(turn).tan(), f64::to_radians(turn).cos());
        let square = f64::from(PIXELS.0) * RATIO / AWAY;
        close(reading.pixels_per_m, square * cos, 1e-4);
        let rise = (1.0 / (cos * cos) + (half_height * tan).powi(2)).sqrt();
        close(reading.least_pixels_per_m, square * (1.0 - 0.5 / RATIO * tan).powi(2) / rise, 1e-3);
    }
}

/// Of a matt wall turned by φ an eye sees `ρ E / π`, weighed by the solid angle of what it sees: `∫ L dω / ∫ dω`.
#[test]
fn luminance_is_weighed_by_solid_angle() {
    for (turn, spot) in [(0.0, [1.0, 9.0]), (45.0, [4.0, 3.0]), (60.0, [-1.5, 4.0]), (-60.0, [-3.0, 2.5])] {
        let [x, z] = spot;
        let lab = Lab::edited(
            &format!(
                r#"{DARK} walls: [(name: "cloth", at: (0, 8, 0), width: 12, height: 4, surface: "grey", turn_deg: {turn})],
                spots: [(name: "spot", at: ({x}, 8.4, {z}), look: "cloth")],
                stations: [(name: "station", projector: "16:9", content: (picture: "white"), lumens: {LUMENS},
                    throw_ratio: {RATIO}, at: (0, 10, {AWAY}), aim: (0, 10, 0), target: "cloth")],"#
            ),
            |yard| yard.projectors[0].pixels = PIXELS,
        );
        let (lens, face, eye) = (&lab.night.beams[0].lens, face(&lab), DVec3::new(x, 10.0, z));
        let [corner, u, v] = [face.corner, face.u, face.v].map(Vec3::as_dvec3);
        let normal = u.cross(v).normalize();
        let (mut light, mut open) = (0.0, 0.0);
        const STEPS: u32 = 2000;
        for (i, j) in (0..STEPS * STEPS).map(|k| (k % STEPS, k / STEPS)) {
            let point =
                corner + (f64::from(i) + 0.5) / f64::from(STEPS) * u + (f64::from(j) + 0.5) / f64::from(STEPS) * v;
            let Some((uv, lx)) = at(lens, normal, point) else { continue };
            if uv.iter().all(|x| (0.0..=1.0).contains(x)) {
                let way = point - eye;
                let weight = normal.dot(way).abs() / way.length().powi(3);
                (light, open) = (light + weight * 0.5 * lx / std::f64::consts::PI, open + weight);
            }
        }
        close(lab.reading().spots[0].mean.typical, light / open, 5e-3);
    }
}

/// A wall 30 cm thick, turned by 35°, which the picture overshoots: only its face is meant. What lands on its end and its top misses,
/// and the corners are those on the face's plane.
#[test]
fn a_walls_ends_are_no_target() {
    for (turn, x) in [(35.0, 0.3), (-35.0, -0.3), (60.0, 0.3)] {
        let lab = Lab::edited(
            &format!(
                r#"{DARK} walls: [(name: "cloth", at: (0, 9.5, 0), width: 1.6, height: 1.2, thickness: 0.3, surface: "grey", turn_deg: {turn})],
                stations: [(name: "station", projector: "16:9", content: (picture: "white"), lumens: {LUMENS},
                    throw_ratio: {RATIO}, at: ({x}, 10, 3), aim: (0, 10.2, 0), target: "cloth")],"#
            ),
            |yard| {
                yard.projectors[0].pixels = PIXELS;
                yard.stations[0].shift = Some(Uv([0.0, 0.2]));
            },
        );
        let (reading, lens, face) = (lab.reading(), &lab.night.beams[0].lens, face(&lab));
        let sum = over(&face, lens);
        close(reading.mean_on_target_lx.typical, sum.mean(), 5e-3);
        close(1.0 - reading.misses, sum.landed / LUMENS, 1e-2);
        let (normal, from) = (face.normal().as_dvec3(), lens.at.as_dvec3());
        for (corner, uv) in reading.corners.iter().zip([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0], [1.0, 1.0]]) {
            let along = lens.direction(uv[0], uv[1]).as_dvec3();
            let wanted = from + along * (face.corner.as_dvec3() - from).dot(normal) / along.dot(normal);
            let found = DVec3::from(corner.expect("it meets the plane"));
            assert!(found.abs_diff_eq(wanted, 1e-3 * wanted.distance(from)), "{turn}: {found} for {wanted}");
        }
        assert!(reading.beyond.iter().any(|beyond| beyond.thing == "edge of cloth"), "{:?}", reading.beyond);
    }
}
