//! What a viewing spot gets of a station: the figure, and the ground beside it.

use super::{Banded, Landing, band::Scale};
use crate::{
    light::{EyeRay, Night, luma},
    scene::Spot,
    units::border,
};
use glam::Vec3;
use rayon::prelude::*;
use serde::Serialize;

/// Points of the figure and of the ground that an eye looks at.
const FIGURE_POINTS: usize = 120;
const GROUND_POINTS: usize = 48;

/// What one viewing spot sees of one station.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SpotReading {
    /// Name of the spot.
    pub spot: String,
    /// Distance from the eye to the middle of the figure, m; `None` where nothing of the figure lands on the target.
    #[serde(serialize_with = "border::lengths")]
    pub distance_m: Option<f64>,
    /// Share of the figure that can be seen from there.
    #[serde(serialize_with = "border::light")]
    pub in_sight: f64,
    /// Brightest point of the figure, cd/m².
    pub peak: Banded,
    /// Mean over the figure, cd/m².
    pub mean: Banded,
    /// The ground beside it: grey box, other light on the cloth, what shows through, cd/m².
    pub ground: Banded,
    /// Mean of the figure over the ground beside it; `None` where no figure is in sight, or nothing beside it gives light.
    pub figure_to_ground: Option<Banded>,
}

/// The eye of a spot.
pub fn eye(spot: &Spot) -> Vec3 {
    spot.at.vec3() + Vec3::Y * spot.eye.f32()
}

/// Looks at the figure and its ground from a spot. `scale` is what is not known of the station's own light there.
pub fn look(night: &Night, station: u32, landings: &[Landing], spot: &Spot, scale: Scale) -> SpotReading {
    let eye = eye(spot);
    let on_target = |l: &&Landing| l.target.is_some();
    let mut figure: Vec<&Landing> = landings.iter().filter(on_target).filter(|l| l.figure).collect();
    figure.sort_by(|a, b| b.content.total_cmp(&a.content).then(a.uv[1].total_cmp(&b.uv[1])));
    let near = surround(&figure);
    let ground: Vec<&Landing> = landings.iter().filter(on_target).filter(|l| !l.figure && near(l)).collect();
    let figure = thinned(&figure, FIGURE_POINTS);
    let ground = thinned(&ground, GROUND_POINTS);
    let seen = |points: &[&Landing]| -> Vec<(f64, f64)> {
        points.par_iter().filter_map(|l| luminance(night, station, eye, l)).collect()
    };
    let (lit, dark) = (seen(&figure), seen(&ground));
    let mean = |values: &[(f64, f64)]| {
        let n = values.len().max(1) as f64;
        let (own, rest) = values.iter().fold((0.0, 0.0), |(a, b), v| (a + v.0, b + v.1));
        Banded::of(own / n, rest / n, scale)
    };
    let peak = lit.iter().copied().max_by(|a, b| (a.0 + a.1).total_cmp(&(b.0 + b.1))).unwrap_or_default();
    let (figure_mean, ground_mean) = (mean(&lit), mean(&dark));
    let middle = figure.iter().filter_map(|l| l.target).map(|t| t.point).sum::<Vec3>() / figure.len().max(1) as f32;
    let distance_m = (!figure.is_empty()).then(|| f64::from((middle - eye).length()));
    let in_sight = !lit.is_empty();
    SpotReading {
        spot: spot.name.0.clone(),
        distance_m,
        in_sight: lit.len() as f64 / figure.len().max(1) as f64,
        peak: Banded::of(peak.0, peak.1, scale),
        mean: figure_mean,
        ground: ground_mean,
        figure_to_ground: Banded::over(figure_mean, ground_mean).filter(|_| in_sight),
    }
}

/// Luminance of a landing as seen from an eye: by the station itself, and by everything else. `None` where something
/// opaque stands between.
fn luminance(night: &Night, station: u32, eye: Vec3, landing: &Landing) -> Option<(f64, f64)> {
    let touch = landing.target?;
    let way = touch.point - eye;
    let along = way.normalize_or_zero();
    let side = if touch.normal.dot(along) > 0.0 { -touch.normal } else { touch.normal };
    let solid = touch.veil.is_none();
    // An opaque target turned away from the eye shows it another face.
    if solid && touch.normal.dot(along) > 0.0 {
        return None;
    }
    let blocked = night.blocked(crate::geometry::Sight::between(eye, touch.point + 4e-3 * side));
    if blocked {
        return None;
    }
    let ray = EyeRay { from: eye, along, width: 0.0 };
    let own = f64::from(luma(night.luminance_of(ray, station)));
    let all = f64::from(luma(night.luminance(ray)));
    Some((own, (all - own).max(0.0)))
}

/// Whether a point of the raster lies beside the figure: within its box and a sixth more on each side.
fn surround(figure: &[&Landing]) -> impl Fn(&&Landing) -> bool + use<> {
    let mut span = [[f32::MAX, f32::MIN]; 2];
    for landing in figure {
        for (axis, reach) in span.iter_mut().enumerate() {
            *reach = [reach[0].min(landing.uv[axis]), reach[1].max(landing.uv[axis])];
        }
    }
    move |landing| {
        span.iter().zip(landing.uv).all(|([low, high], at)| {
            let margin = (high - low) / 6.0 + 0.02;
            at >= low - margin && at <= high + margin
        })
    }
}

/// At most `most` of a list, evenly taken; the first is always among them.
fn thinned<'a>(list: &[&'a Landing], most: usize) -> Vec<&'a Landing> {
    let step = (list.len() as f64 / most as f64).max(1.0);
    (0..list.len().min(most)).filter_map(|i| list.get((i as f64 * step) as usize).copied()).collect()
}
