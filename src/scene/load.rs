//! What a station draws beside its projector.

use super::Positive;

/// What a device runs on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fed {
    /// The mains, by its own cord or plug-in adapter.
    #[default]
    Mains,
    /// Twelve volts.
    TwelveVolt,
    /// Five volts of a USB outlet.
    Usb,
}

choice! { Fed as "way to be fed" { Mains, TwelveVolt, Usb } }

/// What a device is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LoadKind {
    /// Plays the pictures.
    Player,
    /// Moves air through a weather box.
    Fan,
    /// A lamp of the station's own.
    Lamp,
    /// Anything else.
    #[default]
    Other,
}

choice! { LoadKind as "kind of load" { Player, Fan, Lamp, Other } }

/// Where a device is plugged in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LoadFrom {
    /// Beside the projector, on what feeds the station.
    #[default]
    Supply,
    /// Into the USB outlet of the projector.
    ProjectorUsb,
}

choice! { LoadFrom as "place to plug in" { Supply, ProjectorUsb } }

noun! {
    /// A device of a station beside its projector.
    Load as "load" {
        /// What it is.
        kind: LoadKind = LoadKind::Other,
        /// What it draws, W.
        watts: Positive,
        /// What it runs on.
        volts: Fed = Fed::Mains,
        /// Where it is plugged in.
        from: LoadFrom = LoadFrom::Supply,
        /// What it draws while it starts, in times of what it draws later.
        inrush: Positive = Positive(1.0),
    }
}

impl LoadKind {
    /// What a person calls it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Player => "player",
            Self::Fan => "fan",
            Self::Lamp => "lamp",
            Self::Other => "other load",
        }
    }
}
