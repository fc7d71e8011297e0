//! Hidden by day: how much of a station's body or box is seen from each viewing spot, and how large it looks.

use crate::{
    craft::shelter::BEHIND_PANE,
    geometry::Sight,
    judge::spot,
    light::{Night, luma},
    scene::{Catalogue, Pose, Yard},
    units::border,
};
use glam::{Mat3, Vec3};
use serde::Serialize;

/// Points across a face that are looked at.
const ACROSS: u16 = 6;
/// How far before a face a look ends, m.
const BEFORE: f32 = 2e-3;
/// Apparent sizes that people know, degrees, each from where it begins. Common practice, no source.
const LIKE: [(f64, &str); 5] = [
    (0.0, "smaller than the full moon"),
    (0.4, "about as large as the full moon"),
    (1.0, "as large as a thumbnail held out"),
    (2.5, "as large as a few fingers held out"),
    (7.0, "as large as a fist held out, or larger"),
];

/// What one viewing spot sees by day of one station.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HiddenReading {
    /// Name of the station.
    pub station: String,
    /// Name of the spot.
    pub spot: String,
    /// Whether it stands in a box, which is then what is seen.
    pub boxed: bool,
    /// Distance from the eye to its middle, m.
    #[serde(serialize_with = "border::lengths")]
    pub distance_m: f64,
    /// Share of what faces the eye that can be seen, less what leaves and cloth before it take.
    #[serde(serialize_with = "border::light")]
    pub visible: f64,
    /// Greatest apparent size, were nothing in the way, degrees.
    #[serde(serialize_with = "border::light")]
    pub across_deg: f64,
    /// The same, minutes of arc.
    #[serde(serialize_with = "border::light")]
    pub across_arc_min: f64,
}

impl HiddenReading {
    /// It in one sentence.
    pub fn says(&self) -> String {
        let what = if self.boxed { "the box" } else { "the projector" };
        let Self { station, spot, .. } = self;
        if self.visible < 0.005 {
            return format!("By day nothing of {what} of {station} is seen from {spot}");
        }
        let like = LIKE.iter().rev().find(|(from, _)| self.across_deg >= *from).map_or("", |(_, like)| like);
        format!(
            "By day {:.0} % of {what} of {station} is seen from {spot}, {:.1}° ({:.0} arcmin) across: {like}",
            100.0 * self.visible,
            self.across_deg,
            self.across_arc_min
        )
    }
}

/// What every viewing spot sees by day of every station, in their order; nothing of what is put away.
pub fn read_hidden(night: &Night, yard: &Yard, catalogue: &Catalogue) -> Vec<HiddenReading> {
    let shown = |name: &str| !yard.is_hidden(name);
    let mut list = Vec::new();
    for (index, station) in yard.stations.iter().enumerate().filter(|(_, station)| shown(&station.name.0)) {
        let Some(body) = body(night, yard, catalogue, index) else { continue };
        for spot in yard.spots.iter().filter(|spot| shown(&spot.name.0)) {
            let eye = spot::eye(spot);
            let across_deg = f64::from(body.across(eye)).to_degrees();
            list.push(HiddenReading {
                station: station.name.0.clone(),
                spot: spot.name.0.clone(),
                boxed: station.shelter.is_some(),
                distance_m: f64::from(eye.distance(body.middle)),
                visible: body.visible(night, eye),
                across_deg,
                across_arc_min: 60.0 * across_deg,
            });
        }
    }
    list
}

/// A brick in space.
struct Body {
    middle: Vec3,
    /// Its axes.
    axes: Mat3,
    /// Half of its extent along each.
    half: Vec3,
}

/// The body or box of a station, upright, its front towards where it looks. A projector's tilt is left out.
fn body(night: &Night, yard: &Yard, catalogue: &Catalogue, index: usize) -> Option<Body> {
    let station = yard.stations.get(index)?;
    let lens = station.at.vec3();
    let beam = night.beams.iter().find(|beam| beam.station as usize == index && beam.relays.is_empty());
    let looks = match beam {
        Some(beam) => beam.lens.forward,
        None => night.aim(&station.aim)? - lens,
    };
    let ahead = looks.with_y(0.0).try_normalize().unwrap_or(Vec3::NEG_Z);
    let axes = Mat3::from_cols(ahead.cross(Vec3::Y), Vec3::Y, ahead);
    let (size, before) = match &station.shelter {
        Some(shelter) => {
            let wall = shelter.thickness.f32();
            let inside = Vec3::new(shelter.width.f32(), shelter.height.f32(), shelter.depth.f32());
            (inside + 2.0 * wall, BEHIND_PANE as f32 + wall)
        }
        None => {
            let body = &yard.projector(catalogue, &station.projector.0)?.body;
            let (wide, high, deep) = (body.width.f32(), body.height.f32(), body.depth.f32());
            let lies = if station.pose == Pose::Upright { (high, wide) } else { (wide, high) };
            (Vec3::new(lies.0, lies.1, deep), 0.0)
        }
    };
    let half = 0.5 * size;
    let mut middle = lens + (before - half.z) * ahead;
    // What stands low stands on the ground, not in it.
    middle.y = middle.y.max(half.y + BEFORE);
    Some(Body { middle, axes, half })
}

impl Body {
    /// A point by its place along the axes, each -1 to 1.
    fn point(&self, at: Vec3) -> Vec3 {
        self.middle + self.axes * (self.half * at)
    }

    /// The greatest angle between two of its corners, rad.
    fn across(&self, eye: Vec3) -> f32 {
        let sign = |bit: usize| if bit == 0 { -1.0 } else { 1.0 };
        let corner = |i: usize| self.point(Vec3::new(sign(i & 1), sign(i & 2), sign(i & 4))) - eye;
        let pairs = (0..8).flat_map(|a| (0..a).map(move |b| (a, b)));
        pairs.map(|(a, b)| corner(a).angle_between(corner(b))).fold(0.0, f32::max)
    }

    /// Share of its faces as the eye has them that can be seen; 0 from inside.
    fn visible(&self, night: &Night, eye: Vec3) -> f64 {
        let (mut seen, mut all) = (0.0, 0.0);
        for face in 0..6 {
            let (axis, side) = (face / 2, if face % 2 == 0 { 1.0 } else { -1.0 });
            let out = side * self.axes.col(axis);
            for step in 0..ACROSS * ACROSS {
                let [u, v] =
                    [step % ACROSS, step / ACROSS].map(|i| (f32::from(i) + 0.5) / f32::from(ACROSS) * 2.0 - 1.0);
                let mut at = Vec3::ZERO;
                (at[axis], at[(axis + 1) % 3], at[(axis + 2) % 3]) = (side, u, v);
                let point = self.point(at) + BEFORE * out;
                let way = point - eye;
                let faces = -way.dot(out) / way.length().max(1e-3).powi(3);
                if faces <= 0.0 {
                    continue;
                }
                let weight = f64::from(faces * self.half[(axis + 1) % 3] * self.half[(axis + 2) % 3]);
                all += weight;
                let sight = Sight::between(eye, point);
                if !night.blocked(sight) {
                    seen += weight * f64::from(luma(night.through(sight, [u32::MAX; 2])));
                }
            }
        }
        if all > 0.0 { seen / all } else { 0.0 }
    }
}
