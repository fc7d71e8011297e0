//! What stands between an eye and a figure: how much of the figure's light gets past it, and what takes the rest.

use super::{Landings, landings::Part};
use crate::{
    geometry::Sight,
    light::{Night, VeilSort, cells::GOLDEN},
    units::border,
};
use glam::Vec3;
use serde::Serialize;
use std::collections::BTreeMap;

/// Points of a figure that are looked at.
const POINTS: usize = 240;
/// A smaller share is not told.
const LEAST_SHARE: f64 = 0.005;
/// How far before its target a look ends, m.
const BEFORE: f32 = 5e-3;

/// What one thing takes of a figure's light on its way to an eye.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Taken {
    /// Name of the thing; the target itself where that turns some of the figure away.
    pub thing: String,
    /// Share of the figure's light that it takes.
    #[serde(serialize_with = "border::light")]
    pub share: f64,
    /// Of what meets it, the share that it takes: 1 of something opaque, less of a net or a hedge.
    #[serde(serialize_with = "border::light")]
    pub opaque: f64,
}

/// What an eye has of a figure past all that stands in the way.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Obstruction {
    /// Share of the figure's light that comes through; 0 where nothing lands on the target.
    pub passes: f64,
    /// What takes the rest, the most first.
    pub taken: Vec<Taken>,
}

/// At most as many of a figure's points as are looked at, all over it: by the golden ratio, as even steps would go by one half of a
/// picture that is alike on both sides.
fn scattered<'a>(figure: &[&'a Part]) -> Vec<&'a Part> {
    if figure.len() <= POINTS {
        return figure.to_vec();
    }
    let at = |i: usize| ((i as f64 * GOLDEN).fract() * figure.len() as f64) as usize;
    (0..POINTS).filter_map(|i| figure.get(at(i)).copied()).collect()
}

/// What one thing meets and takes, as light.
#[derive(Clone, Copy, Default)]
struct Toll {
    meets: f64,
    takes: f64,
}

/// Looks from an eye at a figure: each of its points counts by the light that it has and by the solid angle that it is seen
/// under, `Φ |n·l| / r²`. The light goes straight on through cloth, net and leaves by what they let through at their angle; a
/// mirror and anything opaque end it. Window glass counts as nothing: it is told of by itself.
pub(super) fn between(night: &Night, landings: &Landings, eye: Vec3) -> Obstruction {
    let figure: Vec<&Part> = landings.figure_on_target().collect();
    let mut tolls: BTreeMap<u32, Toll> = BTreeMap::new();
    let (mut all, mut passed) = (0.0, 0.0);
    for part in scattered(&figure) {
        let Some(touch) = part.landing.target else { continue };
        let way = touch.point - eye;
        let (far, along) = (way.length(), way.normalize_or_zero());
        let steep = touch.normal.dot(along);
        let light = part.lumens() * f64::from(steep.abs()) / f64::from(far * far).max(1e-4);
        all += light;
        let mut left = light;
        let mut pay = |owner: u32, left: &mut f64, through: f64| {
            let toll = tolls.entry(owner).or_default();
            toll.meets += *left;
            toll.takes += *left * (1.0 - through);
            *left *= through;
        };
        let sight = Sight { reach: far - BEFORE, ..Sight::endless(eye, along) };
        for met in night.touches(sight) {
            let sort = met.veil.map(|veil| night.veils[veil as usize].sort);
            if (met.point - eye).length() >= far - BEFORE || sort == Some(VeilSort::Pane) {
                continue;
            }
            pay(met.owner, &mut left, f64::from(met.through));
        }
        // An opaque target that turns this point away shows another face.
        if touch.veil.is_none() && steep > 0.0 {
            pay(touch.owner, &mut left, 0.0);
        }
        passed += left;
    }
    if all <= 0.0 {
        return Obstruction { passes: 0.0, taken: Vec::new() };
    }
    let told = |(owner, toll): (u32, Toll)| Taken {
        thing: night.names[owner as usize].clone(),
        share: toll.takes / all,
        opaque: toll.takes / toll.meets.max(f64::MIN_POSITIVE),
    };
    let mut taken: Vec<Taken> = tolls.into_iter().map(told).filter(|taken| taken.share > LEAST_SHARE).collect();
    taken.sort_by(|a, b| b.share.total_cmp(&a.share));
    Obstruction { passes: passed / all, taken }
}
