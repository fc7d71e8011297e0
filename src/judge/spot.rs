//! What a viewing spot gets of a station: the figure, and the ground beside it.

use super::{
    Banded, Landing, Taken,
    lattice::RASTER,
    obstruction::Obstruction,
    sight::{Limits, Part, Sight, Sighting, Weights},
};
use crate::{light::luma, scene::Spot, units::border};
use glam::Vec3;
use serde::Serialize;

/// What one viewing spot sees of one station.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SpotReading {
    /// Name of the spot.
    pub spot: String,
    /// Distance from the eye to the middle of the figure, m; `None` where nothing of the figure lands on the target.
    #[serde(serialize_with = "border::lengths")]
    pub distance_m: Option<f64>,
    /// Share of the figure's light that comes there past all that stands in the way.
    #[serde(serialize_with = "border::light")]
    pub in_sight: f64,
    /// What takes the rest, the most first.
    pub hidden_by: Vec<Taken>,
    /// Brightest point of the figure, cd/m².
    pub peak: Banded,
    /// Mean over the figure, cd/m².
    pub mean: Banded,
    /// The ground beside it: grey box, other light on the cloth, what shows through, cd/m².
    pub ground: Banded,
    /// Mean of the figure over the ground beside it; `None` where no figure is in sight, or nothing beside it gives light.
    pub figure_to_ground: Option<Banded>,
    /// What an eye there makes of it; `None` where nothing of the figure is in sight.
    pub sight: Option<Sight>,
}

/// The eye of a spot.
pub fn eye(spot: &Spot) -> Vec3 {
    spot.at.vec3() + Vec3::Y * spot.eye.f32()
}

/// What a sighting comes to as the night stands, past what is in the way.
pub(super) fn read(spot: &Spot, sighting: &Sighting, way: Obstruction, limits: &Limits) -> SpotReading {
    let sight = sighting.under(&Weights::default(), limits);
    let seen = |pick: fn(&Sight) -> Banded| sight.as_ref().map_or_else(Banded::default, pick);
    let (mean, ground) = (seen(|s| s.mean), seen(|s| s.ground));
    SpotReading {
        spot: spot.name.0.clone(),
        distance_m: sighting.distance(),
        in_sight: way.passes,
        hidden_by: way.taken,
        peak: seen(|s| s.peak),
        mean,
        ground,
        figure_to_ground: Banded::over(mean, ground).filter(|_| sight.is_some()),
        sight,
    }
}

/// Cells of the figure, brightest first, and of the ground beside it, on the target, and what of the ground is looked at. Whole cells next
/// to the figure's have some of its light, so they are ground only where there are no others, by their middles; where the figure has
/// something of every cell, what it leaves of them is ground.
pub(super) fn looked_at(landings: &[Landing]) -> (Vec<&Landing>, Vec<&Landing>, Part) {
    let on_target = |l: &&Landing| l.target.is_some();
    let mut figure: Vec<&Landing> = landings.iter().filter(on_target).filter(|l| l.figure.is_some()).collect();
    let light = |landing: &Landing| landing.figure.map_or(0.0, |drawn| luma(drawn.light));
    figure.sort_by(|a, b| light(b).total_cmp(&light(a)).then(a.uv[1].total_cmp(&b.uv[1])));
    let near = surround(&figure);
    let touches = next_to(&figure);
    let beside = |l: &&Landing| near(l.uv) && l.figure.is_none_or(|drawn| drawn.share < 1.0 && drawn.beside.is_some());
    let ground: Vec<&Landing> = landings.iter().filter(on_target).filter(beside).collect();
    let apart: Vec<&Landing> = ground.iter().copied().filter(|l| !touches(l.uv)).collect();
    if !apart.is_empty() {
        return (figure, apart, Part::Ground);
    }
    let without: Vec<&Landing> = ground.iter().copied().filter(|l| l.figure.is_none()).collect();
    (figure, if without.is_empty() { ground } else { without }, Part::Close)
}

/// Whether a point of the raster lies in a cell of the figure or next to one, aslant too.
fn next_to(figure: &[&Landing]) -> impl Fn([f32; 2]) -> bool + use<> {
    let (columns, rows) = RASTER;
    let cell = move |uv: [f32; 2]| {
        let at = |axis: f32, count: usize| ((axis * count as f32) as usize).min(count - 1);
        (at(uv[0], columns), at(uv[1], rows))
    };
    let mut near = vec![false; columns * rows];
    for landing in figure {
        let (x, y) = cell(landing.uv);
        for row in y.saturating_sub(1)..=(y + 1).min(rows - 1) {
            near[row * columns + x.saturating_sub(1)..=row * columns + (x + 1).min(columns - 1)].fill(true);
        }
    }
    move |uv| {
        let (x, y) = cell(uv);
        near[y * columns + x]
    }
}

/// Whether a point of the raster lies beside the figure: within its box and a sixth more on each side.
pub(super) fn surround(figure: &[&Landing]) -> impl Fn([f32; 2]) -> bool + use<> {
    let mut span = [[f32::MAX, f32::MIN]; 2];
    for landing in figure {
        for (axis, reach) in span.iter_mut().enumerate() {
            *reach = [reach[0].min(landing.uv[axis]), reach[1].max(landing.uv[axis])];
        }
    }
    move |uv| {
        span.iter().zip(uv).all(|([low, high], at)| {
            let margin = (high - low) / 6.0 + 0.02;
            at >= low - margin && at <= high + margin
        })
    }
}

/// At most `most` of a list, evenly taken; the first is always among them.
pub(super) fn thinned<'a>(list: &[&'a Landing], most: usize) -> Vec<&'a Landing> {
    let step = (list.len() as f64 / most as f64).max(1.0);
    (0..list.len().min(most)).filter_map(|i| list.get((i as f64 * step) as usize).copied()).collect()
}
