//! What the light lands on that does not stay on the target.

use super::{
    Landing, Landings, Touch,
    landing::{fineness, leave, thrown_by},
};
use crate::{
    geometry::Sight,
    light::{Beam, Night, luma},
    units::border,
};
use serde::Serialize;
use std::{collections::BTreeMap, f64::consts::PI};

/// A smaller share of a raster's light is not told.
const LEAST_SHARE: f64 = 1e-4;

/// What light lands on that meets nothing: it leaves the yard, upwards or past the edge of its ground.
const OUT: &str = "out of the yard";

/// Light that does not stay on the target: what it lands on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Beyond {
    /// Name of the thing; "out of the yard" for light that meets nothing, whether upwards or
    /// not.
    pub thing: String,
    /// Index of that name; `None` for light that leaves the yard, whatever a thing in it is called.
    #[serde(skip)]
    pub owner: Option<u32>,
    /// Share of the whole raster's light, when it is white, that arrives there.
    #[serde(serialize_with = "border::light")]
    pub share: f64,
    /// Greatest illuminance by this station there, lx.
    #[serde(serialize_with = "border::light")]
    pub peak_lx: f64,
    /// Greatest luminance by this station there, cd/m²; `None` out of the yard and for anything see-through or mirroring, which
    /// has no one luminance.
    #[serde(serialize_with = "border::light")]
    pub peak_luminance: Option<f64>,
}

/// Light gathered by what it lands on.
#[derive(Default)]
pub(super) struct Gathered(BTreeMap<Option<u32>, Beyond>);

impl Gathered {
    /// Takes a share of the raster's light that lands with `lx` on a thing, or leaves the yard.
    pub(super) fn land(&mut self, night: &Night, on: Option<Touch>, share: f64, lx: f64) {
        let owner = on.map(|touch| touch.owner);
        let entry = self.0.entry(owner).or_insert_with(|| {
            let thing = owner.map_or(OUT, |owner| night.names[owner as usize].as_str()).to_owned();
            Beyond { thing, owner, share: 0.0, peak_lx: 0.0, peak_luminance: None }
        });
        entry.share += share;
        if let Some(touch) = on {
            entry.peak_lx = entry.peak_lx.max(lx);
            if touch.veil.is_none() {
                let luminance = lx * f64::from(luma(touch.reflectance)) / PI;
                entry.peak_luminance = Some(entry.peak_luminance.map_or(luminance, |most| most.max(luminance)));
            }
        }
    }

    /// Largest share first.
    pub(super) fn list(self) -> Vec<Beyond> {
        let mut list: Vec<Beyond> = self.0.into_values().filter(|b| b.share > LEAST_SHARE).collect();
        // Of what gets as much, the order is that of the names.
        list.sort_by(|a, b| b.share.total_cmp(&a.share).then_with(|| a.thing.cmp(&b.thing)));
        list
    }
}

/// All of a white raster.
pub(super) fn whole(landings: &Landings) -> f64 {
    landings.cells.iter().map(|l| f64::from(l.white)).sum::<f64>().max(1e-12)
}

/// What of a raster's [white](Landings::white) light does not stay on the targets lands on.
pub(super) fn beyond(night: &Night, beam: &Beam, landings: &[Landing]) -> Vec<Beyond> {
    let mut gathered = Gathered::default();
    let white = landings.iter().map(|landing| f64::from(landing.white)).sum::<f64>().max(1e-12);
    for landing in landings {
        if landing.arrives < 1.0 {
            before(night, beam, landing, |touch, taken, lx| {
                gathered.land(night, Some(touch), f64::from(landing.white) * taken / white, lx);
            });
        }
        if landing.target.is_some_and(|t| t.through == 0.0) {
            continue;
        }
        let beam = thrown_by(night, beam, landing.uv);
        let lx = landing.beyond.map_or(0.0, |touch| f64::from(lit(beam, &touch) * landing.left));
        let share = f64::from(landing.white) * f64::from(landing.left) / white;
        gathered.land(night, landing.beyond, share, lx);
    }
    let mut list = gathered.list();
    let on_target = |owner: u32| landings.iter().any(|l| l.target.is_some_and(|touch| touch.owner == owner));
    for edge in list.iter_mut().filter(|beyond| beyond.owner.is_some_and(on_target)) {
        edge.thing = format!("edge of {}", edge.thing);
    }
    list
}

/// What a ray's picture gives where it meets something, were nothing before that, lx.
fn lit(beam: &Beam, touch: &Touch) -> f32 {
    let fineness = fineness(beam, beam.depth(touch.point));
    beam.square(touch.point, fineness).map_or(0.0, |(square, toward)| luma(square) * touch.normal.dot(toward).max(0.0))
}

/// Shows what takes some of a ray's light before its target: the share that each takes, and its lux there.
fn before(night: &Night, beam: &Beam, landing: &Landing, mut take: impl FnMut(Touch, f64, f64)) {
    let (Some(target), Some((from, along))) = (landing.target, leave(night, beam, landing.uv)) else { return };
    let mut through = 1.0;
    for touch in night.touches(Sight::endless(from, along)) {
        if touch == target {
            break;
        }
        if !touch.is_pane(night) {
            take(touch, f64::from(through * (1.0 - touch.through)), f64::from(lit(beam, &touch) * through));
        }
        through *= touch.through;
    }
}
