//! The refusal of fabrics that would give back more light than they get.

use std::fmt;

use super::Rgb;

/// Rounding that a sum of three `f32` shares is forgiven.
pub(super) const SLACK: f32 = 1e-6;

/// Why the numbers of a fabric cannot be true.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EnergyError {
    /// A share of light is not a number from 0 to 1.
    Share {
        /// Which share, in words.
        what: &'static str,
        /// The value given.
        value: f32,
    },
    /// What is thrown back, scattered through and passed straight adds up to more than what arrives.
    Sum {
        /// Reflected share of the worst channel.
        reflect: f32,
        /// Share that the worst channel scatters through.
        diffuse: f32,
        /// Share that the worst channel passes straight.
        through: f32,
    },
}

impl fmt::Display for EnergyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Share { what, value } => write!(f, "{what} is {value}, and must lie between 0 and 1"),
            Self::Sum { reflect, diffuse, through } => write!(
                f,
                "reflected {reflect} + scattered through {diffuse} + passed straight {through} is {:.3}, more than 1",
                reflect + diffuse + through
            ),
        }
    }
}

impl std::error::Error for EnergyError {}

/// Accepts a share of light from 0 to 1.
pub(super) fn share(what: &'static str, value: f32) -> Result<(), EnergyError> {
    // Written so that NaN is refused too.
    if (0.0..=1.0).contains(&value) { Ok(()) } else { Err(EnergyError::Share { what, value }) }
}

/// Accepts the shares of a fabric at one angle where each is a share and no channel adds up to more than 1.
pub(super) fn balance(reflect: Rgb, diffuse: Rgb, through: Rgb) -> Result<(), EnergyError> {
    for channel in 0..3 {
        let (reflect, diffuse, through) = (reflect[channel], diffuse[channel], through[channel]);
        share("reflected", reflect)?;
        share("scattered through", diffuse)?;
        share("passed straight", through)?;
        if reflect + diffuse + through > 1.0 + SLACK {
            return Err(EnergyError::Sum { reflect, diffuse, through });
        }
    }
    Ok(())
}
