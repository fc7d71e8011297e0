//! The curve by which a projector turns signal into light.

use super::Band;

/// The curve from signal to light, both from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Gamma {
    /// Light is the signal to this power.
    Power(Band),
    /// The curve of IEC 61966-2-1.
    Srgb,
}

impl Gamma {
    /// As displays are set by common practice: 2.2, 2.0 to 2.4 between picture modes; no source.
    pub const USUAL: Self = Self::Power(Band { low: 2.0, typical: 2.2, high: 2.4 });
}
