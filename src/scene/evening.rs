//! How dark it is.

use super::{Angle, Clock, When};

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
    /// How dark it is: by plain numbers, or by date and place.
    Evening as "evening", all optional {
        /// Illuminance of open level ground by the sky alone, lx; not read where there is a date.
        sky_lx: f64 = 0.3,
        /// The moon, where it is up; not read where there is a date.
        moon: Option<Moon> = None,
        /// Date, clock and place, which sky, sun and moon then follow from.
        when: Option<When> = None,
        /// What the ground is like.
        ground: GroundState = GroundState::Dry,
        /// Whether hanging cloths are soaked: they scatter less back and let more straight through.
        soaked: bool = false,
    }
}

impl Evening {
    /// What the clock shows, where there is one.
    pub fn clock(&self) -> Option<Clock> {
        self.when.as_ref().map(|when| when.clock)
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
