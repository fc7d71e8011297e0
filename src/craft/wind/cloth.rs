//! A hanging cloth in the wind.

use super::{Air, Beaufort, Drag, GRAVITY, Rules, pressure, solidity, speed};
use crate::{
    scene::{Band, Catalogue, Cloth, Yard},
    units::border,
};
use serde::Serialize;

/// What the worst tie takes over the mean of all: a gust comes to one corner first. Common practice, no source.
pub const UNEVEN: f64 = 2.0;
/// A breeze that a picture should hang still in, m/s: what leaves rustle in. Common practice, no source.
pub const STILL_AIR_M_S: f64 = 3.0;
/// How far from plumb a cloth may hang in it, degrees: a tenth of a picture's height is nine. Common practice, no source.
pub const PLUMB_DEG: f64 = 10.0;
/// Sag of a line that a cloth hangs from over its span: as tight as a hand draws it. Common practice, no source.
const SAG: f64 = 0.05;
/// What a stake of 30 cm holds in firm lawn along a guy at 45°, N; in wet or loose earth a third. Common practice, no source.
const STAKE_N: f64 = 150.0;
/// Weight of a fabric that nothing is said of, g/m²: a bed sheet's.
const SHEET_G_M2: f64 = 140.0;

/// What the gust does to a cloth.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClothWind {
    /// Its name.
    pub cloth: String,
    /// Its area as hung, m².
    #[serde(serialize_with = "border::light")]
    pub area_m2: f64,
    /// Share of it that is thread: least, typical, most.
    #[serde(serialize_with = "border::light")]
    pub solidity: [f64; 3],
    /// Pull on all of it square on, N: least, typical, most.
    #[serde(serialize_with = "border::light")]
    pub load_n: [f64; 3],
    /// Ties that it has.
    pub ties: u32,
    /// Pull on the worst of them, N, its share of the weight included.
    #[serde(serialize_with = "border::light")]
    pub tie_n: f64,
    /// Ties with which the worst holds; `None` where no number of them does.
    pub ties_needed: Option<u32>,
    /// Pull along a line that carries its top edge alone, N.
    #[serde(serialize_with = "border::light")]
    pub line_n: f64,
    /// Stakes for guys at 45° that hold all of the pull.
    pub stakes: u32,
    /// The gust in which the worst tie holds no more, m/s: it comes down before that.
    #[serde(serialize_with = "border::light")]
    pub down_m_s: f64,
    /// The mean wind that such a gust comes in.
    pub down_mean: Beaufort,
    /// Its own weight, kg, the hem included.
    #[serde(serialize_with = "border::light")]
    pub weight_kg: f64,
    /// How far from plumb it hangs, free at its foot, in a breeze of [`STILL_AIR_M_S`], degrees.
    #[serde(serialize_with = "border::light")]
    pub swing_deg: f64,
    /// Weight of a metre of hem that keeps that within [`PLUMB_DEG`], kg.
    #[serde(serialize_with = "border::light")]
    pub hem_needed_kg_m: f64,
}

