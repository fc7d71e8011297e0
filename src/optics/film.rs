//! Rear-projection film.

use std::cmp::Ordering;
use std::f64::consts::{LN_2, PI};
use std::fmt;

use super::energy::{SLACK, share};
use super::{Curve, EnergyError, Rgb, Sheet};

/// Samples of [`Film::gain`].
pub const GAIN_STEPS: usize = 256;

/// Points per step of the gain table in integrals.
const FINE: usize = 8;

/// A film that is lit from behind and scatters light about its way on.
///
/// Luminance `L = G(β) κ(θi) E / π` for light of illuminance `E` that arrives at the angle `θi`, `β` being the bend
/// between its way in and the way out to the eye.
#[derive(Clone, Debug, PartialEq)]
pub struct Film {
    /// Gain `G`, [`GAIN_STEPS`] samples equally spaced over `s = sin(β/2)` = 0…1. With unit vectors `a` (light's way
    /// on) and `b` (towards the eye) `s = |a − b| / 2`, which needs no arc cosine and is sharp where β is small.
    pub gain: Vec<f32>,
    /// κ(θi) = τ_nd(θi) / [(1/π) ∫ G cos θo dωo]; 1 at normal incidence.
    pub kappa: Curve,
    /// ρ and τ_nn of the film, and the share τ_nd that it scatters through, for light that comes from everywhere.
    pub sheet: Sheet,
}

/// Why a film is refused.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FilmError {
    /// A reflected or straight share is out of range.
    Share(EnergyError),
    /// A gain is negative, not a number, or 0 everywhere.
    Gain(f32),
    /// The half-gain angle is not between 0° and 180°.
    HalfGain(f32),
    /// The angles of a gain table do not rise from entry to entry.
    Order(f32),
    /// Gain and its spread ask for more scattered light than reflection and straight light leave over.
    TooBright {
        /// Share that the gain, over all directions, scatters through at normal incidence.
        needs: f32,
        /// Share that is left, 1 − ρ − τ_nn, in the worst channel.
        left: f32,
    },
}

impl fmt::Display for FilmError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Share(error) => error.fmt(f),
            Self::Gain(gain) => write!(f, "gain {gain} cannot be; it must be positive somewhere and negative nowhere"),
            Self::HalfGain(degrees) => write!(f, "half-gain angle {degrees}° must lie between 0° and 180°"),
            Self::Order(degrees) => write!(f, "the gain table does not rise in angle at {degrees}°"),
            Self::TooBright { needs, left } => write!(
                f,
                "peak gain and spread need {needs:.3} of the light scattered through, but only {left:.3} is left after \
                 reflection and straight light"
            ),
        }
    }
}

impl std::error::Error for FilmError {}

impl From<EnergyError> for FilmError {
    fn from(error: EnergyError) -> Self {
        Self::Share(error)
    }
}

impl Film {
    /// A film by the two numbers of its data sheet: peak gain, and the angle in degrees from straight on at which gain
    /// has fallen to half. Gain between is Gaussian in β: `G = peak · 2^−(β/β_half)²`.
    ///
    /// The two numbers fix the share that is scattered through. It is never rescaled: if that exceeds what `reflect`
    /// and `through` leave over, the film is refused.
    pub fn from_gain(peak: f32, half_gain_deg: f32, reflect: Rgb, through: Rgb) -> Result<Self, FilmError> {
        if !(half_gain_deg > 0.0 && half_gain_deg < 180.0) {
            return Err(FilmError::HalfGain(half_gain_deg));
        }
        let half = f64::from(half_gain_deg).to_radians();
        Self::from_law(|bend| f64::from(peak) * (-LN_2 * (bend / half).powi(2)).exp(), reflect, through)
    }

