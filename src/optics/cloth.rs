//! Cloth: voile, sheer, sheeting, drapery.

use super::curve::cosine;
use super::energy::balance;
use super::{Curve, EnergyError, Excess, Rgb, STEPS, Sheet};

/// A woven cloth, known by what it does to light that meets it square on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cloth {
    /// Share that goes straight on, τ_nn at normal incidence.
    pub through: Rgb,
    /// Share scattered to the far side, τ_nd at normal incidence.
    pub diffuse: Rgb,
    /// Share scattered back, ρ at normal incidence.
    pub reflect: Rgb,
}

impl Cloth {
    /// Tabulates the cloth by the off-normal laws for drapery of ASHRAE 1311-RP (Kotey, Wright & Collins 2009).
    ///
    /// Those laws are fits, and can ask for up to 2 % more light than arrives. There ρ and τ_nd are scaled together,
    /// and [`Sheet::scaled`] tells where and by how much.
    pub fn sheet(&self) -> Result<Sheet, EnergyError> {
        balance(self.reflect, self.diffuse, self.through)?;
        let at = |cos: f64| [0, 1, 2].map(|channel| self.laws(cos, channel));
        let reflect = Curve::of(|cos| at(cos).map(|shares| shares.kept(shares.reflect)));
        let diffuse = Curve::of(|cos| at(cos).map(|shares| shares.kept(shares.diffuse)));
        let through = Curve::of(|cos| at(cos).map(|shares| shares.through));
        let mut sheet = Sheet::even(reflect, diffuse, through);
        sheet.scaled = self.excess();
        Ok(sheet)
    }

    fn laws(&self, cos: f64, channel: usize) -> Shares {
        let [through, diffuse, reflect] =
            [self.through, self.diffuse, self.reflect].map(|share| f64::from(share[channel]));
        let straight = fall(through, cos);
        Shares {
            reflect: reflectance(reflect, through, cos),
            diffuse: (fall(through + diffuse, cos) - straight).max(0.0),
            through: straight,
        }
    }

    /// The worst sum that the laws alone ask for, where it is above what rounding explains.
    fn excess(&self) -> Option<Excess> {
        let mut worst = None;
        let mut limit = 1.0 + 1e-6;
        for step in 0..STEPS {
            let cos = cosine(step);
            for channel in 0..3 {
                let sum = self.laws(cos, channel).sum();
                if sum > limit {
                    limit = sum;
                    worst = Some(Excess { sum: sum as f32, cos: cos as f32 });
                }
            }
        }
        worst
    }
}

/// What the laws alone say for one angle and channel.
#[derive(Clone, Copy)]
struct Shares {
    reflect: f64,
    diffuse: f64,
    through: f64,
}

impl Shares {
    fn sum(&self) -> f64 {
        self.reflect + self.diffuse + self.through
    }

    /// A scattered share, scaled if the sum is above 1. What goes straight is the best known and stays.
    fn kept(&self, scattered: f64) -> f64 {
        let sum = self.sum();
        if sum > 1.0 { scattered * (1.0 - self.through) / (self.reflect + self.diffuse) } else { scattered }
    }
}

/// Transmittance at θ, straight or total alike: `τ(θ) = τ0 cos^b θ`, `b = max(−½ ln max(τ0, 0.01), 0.35)`.
fn fall(normal: f64, cos: f64) -> f64 {
    normal * cos.powf((-0.5 * normal.max(0.01).ln()).max(0.35))
}

/// Reflectance at θ: `ρ0 + (ρ90 − ρ0)(1 − cos^0.6 θ)`, `ρ90 = ρ0 + 0.7 (1 − ρ0) ρ_y^0.7`, with the yarn's own
/// reflectance `ρ_y = ρ0/(1 − τ_nn0)`.
fn reflectance(normal: f64, through: f64, cos: f64) -> f64 {
    // A cloth that is all hole has no yarn.
    let yarn = if through < 1.0 { (normal / (1.0 - through)).min(1.0) } else { 0.0 };
    let rise = (1.0 - normal) * 0.7 * yarn.powf(0.7);
    normal + rise * (1.0 - cos.powf(0.6))
}