impl ClothWind {
    /// Of a cloth in this air.
    pub fn of(yard: &Yard, catalogue: &Catalogue, cloth: &Cloth, air: Air, rules: Rules) -> Self {
        let bears = rules.tie_bears_n;
        let (width, height) = (cloth.width.0.m, cloth.height.0.m);
        let area_m2 = width * height;
        let Band { low, typical, high } = solidity(yard, catalogue, cloth);
        let [drag_low, drag, drag_high] = [Drag::of(low).low, Drag::of(typical).typical, Drag::of(high).high];
        let load = |drag: f64| drag * air.pressure_pa() * area_m2;
        let cloth_kg = weight_kg_m2(yard, catalogue, cloth) * area_m2 * cloth.fullness.0;
        let weight_kg = cloth_kg + cloth.hem_kg_m * width;
        let ties = cloth.ties.0;
        let dead_n = weight_kg * GRAVITY;
        let worst = |ties: u32, load: f64| UNEVEN / f64::from(ties) * load.hypot(dead_n);
        let load_n = load(drag);
        // The pull at which the worst tie holds just what it can, its weight hanging on it.
        let whole = bears * f64::from(ties) / UNEVEN;
        let most = (whole * whole - dead_n * dead_n).max(0.0).sqrt();
        let down_m_s = speed(air.density, most / (drag * area_m2).max(f64::MIN_POSITIVE));
        let needed = UNEVEN * load_n.hypot(dead_n) / bears;
        // An even load on a line that sags by a share of its span: along it L / (8 sag), across it L / 2 at each end.
        let line_n = load_n.hypot(dead_n) * (1.0 / (8.0 * SAG)).hypot(0.5);
        let breeze_n_m = drag * pressure(air.density, STILL_AIR_M_S) * height;
        let cloth_n_m = cloth_kg * GRAVITY / width;
        Self {
            cloth: cloth.name.0.clone(),
            area_m2,
            solidity: [low, typical, high],
            load_n: [load(drag_low), load_n, load(drag_high)],
            ties,
            tie_n: worst(ties, load_n),
            ties_needed: (needed <= f64::from(MOST_TIES)).then(|| (needed.ceil() as u32).max(2)),
            line_n,
            stakes: ((load_n * std::f64::consts::SQRT_2 / STAKE_N).ceil() as u32).max(2),
            down_m_s,
            down_mean: Beaufort::of_gust(down_m_s),
            weight_kg,
            swing_deg: swing_deg(breeze_n_m, cloth_n_m, cloth.hem_kg_m * GRAVITY),
            hem_needed_kg_m: hem_needed(breeze_n_m, cloth_n_m) / GRAVITY,
        }
    }
}

/// More ties than this nobody makes fast.
const MOST_TIES: u32 = 60;

/// Weight of a square metre of a cloth, flat, all layers together, kg.
pub fn weight_kg_m2(yard: &Yard, catalogue: &Catalogue, cloth: &Cloth) -> f64 {
    let fabric = |name: &str| yard.fabric(catalogue, name).and_then(|fabric| fabric.weight_g_m2);
    let layers = std::iter::once(&cloth.fabric).chain(&cloth.behind);
    let of_fabrics = || layers.map(|name| fabric(&name.0).map_or(SHEET_G_M2, |weight| weight.typical)).sum();
    cloth.weight_g_m2.map_or_else(of_fabrics, |weight| weight.0) / 1000.0
}

/// Steps along the height of a cloth.
const STEPS: u32 = 200;

/// How far the chord of a cloth that hangs free at its foot leans from plumb, degrees. All three are N for each metre of its
/// width: the wind's pull on its whole height, its own weight, and that of its hem.
///
/// So far up from its foot as `s` of its height a slack cloth lies along the sum of what hangs below:
/// `tan φ = F s / (W s + H)`; without a hem that is a straight sheet at `tan φ = F / W`.
pub fn swing_deg(pull: f64, weight: f64, hem: f64) -> f64 {
    let (mut across, mut down) = (0.0, 0.0);
    for step in 0..STEPS {
        let share = (f64::from(step) + 0.5) / f64::from(STEPS);
        let (x, y) = (pull * share, weight * share + hem);
        let along = x.hypot(y);
        if along > 0.0 {
            across += x / along;
            down += y / along;
        }
    }
    across.atan2(down).to_degrees()
}

/// The hem, N a metre, with which a cloth leans by [`PLUMB_DEG`]; 0 where its own weight is enough.
fn hem_needed(pull: f64, weight: f64) -> f64 {
    if swing_deg(pull, weight, 0.0) <= PLUMB_DEG {
        return 0.0;
    }
    // So much hem would be enough were there no cloth.
    let (mut least, mut most) = (0.0, pull / PLUMB_DEG.to_radians().tan());
    for _ in 0..60 {
        let middle = 0.5 * (least + most);
        if swing_deg(pull, weight, middle) > PLUMB_DEG { least = middle } else { most = middle }
    }
    most
}
