//! A fabric as light meets it.

use super::curve::STEPS;
use super::{Curve, Rgb};

/// One face of a fabric: what happens to light that arrives on it, and with which shape scattered light leaves it.
#[derive(Clone, Debug, PartialEq)]
pub struct Face {
    /// Share ρ(θ) thrown back, scattered.
    pub reflect: Curve,
    /// Share τ_nd(θ) that leaves the *other* face, scattered (normal-diffuse in the words of EN 14500).
    pub diffuse: Curve,
    /// ρ(θ)/ρ̄: shape over the leaving angle of what this face throws back; mean 1, or 0 where ρ̄ is 0.
    pub reflect_shape: Curve,
    /// τ_nd(θ)/τ̄_nd: shape over the leaving angle of light that came in by the other face and leaves by *this* one.
    pub exit_shape: Curve,
}

impl Face {
    fn new(reflect: Curve, diffuse: Curve) -> Self {
        let (reflect_shape, exit_shape) = (reflect.shape(), diffuse.shape());
        Self { reflect, diffuse, reflect_shape, exit_shape }
    }
}

/// Where a published formula alone asked for more light than arrives, before reflection and scattering were scaled.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Excess {
    /// The worst sum of reflected, scattered and straight shares; above 1.
    pub sum: f32,
    /// cos θ at which it stood.
    pub cos: f32,
}

/// A fabric, or a stack of fabrics that hang together: two faces and the straight way through.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Front and back.
    pub faces: [Face; 2],
    /// Share τ_nn(θ) that goes straight on (normal-normal); the same from both sides, by reciprocity.
    pub through: Curve,
    /// Set if reflection and scattering had to be scaled together to keep energy; holds the worst place.
    pub scaled: Option<Excess>,
}

impl Sheet {
    /// A fabric from its laws: thrown back and scattered through per face of arrival, and passed straight.
    ///
    /// Reciprocity asks for the same hemispherical mean of the two diffuse laws; the caller sees to that and to energy
    /// (see [`Self::energy`]).
    pub fn new(
        front_reflect: Curve,
        back_reflect: Curve,
        front_diffuse: Curve,
        back_diffuse: Curve,
        through: Curve,
    ) -> Self {
        let faces = [Face::new(front_reflect, front_diffuse), Face::new(back_reflect, back_diffuse)];
        Self { faces, through, scaled: None }
    }

    /// A fabric whose faces are alike.
    pub(super) fn even(reflect: Curve, diffuse: Curve, through: Curve) -> Self {
        let face = Face::new(reflect, diffuse);
        Self { faces: [face.clone(), face], through, scaled: None }
    }

    /// No fabric at all: everything goes straight on.
    pub fn clear() -> Self {
        let none = Curve::constant(Rgb::ZERO);
        Self::even(none.clone(), none, Curve::constant(Rgb::ONE))
    }

    /// The same fabric, hung the other way round.
    pub fn flipped(&self) -> Self {
        let [front, back] = self.faces.clone();
        Self { faces: [back, front], through: self.through.clone(), scaled: self.scaled }
    }

    /// The worst sum of reflected, scattered and straight shares over all samples, faces and channels; at most 1 for a
    /// fabric that can exist.
    pub fn energy(&self) -> f32 {
        let mut worst = 0.0_f64;
        for face in &self.faces {
            for step in 0..STEPS {
                for channel in 0..3 {
                    let parts = [&face.reflect, &face.diffuse, &self.through];
                    worst = worst.max(parts.iter().map(|curve| curve.value(step, channel)).sum());
                }
            }
        }
        worst as f32
    }
}
