//! What the light lands on that does not stay on the target.

use super::{
    Landing, Landings, Touch,
    landing::{LEAST_THROUGH, fineness, leave},
    meant::Meant,
};
use crate::{
    geometry::Sight,
    light::{Beam, Night, luma},
    units::border,
};
use rayon::prelude::*;
use serde::Serialize;
use std::{collections::BTreeMap, f64::consts::PI};

/// A smaller share of a raster's light is not told.
const LEAST_SHARE: f64 = 1e-4;

/// What light lands on that meets nothing: it leaves the yard, upwards or past the edge of its ground.
const OUT: &str = "out of the yard";

/// Light that does not stay on a target, or does not get there: what it lands on.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Beyond {
    /// Name of the thing; "out of the yard" for light that meets nothing, whether upwards or
    /// not.
    pub thing: String,
    /// Index of that name; `None` for light that leaves the yard, whatever a thing in it is called.
    #[serde(skip)]
    pub owner: Option<u32>,
    /// Share of the whole raster's light, when it is white, that arrives there; of what is see-through, that it takes.
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

/// Light gathered by what it lands on, and whether that is the edge of a target.
#[derive(Default)]
pub(super) struct Gathered(BTreeMap<(Option<u32>, bool), Beyond>);

impl Gathered {
    /// Takes a share of the raster's light that lands with `lx` on a thing, or on the `edge` of a target, or leaves the yard.
    pub(super) fn land(&mut self, night: &Night, (on, edge): (Option<Touch>, bool), share: f64, lx: f64) {
        let owner = on.map(|touch| touch.owner);
        let entry = self.0.entry((owner, edge)).or_insert_with(|| {
            let name = owner.map_or(OUT, |owner| night.names[owner as usize].as_str());
            let thing = if edge { format!("edge of {name}") } else { name.to_owned() };
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

/// What takes of a ray's light, or nothing where it leaves the yard; the share of the ray's light that it takes; and the lux that it has
/// there.
type Taken = (Option<Touch>, f32, f32);

/// What of a raster's [white](Landings::white) light does not stay on the targets lands on.
pub(super) fn beyond(night: &Night, beam: &Beam, targets: &[u32], landings: &[Landing]) -> Vec<Beyond> {
    let mut gathered = Gathered::default();
    let white = landings.iter().map(|landing| f64::from(landing.white)).sum::<f64>().max(1e-12);
    let meant = Meant::of(night, beam, targets);
    let ways: Vec<&Beam> = night.beams.iter().filter(|one| one.station == beam.station).collect();
    let taken: Vec<Vec<Taken>> = landings.par_iter().map(|landing| follow(night, (beam, &ways), landing)).collect();
    // Added up in one order, so that the same yard has the same numbers.
    for (landing, taken) in landings.iter().zip(taken) {
        for (on, share, lx) in taken {
            // What comes past a mirror may land anywhere on a target.
            let on_target = on.filter(|touch| !landing.astray && targets.contains(&touch.owner));
            if !on_target.is_some_and(|touch| meant.takes(&touch)) {
                let share = f64::from(landing.white) * f64::from(share) / white;
                gathered.land(night, (on, on_target.is_some()), share, f64::from(lx));
            }
        }
    }
    gathered.list()
}

/// Follows a ray of the raster from the lens by way of its mirrors: all that takes of its light but glass.
fn follow(night: &Night, (beam, ways): (&Beam, &[&Beam]), landing: &Landing) -> Vec<Taken> {
    let is_veil = |touch: Touch| touch.veil.is_some();
    if beam.relays.is_empty() && landing.arrives == 1.0 && !landing.beyond.is_some_and(is_veil) {
        // Nothing but its target and glass is see-through: where it ends is known.
        let lx = landing.beyond.map_or(0.0, |touch| landing.left * lit(beam, &touch));
        let opaque = landing.target.is_some_and(|touch| touch.through == 0.0);
        return if opaque { Vec::new() } else { vec![(landing.beyond, landing.left, lx)] };
    }
    let last = landing.sent_by(night, beam);
    let mut list = Vec::new();
    let mut through = 1.0;
    // They stand in the order of their mirrors.
    let ways = &ways[..=last.relays.len()];
    for (at, way) in ways.iter().enumerate() {
        let Some((from, along)) = leave(night, way, landing.uv) else { return list };
        let mirror = ways.get(at + 1).and_then(|next| next.relays.first()).map(|relay| relay.veil);
        // What its mirrors have left.
        let left = way.power / ways[0].power;
        let mut met = false;
        for touch in night.touches(Sight::endless(from, along)) {
            met = touch.veil.is_some() && touch.veil == mirror;
            if met {
                break;
            }
            if !touch.is_pane(night) {
                list.push((Some(touch), left * through * (1.0 - touch.through), through * lit(way, &touch)));
            }
            through *= touch.through;
            if through < LEAST_THROUGH {
                return list;
            }
        }
        if !met {
            list.push((None, left * through, 0.0));
            return list;
        }
    }
    list
}

/// What a ray's picture gives where it meets something, were nothing before that, lx.
fn lit(beam: &Beam, touch: &Touch) -> f32 {
    let fineness = fineness(beam, beam.depth(touch.point));
    beam.square(touch.point, fineness).map_or(0.0, |(square, toward)| luma(square) * touch.normal.dot(toward).max(0.0))
}
