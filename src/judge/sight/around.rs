//! All that is bright in sight of an eye, whoever's figure it looks at: it is looked for once, and held against each figure's own
//! targets and ground then.

use super::{
    bright::{Piece, bodies, met, windows},
    rival::{Patch, patches},
};
use crate::{judge::eye, light::Night, scene::Spot};
use glam::Vec3;
use rayon::prelude::*;
use std::sync::Arc;

/// Something bright, and what a ray to it meets before anything but glass and leaves.
#[derive(Clone, Copy, Debug)]
struct Bright {
    piece: Piece,
    met: Option<(u32, Vec3)>,
}

/// What is bright around an eye but sun and moon.
#[derive(Clone, Debug, Default)]
pub(in crate::judge) struct Around {
    /// Names of the night's sources.
    pub(super) names: Arc<[String]>,
    /// Bodies of lamps, which are seen before whatever they stand before, and lit windows.
    lamps: Vec<Bright>,
    /// What stations light.
    stations: Vec<Bright>,
}

impl Around {
    /// Around an eye; of the stations those alone that `counts` picks.
    pub fn of(night: &Night, at: Vec3, counts: impl Fn(u32) -> bool) -> Self {
        Self::anew(night, at, &names(night), &patches(night, counts))
    }

    /// Around each of some spots.
    pub fn each(night: &Night, spots: &[Spot]) -> Vec<Self> {
        let (names, patches) = (names(night), patches(night, |_| true));
        spots.par_iter().map(|spot| Self::anew(night, eye(spot), &names, &patches)).collect()
    }

    /// Around the same spots where the light of the stations that `changed` picks is another.
    pub fn after(before: &[&Self], night: &Night, spots: &[Spot], changed: impl Fn(u32) -> bool + Sync) -> Vec<Self> {
        let patches = patches(night, &changed);
        let again = |(before, spot): (&&Self, &Spot)| {
            let kept = before.stations.iter().filter(|bright| !changed(bright.piece.source)).copied();
            let stations = kept.chain(seen(night, eye(spot), &patches)).collect();
            Self { names: Arc::clone(&before.names), lamps: before.lamps.clone(), stations }
        };
        before.par_iter().zip(spots).map(again).collect()
    }

    fn anew(night: &Night, at: Vec3, names: &Arc<[String]>, patches: &[Patch]) -> Self {
        let bodies = bodies(night, at).into_iter().map(|piece| Bright { piece, met: None });
        let windows = windows(night, at).into_iter().map(|(piece, ray)| Bright { piece, met: met(night, &ray) });
        let (lamps, stations) = (bodies.chain(windows).collect(), seen(night, at, patches).collect());
        Self { names: Arc::clone(names), lamps, stations }
    }

    /// What of it is no part of a station's own picture: neither light on or through its targets, nor its own light; of what others
    /// light on these targets what lies off the figure's `own` ground.
    pub(super) fn beside(
        &self,
        station: u32,
        targets: &[u32],
        own: impl Fn(Vec3) -> bool,
    ) -> impl Iterator<Item = Piece> {
        let on = |bright: &Bright| bright.met.filter(|(owner, _)| targets.contains(owner));
        let lamps = self.lamps.iter().filter(move |bright| on(bright).is_none());
        let others = self.stations.iter().filter(move |bright| bright.piece.source != station);
        let others = others.filter(move |bright| on(bright).is_none_or(|(_, at)| !own(at)));
        lamps.chain(others).map(|bright| bright.piece)
    }
}

fn names(night: &Night) -> Arc<[String]> {
    night.sources.iter().map(|source| source.name().to_owned()).collect()
}

/// What an eye sees of some patches.
fn seen(night: &Night, at: Vec3, patches: &[Patch]) -> impl Iterator<Item = Bright> {
    let bright = move |patch: &Patch| {
        let (piece, ray) = patch.seen(night, at)?;
        Some(Bright { piece, met: met(night, &ray) })
    };
    patches.iter().filter_map(bright)
}
