//! A law over the angle of incidence, as a table.

/// A colour: linear RGB with Rec. 709 primaries; here a share of light, 0 to 1, unless a text says otherwise.
pub type Rgb = glam::Vec3;

/// Samples of a [`Curve`], equally spaced over cos θ = 0…1, both ends included.
pub const STEPS: usize = 128;

/// One law over the angle θ from the surface normal, sampled over cos θ and read by linear interpolation.
///
/// Even steps in cos θ spend the samples where the light is: illuminance grows with cos θ.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The [`STEPS`] samples, from grazing (cos θ = 0) to normal incidence (cos θ = 1).
    pub at: Vec<Rgb>,
}

impl Curve {
    /// Tabulates a law given as a function of cos θ that answers per colour channel.
    pub fn of(law: impl Fn(f64) -> [f64; 3]) -> Self {
        Self::from_samples(|step| law(cosine(step)))
    }

    /// Tabulates values that are known sample by sample.
    pub(super) fn from_samples(sample: impl Fn(usize) -> [f64; 3]) -> Self {
        let at = (0..STEPS).map(|step| sample(step).map(|v| v as f32).into()).collect();
        Self { at }
    }

    /// The same value at every angle.
    pub fn constant(value: Rgb) -> Self {
        Self { at: vec![value; STEPS] }
    }

    /// The law at cos θ, clamped to 0…1.
    pub fn sample(&self, cos: f32) -> Rgb {
        let x = cos.clamp(0.0, 1.0) * (STEPS - 1) as f32;
        let step = (x as usize).min(STEPS - 2);
        self.at[step].lerp(self.at[step + 1], x - step as f32)
    }

    /// One channel of the law at cos θ, interpolated in `f64`.
    pub(super) fn channel(&self, cos: f64, channel: usize) -> f64 {
        let x = cos.clamp(0.0, 1.0) * (STEPS - 1) as f64;
        let step = (x as usize).min(STEPS - 2);
        let (a, b) = (self.value(step, channel), self.value(step + 1, channel));
        a + (b - a) * (x - step as f64)
    }

    /// One channel of one sample.
    pub(super) fn value(&self, step: usize, channel: usize) -> f64 {
        f64::from(self.at[step][channel])
    }

    /// The hemispherical mean `2∫ f(θ) cos θ sin θ dθ`, exact for the interpolated table: what the law makes of light
    /// that comes evenly from everywhere.
    pub fn mean(&self) -> Rgb {
        self.mean_channels().map(|v| v as f32).into()
    }

    /// [`Self::mean`] before rounding.
    pub(super) fn mean_channels(&self) -> [f64; 3] {
        [0, 1, 2].map(|c| (0..STEPS).map(|step| weight(step) * self.value(step, c)).sum())
    }

    /// The law over its own mean, so that the mean of the result is 1; 0 where the mean is 0.
    pub(super) fn shape(&self) -> Self {
        let mean = self.mean_channels();
        Self::from_samples(|step| [0, 1, 2].map(|c| if mean[c] > 0.0 { self.value(step, c) / mean[c] } else { 0.0 }))
    }
}

/// cos θ of a sample.
pub(super) fn cosine(step: usize) -> f64 {
    step as f64 / (STEPS - 1) as f64
}

/// The share of a sample in the hemispherical mean: `2∫ hat(x) x dx`, `hat` being the sample's own linear ramp.
///
/// The weights add up to 1. Energy and reciprocity hold exactly for anything composed with them sample by sample.
pub(super) fn weight(step: usize) -> f64 {
    let width = 1.0 / (STEPS - 1) as f64;
    if step == 0 {
        width * width / 3.0
    } else if step == STEPS - 1 {
        width - width * width / 3.0
    } else {
        2.0 * width * cosine(step)
    }
}
