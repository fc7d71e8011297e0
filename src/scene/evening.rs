//! How dark it is.

use super::Angle;

/// What the ground is like.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GroundState {
    /// As the surfaces say.
    #[default]
    Dry,
    /// Level surfaces darkened by water.
    Wet,
    /// Level surfaces under snow.
    Snow,
}

choice! { GroundState as "state of the ground" { Dry, Wet, Snow } }

noun! {
    /// How dark it is, for now as plain numbers.
    Evening as "evening", all optional {
        /// Illuminance of open level ground by the sky alone, lx.
        sky_lx: f64 = 0.3,
        /// The moon, where it is up.
        moon: Option<Moon> = None,
        /// What the ground is like.
        ground: GroundState = GroundState::Dry,
    }
}

noun! {
    /// The moon as a direction.
    Moon as "moon" {
        /// Illuminance of open level ground by the moon alone, lx.
        lx: f64,
        /// Bearing from the street side: 0 stands over the street (z), 90 to the right (x).
        bearing_deg: Angle,
        /// Height above the horizon, at least 2.
        height_deg: Angle,
    }
}