    /// A film by a table of (β in degrees, gain), rising in β; linear between entries, level beyond them.
    pub fn from_table(table: &[(f32, f32)], reflect: Rgb, through: Rgb) -> Result<Self, FilmError> {
        if let Some(pair) = table.windows(2).find(|pair| pair[0].0.partial_cmp(&pair[1].0) != Some(Ordering::Less)) {
            return Err(FilmError::Order(pair[1].0));
        }
        let (Some(first), Some(last)) = (table.first(), table.last()) else { return Err(FilmError::Gain(0.0)) };
        let law = |bend: f64| {
            let degrees = bend.to_degrees() as f32;
            let pair = table.windows(2).find(|pair| pair[0].0 <= degrees && degrees < pair[1].0);
            f64::from(match pair {
                Some(&[(a, low), (b, high)]) => low + (high - low) * (degrees - a) / (b - a),
                _ if degrees < first.0 => first.1,
                _ => last.1,
            })
        };
        Self::from_law(law, reflect, through)
    }

    fn from_law(law: impl Fn(f64) -> f64, reflect: Rgb, through: Rgb) -> Result<Self, FilmError> {
        let bend = |step: usize| 2.0 * (step as f64 / (GAIN_STEPS - 1) as f64).asin();
        let gain: Vec<f32> = (0..GAIN_STEPS).map(|step| law(bend(step)) as f32).collect();
        if let Some(&bad) = gain.iter().find(|gain| !(gain.is_finite() && **gain >= 0.0)) {
            return Err(FilmError::Gain(bad));
        }
        for channel in 0..3 {
            share("reflected", reflect[channel])?;
            share("passed straight", through[channel])?;
        }
        let needs = spread(&gain, 1.0);
        if needs <= 0.0 {
            return Err(FilmError::Gain(gain[0]));
        }
        let left = (Rgb::ONE - reflect - through).min_element();
        if needs as f32 > left + SLACK {
            return Err(FilmError::TooBright { needs: needs as f32, left });
        }
        let kappa = Curve::of(|cos| [needs / spread(&gain, cos); 3]);
        let level = Curve::constant;
        let sheet = Sheet::even(level(reflect), level(Rgb::splat(needs as f32)), level(through));
        Ok(Self { gain, kappa, sheet })
    }
}

/// A film's gain, by its table of at least two samples, at `s = sin(β/2)`, clamped to 0…1.
#[inline]
pub fn sample_gain(gain: &[f32], s: f32) -> f32 {
    let last = gain.len() - 1;
    let x = s.clamp(0.0, 1.0) * last as f32;
    let step = (x as usize).min(last - 1);
    gain[step] + (gain[step + 1] - gain[step]) * (x - step as f32)
}

/// `(1/π) ∫ G cos θo dωo` over the far hemisphere, for light that arrives at `cos` θi and gain as interpolated.
///
/// Summed in rings about the light's way on: a ring of bend β has solid angle `4s ds` per turn, and the part of it that
/// lies above the film integrates in closed form.
fn spread(gain: &[f32], cos: f64) -> f64 {
    let sin = (1.0 - cos * cos).max(0.0).sqrt();
    let ds = 1.0 / ((GAIN_STEPS - 1) * FINE) as f64;
    let rings = (0..(GAIN_STEPS - 1) * FINE).map(|k| {
        let s = (k as f64 + 0.5) * ds;
        let (step, part) = (k / FINE, ((k % FINE) as f64 + 0.5) / FINE as f64);
        let (low, high) = (f64::from(gain[step]), f64::from(gain[step + 1]));
        (low + (high - low) * part) * 4.0 * s * ring(cos * (1.0 - 2.0 * s * s), sin * 2.0 * s * (1.0 - s * s).sqrt())
    });
    rings.sum::<f64>() * ds / PI
}

/// `∫ max(0, a + b cos ψ) dψ` over a full turn, `b ≥ 0`.
fn ring(a: f64, b: f64) -> f64 {
    if a >= b {
        2.0 * PI * a
    } else if a <= -b {
        0.0
    } else {
        let edge = (-a / b).acos();
        2.0 * (a * edge + b * edge.sin())
    }
}
