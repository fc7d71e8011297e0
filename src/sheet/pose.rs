//! A station's pose as a person on a ladder sets it.

use super::{Datum, Mark, TapedPoint, taped::by_best_pair};
use crate::{
    geometry::Sight,
    light::{Beam, Lens, Night},
    scene::{Catalogue, Item, Keystone, Pose, Stance, Yard},
};
use glam::{DVec3, Vec3};

/// How the projector is turned, as a level and an eye show it, degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// Of its axis upwards.
    pub tilt_deg: f64,
    /// Of its axis to the right of straight in from the street.
    pub pan_deg: f64,
    /// Clockwise as it looks, beyond how it lies.
    pub roll_deg: f64,
}

/// A fold mirror as it is set.
#[derive(Clone, Debug, PartialEq)]
pub struct MirrorSheet {
    /// Its name.
    pub name: String,
    /// Its middle, m.
    pub at: DVec3,
    /// Its silvered side upwards of level, degrees.
    pub tilt_deg: f64,
    /// What its silvered side faces, to the right of straight in from the street, degrees.
    pub pan_deg: f64,
}

/// What is set for a station.
#[derive(Clone, Debug, PartialEq)]
pub struct PoseSheet {
    /// The lens, m.
    pub lens: DVec3,
    /// What is right below it, and how far, m.
    pub below: Option<(String, f64)>,
    /// The lens by tapes; `None` where no two marks lie well for it.
    pub taped: Option<TapedPoint>,
    /// One more tape to check by: mark and reading, m.
    pub check: Option<(usize, f64)>,
    /// How it lies.
    pub lies: Pose,
    /// How it is turned; `None` for a station that is off.
    pub turn: Option<Turn>,
    /// Distance over picture width as it is set.
    pub throw_ratio: f64,
    /// Its class's range of that, where it can zoom.
    pub zoom: Option<[f64; 2]>,
    /// Lens shift in picture widths to the right and heights upwards.
    pub shift: [f64; 2],
    /// How it bends its picture.
    pub keystone: Keystone,
    /// Its own pixels.
    pub pixels: [u32; 2],
    /// Depth to focus at, m; `None` for a station that is off.
    pub focus: Option<f64>,
    /// Nearest that it can be sharp at, m.
    pub nearest: f64,
    /// Mirrors in the order that the light meets them.
    pub mirrors: Vec<MirrorSheet>,
    /// Whether the picture is sent mirrored left for right.
    pub mirrored: bool,
    /// Whether the picture's file stands upright.
    pub upright: bool,
}

impl PoseSheet {
    /// The marks that it names, by index.
    pub fn marks(&self) -> impl Iterator<Item = usize> {
        self.taped.iter().flat_map(|taped| taped.tapes.map(|(mark, _)| mark)).chain(self.check.map(|(mark, _)| mark))
    }
}

/// Works out the pose of the station at an index of the yard's list.
pub fn pose(
    yard: &Yard,
    catalogue: &Catalogue,
    night: &Night,
    known: &[Mark],
    datum: &Datum,
    index: usize,
) -> PoseSheet {
    let station = &yard.stations[index];
    let class = yard.projector(catalogue, &station.projector.0);
    let point = Item::Station(station.clone()).points().first().copied().unwrap_or_default();
    let lens = DVec3::from(point);
    let beam = night.beams.iter().find(|beam| beam.station == index as u32 && beam.relays.is_empty());
    let taped = by_best_pair(night, known, datum, &[lens]).and_then(|list| list.into_iter().next());
    let check = taped.as_ref().and_then(|taped| check(known, taped, lens));
    let mirrors = station.mirrors.iter().take(2).filter(|name| !yard.is_hidden(&name.0));
    PoseSheet {
        lens,
        below: below(night, lens),
        taped,
        check,
        lies: station.pose,
        turn: beam.map(|beam| turn(&beam.lens, station.pose, datum)),
        throw_ratio: station.throw_ratio.or(class.map(|class| class.throw_ratio)).map_or(0.0, |ratio| ratio.0),
        zoom: class.and_then(|class| Some([class.throw_ratio.0, class.throw_ratio_tele?.0])),
        shift: station.shift.or(class.map(|class| class.shift)).map_or([0.0; 2], |shift| shift.0),
        keystone: station.keystone.clone(),
        pixels: class.map_or([0; 2], |class| [class.pixels.0, class.pixels.1]),
        focus: beam.map(|beam: &Beam| f64::from(beam.focus)),
        nearest: class.map_or(0.0, |class| class.nearest.0.m),
        mirrors: mirrors.filter_map(|name| mirror(night, datum, &name.0)).collect(),
        mirrored: station.content.mirrored,
        upright: station.content.stance == Stance::Upright,
    }
}

/// Level axes of a lens: to the right and upwards as it looks, square to its axis.
pub(super) fn level(forward: Vec3) -> (Vec3, Vec3) {
    let right = forward.cross(Vec3::Y).try_normalize().unwrap_or(Vec3::X);
    (right, right.cross(forward))
}

fn turn(lens: &Lens, lies: Pose, datum: &Datum) -> Turn {
    let (level, upright) = level(lens.forward);
    let rolled = f64::from((-lens.right.dot(upright)).atan2(lens.right.dot(level))).to_degrees();
    let own = match lies {
        Pose::Table => 0.0,
        Pose::Upright => 90.0,
        Pose::Ceiling => 180.0,
    };
    let (tilt_deg, pan_deg) = faced(lens.forward, datum);
    Turn { tilt_deg, pan_deg, roll_deg: (rolled - own + 180.0).rem_euclid(360.0) - 180.0 }
}

/// A direction's tilt upwards and its pan to the right of straight in from the street, degrees.
fn faced(way: Vec3, datum: &Datum) -> (f64, f64) {
    let way = datum.turned(way.as_dvec3().normalize_or_zero());
    (way.y.clamp(-1.0, 1.0).asin().to_degrees(), way.x.atan2(-way.z).to_degrees())
}

/// What the lens stands above.
fn below(night: &Night, lens: DVec3) -> Option<(String, f64)> {
    let hit = night.nearest_solid(Sight::endless(lens.as_vec3(), Vec3::NEG_Y))?;
    let owner = night.solid(hit.solid).owner;
    Some((night.names[owner as usize].clone(), f64::from(hit.t)))
}

/// A third mark, the nearest that is neither of the two nor close to one.
fn check(known: &[Mark], taped: &TapedPoint, lens: DVec3) -> Option<(usize, f64)> {
    let apart = |mark: &usize| taped.tapes.iter().all(|(used, _)| known[*used].at.distance(known[*mark].at) > 0.5);
    let far = |mark: &usize| known[*mark].at.distance(lens);
    let reached = |mark: &usize| known[*mark].reach(lens).is_some();
    let near = (0..known.len()).filter(apart).filter(reached).filter(|mark| far(mark) > 0.3);
    let nearest = near.min_by(|a, b| far(a).total_cmp(&far(b)))?;
    Some((nearest, far(&nearest)))
}

fn mirror(night: &Night, datum: &Datum, name: &str) -> Option<MirrorSheet> {
    let face = night.place(name)?.face?;
    let (tilt_deg, pan_deg) = faced(face.normal(), datum);
    Some(MirrorSheet { name: name.to_owned(), at: face.middle().as_dvec3(), tilt_deg, pan_deg })
}
