//! What a viewing spot gets of a station: the figure, and the ground beside it.

use super::{
    Banded, Landings, RASTER, Taken,
    landings::Part,
    obstruction::Obstruction,
    sight::{Limits, Sight, Sighting, Weights},
};
use crate::{
    light::{cells, luma},
    scene::Spot,
    units::border,
};
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

/// What of the figure lands on a target, in order, its brightest first, and the ground beside it there, in order too: apart from the
/// figure's cells, where there is any, as light that strays from the figure falls next to it.
pub(super) fn looked_at(landings: &Landings) -> (Vec<&Part>, Vec<Part>) {
    let mut figure: Vec<&Part> = landings.figure_on_target().collect();
    figure.sort_by_key(|part| part.order());
    let brightest = (0..figure.len()).max_by(|a, b| luma(figure[*a].light).total_cmp(&luma(figure[*b].light)));
    if let Some(brightest) = brightest {
        figure[..=brightest].rotate_right(1);
    }
    let (near, touches) = (surround(&figure), next_to(&figure));
    let cell = |part: &Part| part.landing.cell as usize;
    let mut ground: Vec<Part> = landings.ground_on_target().filter(|part| near(cells::middle(cell(part)))).collect();
    if ground.iter().any(|part| !touches[cell(part)]) {
        ground.retain(|part| !touches[cell(part)]);
    }
    ground.sort_by_key(Part::order);
    (figure, ground)
}

/// For each cell whether the figure has something of it or of one next to it, aslant too.
fn next_to(figure: &[&Part]) -> Vec<bool> {
    let (columns, rows) = RASTER;
    let mut near = vec![false; columns * rows];
    for part in figure {
        let (x, y) = (part.landing.cell as usize % columns, part.landing.cell as usize / columns);
        for row in y.saturating_sub(1)..=(y + 1).min(rows - 1) {
            near[row * columns + x.saturating_sub(1)..=row * columns + (x + 1).min(columns - 1)].fill(true);
        }
    }
    near
}

/// Whether a point of the raster lies beside the figure: within the box of its cells and a sixth more on each side.
pub(super) fn surround(figure: &[&Part]) -> impl Fn([f32; 2]) -> bool + use<> {
    let mut span = [[f32::MAX, f32::MIN]; 2];
    for part in figure {
        let middle = cells::middle(part.landing.cell as usize);
        for (reach, at) in span.iter_mut().zip(middle) {
            *reach = [reach[0].min(at), reach[1].max(at)];
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
pub(super) fn thinned<T: Copy>(list: &[T], most: usize) -> Vec<T> {
    let step = (list.len() as f64 / most as f64).max(1.0);
    (0..list.len().min(most)).filter_map(|i| list.get((i as f64 * step) as usize).copied()).collect()
}
