//! Where people stand and walk, and what they get of a lens.

use super::Case;
use crate::{
    geometry::Sight,
    judge::spot,
    light::{Beam, Night, VeilSort, luma, lumens},
    scene::{Spot, Station, Units},
    units,
};
use glam::Vec3;

/// Height of a child's eyes above its feet, m: a child of six; common practice, no source.
const CHILD_M: f32 = 1.1;
/// A lens of which less than this share comes through leaves or glass is hidden.
const HIDDEN: f32 = 0.02;
/// A beam of which less than this share comes straight through is one no more: behind a film, say.
pub(super) const STILL_A_BEAM: f32 = 0.2;

/// A lens as an eye sees it.
#[derive(Clone, Copy)]
pub(super) struct Glimpse {
    /// The eye.
    pub eye: Vec3,
    /// Unit vector from the eye to the lens, or to its image in a mirror.
    pub toward: Vec3,
    /// How far the eye stands beside the middle of the beam as the lens looks, degrees.
    pub beside_deg: f64,
    /// Light at the eye where the picture is white, lx; 0 outside the beam.
    pub lx: f64,
    /// Whether the eye is a child's.
    pub child: bool,
}

/// Every station that shines, with its beams: straight, and by way of mirrors.
pub(super) fn shining<'a>(case: &Case<'a>) -> impl Iterator<Item = (usize, &'a Station, Vec<&'a Beam>)> {
    let (yard, night) = (case.yard, case.night);
    yard.stations.iter().enumerate().filter_map(|(index, station)| {
        let beams: Vec<&Beam> = night.beams.iter().filter(|beam| beam.station == index as u32).collect();
        (!beams.is_empty()).then_some((index, station, beams))
    })
}

/// What is not known of a station's lumens: the low and the high end over the typical value.
pub(super) fn doubt(case: &Case, station: usize) -> [f64; 2] {
    let own = case.yard.stations.get(station).and_then(|station| lumens(case.yard, case.catalogue, station));
    own.map_or([1.0; 2], |lumens| {
        [lumens.low, lumens.high].map(|end| if lumens.typical > 0.0 { end / lumens.typical } else { 1.0 })
    })
}

/// Spots at which people stand or walk.
pub(super) fn on_foot<'a>(case: &Case<'a>) -> impl Iterator<Item = &'a Spot> {
    let yard = case.yard;
    yard.spots.iter().filter(|spot| !spot.drives && !yard.is_hidden(&spot.name.0))
}

/// Feet along the way of a spot, at most so far apart, m; one place where nobody goes on from there.
pub(super) fn way(spot: &Spot, apart: f32) -> Vec<Vec3> {
    let from = spot.at.vec3();
    let Some(to) = spot.to.as_ref().map(crate::scene::Point::vec3) else { return vec![from] };
    let steps = ((to - from).length() / apart).ceil().clamp(1.0, 200.0) as u16;
    (0..=steps).map(|i| from.lerp(to, f32::from(i) / f32::from(steps))).collect()
}

/// The lens as it is seen in a straight line, through glass and leaves perhaps; `None` where it looks the other way or anything
/// stands between. A lens behind cloth or film is a matter of that cloth.
pub(super) fn glimpse(night: &Night, beam: &Beam, eye: Vec3) -> Option<Glimpse> {
    let way = beam.lens.at - eye;
    let (far, toward) = (way.length(), way.normalize_or_zero());
    let middle = beam.lens.direction(0.5, 0.5);
    if far < 0.05 || middle.dot(toward) >= 0.0 {
        return None;
    }
    let left = luma(beam.transmittance(night, eye, Vec3::ZERO));
    let scatters = |sort: VeilSort| matches!(sort, VeilSort::Cloth | VeilSort::Film);
    let behind_cloth = || {
        let touches = night.touches(Sight::endless(eye, toward));
        let before = touches.iter().take_while(|t| (t.point - eye).length() < far);
        let mut before =
            before.take_while(|t| t.veil.is_some_and(|v| night.veils[v as usize].sort != VeilSort::Mirror));
        before.any(|t| t.veil.is_some_and(|v| scatters(night.veils[v as usize].sort)))
    };
    if left < HIDDEN || behind_cloth() {
        return None;
    }
    let lx = beam.white(eye).map_or(0.0, |(lx, _)| f64::from(lx * left));
    let beside_deg = f64::from(middle.angle_between(-toward).to_degrees());
    Some(Glimpse { eye, toward, beside_deg, lx, child: false })
}

/// What eyes at a spot, a grown person's and a child's, see most of a station's lens.
pub(super) fn seen_from(case: &Case, beams: &[&Beam], spot: &Spot) -> Option<Glimpse> {
    let grown = spot::eye(spot);
    let child = spot.at.vec3() + CHILD_M * Vec3::Y;
    let eyes = [(grown, false), (child, true)];
    let eyes = eyes.into_iter().filter(|(eye, child)| !child || grown.y - eye.y > 0.1);
    let seen = eyes.flat_map(|(eye, child)| {
        let each = move |beam: &&Beam| glimpse(case.night, beam, eye).map(|seen| Glimpse { child, ..seen });
        beams.iter().filter_map(each)
    });
    seen.max_by(|a, b| a.lx.total_cmp(&b.lx).then(b.beside_deg.total_cmp(&a.beside_deg)))
}

/// Illuminance as the yard's people read it.
pub(super) fn lux(case: &Case, lx: f64) -> String {
    units::illuminance(lx, lx, lx, case.yard.units == Units::Feet).join(", ")
}

/// What a white picture gives at 1 m before its lens, lx: `Φ · throw ratio² · aspect`.
pub(super) fn at_a_metre(beam: &Beam) -> f64 {
    f64::from(beam.power)
}
