//! The least difference in luminance that shows a small thing on its ground (W. Adrian, "Visibility of targets: model for
//! calculation", Lighting Research & Technology 21, 1989, 181; the basis of the small-target visibility of ANSI/IES RP-8 and
//! of CIE 145).

use super::DARKEST;

/// Whether a thing is brighter or darker than its ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Polarity {
    /// Brighter.
    Brighter,
    /// Darker; less of a difference is enough.
    Darker,
}

/// What is asked of an eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Task {
    /// Diameter of the thing, minutes of arc.
    pub arcmin: f64,
    /// Brighter or darker than its ground.
    pub polarity: Polarity,
    /// Age of who looks, years; none for the eyes of the laboratory, about 23 years old.
    pub age: Option<f64>,
    /// How long it is shown, s; none for as long as somebody wishes to look.
    pub seconds: Option<f64>,
    /// Factor for how surely it is to be seen: 2.6 for 99.9 %, 1 for one time in two (the latter from memory).
    pub sureness: f64,
}

impl Task {
    /// A bright thing of this size, looked at for as long as wished, seen 99.9 times in a hundred.
    pub fn bright(arcmin: f64) -> Self {
        Self { arcmin, polarity: Polarity::Brighter, age: None, seconds: None, sureness: 2.6 }
    }
}

/// Where the pieces of the fit meet, cd/m².
const DAY: f64 = 0.6;
const NIGHT: f64 = 0.00418;

/// √φ and √L by day, over the luminance.
fn day(ground: f64) -> (f64, f64) {
    ((4.1925 * ground.powf(0.1556)).log10() + 0.1684 * ground.powf(0.5867), 0.05946 * ground.powf(0.466))
}

/// The same between day and night, over the logarithm of the luminance.
fn dusk(l: f64) -> (f64, f64) {
    (10_f64.powf(-0.072 + 0.3372 * l + 0.0866 * l * l), 10_f64.powf(-1.256 + 0.319 * l))
}

/// The same at night.
fn night(l: f64) -> (f64, f64) {
    (10_f64.powf(0.028 + 0.173 * l), 10_f64.powf(-0.891 + 0.5275 * l + 0.0227 * l * l))
}

/// The pieces miss each other by 1 % where they meet: none rises above what the next begins with, so that more light around
/// never makes a thing show better there.
fn lesser(piece: (f64, f64), next: (f64, f64)) -> (f64, f64) {
    (piece.0.min(next.0), piece.1.min(next.1))
}

/// Least difference in luminance that shows a thing on a ground of `ground` cd/m², cd/m²:
///
/// `ΔL = k (√φ/α + √L)² · F · (a + t)/t · A`
///
/// with φ and L fitted over the ground's luminance in three pieces, F for things darker than their ground, the time term
/// only where a time is given, and A by [`ageing`]. Of the two constants in circulation for the first piece (4.1925 and
/// 4.2841) the first, which makes ΔL 1.3 % less.
pub fn threshold(ground: f64, task: Task) -> f64 {
    let ground = ground.max(DARKEST);
    let l = ground.log10();
    let (flux, luminance) = if ground >= DAY {
        day(ground)
    } else if ground > NIGHT {
        lesser(dusk(l), day(DAY))
    } else {
        lesser(night(l), dusk(NIGHT.log10()))
    };
    let arcmin = task.arcmin.max(1e-3);
    let brighter = task.sureness * (flux / arcmin + luminance).powi(2);
    let polarity = match task.polarity {
        Polarity::Brighter => 1.0,
        Polarity::Darker => darker(ground, l, arcmin, brighter),
    };
    let time = task.seconds.map_or(1.0, |t| (delay(arcmin, l) + t) / t);
    brighter * polarity * time * task.age.map_or(1.0, ageing)
}

/// Factor on the threshold by age, years: `(age − 19)²/2160 + 0.99` up to 64, `(age − 56.6)²/116.3 + 1.43` from there to 75,
/// where the two pieces miss each other by 1 % never less than at 64. Younger eyes than 23 are taken as of 23, older ones
/// than 75 as of 75: the fit says nothing of them.
pub fn ageing(age: f64) -> f64 {
    let younger = |age: f64| (age - 19.0).powi(2) / 2160.0 + 0.99;
    let age = age.clamp(23.0, 75.0);
    if age <= 64.0 { younger(age) } else { ((age - 56.6).powi(2) / 116.3 + 1.43).max(younger(64.0)) }
}

/// Factor for a thing darker than its ground: `1 − m α^−β / (2.4 ΔL)` with `β = 0.6 L^−0.1488` and
/// `m = 10^−10^−(f (l + 1)² + 0.0245)`, f being 0.125 from 0.1 cd/m² and 0.075 below. Below 0.004 cd/m², of which the paper says
/// nothing, it stays as there; and it never takes more than nine tenths.
fn darker(ground: f64, l: f64, arcmin: f64, brighter: f64) -> f64 {
    let (ground, l) = if ground < 0.004 { (0.004, 0.004_f64.log10()) } else { (ground, l) };
    let f = if ground >= 0.1 { 0.125 } else { 0.075 };
    let m = 10_f64.powf(-(10_f64.powf(-(f * (l + 1.0).powi(2) + 0.0245))));
    let beta = 0.6 * ground.powf(-0.1488);
    (1.0 - m * arcmin.powf(-beta) / (2.4 * brighter)).clamp(0.1, 1.0)
}

/// The time that an eye asks for, s: `a = √(a_α² + a_L²) / 2.1`.
fn delay(arcmin: f64, l: f64) -> f64 {
    let a = arcmin.log10() + 0.523;
    let b = l + 6.0;
    let by_size = 0.36 - 0.0972 * a * a / (a * a - 2.513 * a + 2.7895);
    let by_light = 0.355 - 0.1217 * b * b / (b * b - 10.4 * b + 52.28);
    by_size.hypot(by_light) / 2.1
}
