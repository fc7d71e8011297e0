//! A figure is thrown sideways or upside down: what is up in its picture is not up where it lands.

use super::{Case, Finding, Level, Matter, remedy::Proposal};
use crate::{
    edit::Edit,
    judge::{Landing, Landings, leave},
    light::{Beam, Night},
    scene::{Angle, Content, Item, Pose, Stance, Station, limits},
};
use glam::{Vec2, Vec3};

/// A target that lies flatter than this has no upright, as the cosine of its slope: 45°.
const LIES: f32 = 0.707;
/// How far the way up of a picture is followed, of its raster.
const STEP: f32 = 0.02;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::SIDEWAYS);
    let mut list = Vec::new();
    for (index, station, reading) in case.lit() {
        let beam = case.beam(index);
        let Some(off) = beam.and_then(|beam| off(case.night, beam, case.landings(index))) else { continue };
        if off <= bound.value {
            continue;
        }
        let of = &station.name.0;
        let how = if off > 135.0 { "upside down" } else { "sideways" };
        let says = format!("The picture of “{of}” stands {how} on “{}”: {off:.0}° off upright", reading.quoted_onto());
        let level = if off > 2.0 * bound.value { Level::Fix } else { Level::Check };
        list.push(Finding::new(Matter::Sideways, level, of, None).against(off, &bound, says));
    }
    list
}

/// Angle between the way up of a picture and upright where it lands nearest to its middle, degrees, as the lens looks; `None` where
/// nothing of it lands, and on what lies flat.
fn off(night: &Night, beam: &Beam, landings: &Landings) -> Option<f64> {
    let [at, above] = [beam.raster_of([0.5, 0.5])?, beam.raster_of([0.5, 0.45])?].map(Vec2::from);
    let beside = |landing: &Landing| (Vec2::from(landing.uv) - at).length_squared();
    let landed = landings.cells.iter().filter(|landing| landing.target.is_some());
    let middle = landed.min_by(|a, b| beside(a).total_cmp(&beside(b)))?;
    let touch = middle.target?;
    if touch.normal.y.abs() > LIES {
        return None;
    }
    // On an upright plane that faces the light: a slanting or rounded target slants the picture, which is another matter.
    let (_, along) = leave(night, beam, middle.uv)?;
    let facing = -along.with_y(0.0).try_normalize()?;
    let step = STEP * (above - at).try_normalize()?;
    let land = |u: f32, v: f32| {
        let (from, along) = leave(night, beam, [u, v])?;
        let steep = along.dot(facing);
        (steep < -1e-3).then(|| from + along * ((touch.point - from).dot(facing) / steep))
    };
    let [u, v] = middle.uv;
    let (low, high) = (land(u - step.x, v - step.y)?, land(u + step.x, v + step.y)?);
    Some(f64::from((high - low).angle_between(Vec3::Y).to_degrees()))
}

/// The picture turned in its raster, the projector turned the other way, no roll.
pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some((_, station, _)) = case.lit_by(&finding.of) else { return Vec::new() };
    let name = &station.name.0;
    let mut list = Vec::new();
    let stance = match station.content.stance {
        Stance::Wide => Stance::Upright,
        Stance::Upright => Stance::Wide,
    };
    let content = Content { stance, ..station.content.clone() };
    list.push(Proposal {
        says: format!("Turn the picture of “{name}” by a quarter in its raster"),
        edit: Edit::Change(Item::Station(Station { content, ..station.clone() })),
    });
    if station.roll_deg.0 != 0.0 {
        let level = Station { roll_deg: Angle(0.0), ..station.clone() };
        list.push(Proposal { says: format!("Set “{name}” level"), edit: Edit::Change(Item::Station(level)) });
    }
    for (pose, says) in [
        (Pose::Table, format!("Set “{name}” on its feet")),
        (Pose::Upright, format!("Lay “{name}” on its side")),
        (Pose::Ceiling, format!("Turn “{name}” over and set it to ceiling mount")),
    ] {
        if pose != station.pose {
            list.push(Proposal { says, edit: Edit::Change(Item::Station(Station { pose, ..station.clone() })) });
        }
    }
    list
}
