//! Yards to begin from, named as a person says them.

use crate::scene::{Catalogue, Yard};

/// A yard to begin from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Starter {
    /// A face in a window.
    Window,
    /// A figure in an open doorway.
    Doorway,
    /// A figure that floats on a net.
    HangingFigure,
    /// Two gourds on a step.
    Gourds,
    /// A figure that stands by the gate.
    GateFigure,
    /// Nothing but ground, night and somewhere to stand.
    EmptyFront,
}

impl Starter {
    /// All of them.
    pub const ALL: [Self; 6] =
        [Self::Window, Self::Doorway, Self::HangingFigure, Self::Gourds, Self::GateFigure, Self::EmptyFront];

    /// What a person calls it.
    pub fn name(self) -> &'static str {
        match self {
            Self::Window => "A window",
            Self::Doorway => "A doorway",
            Self::HangingFigure => "A hanging figure",
            Self::Gourds => "A pair of gourds",
            Self::GateFigure => "A figure by the gate",
            Self::EmptyFront => "An empty front",
        }
    }

    /// The yard.
    pub fn yard(self) -> Yard {
        read(match self {
            Self::Window => include_str!("../../assets/starters/window.ron"),
            Self::Doorway => include_str!("../../assets/starters/doorway.ron"),
            Self::HangingFigure => include_str!("../../assets/starters/hanging_figure.ron"),
            Self::Gourds => include_str!("../../assets/starters/gourds.ron"),
            Self::GateFigure => include_str!("../../assets/starters/gate_figure.ron"),
            Self::EmptyFront => include_str!("../../assets/starters/empty_front.ron"),
        })
    }
}

/// A yard that the program carries; a test reads them all.
pub(super) fn read(text: &str) -> Yard {
    Yard::parse(text, "starter", &Catalogue::builtin()).map_or_else(|_| Yard::named("empty"), |loaded| loaded.yard)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_starter_is_a_sound_yard() {
        for starter in Starter::ALL {
            assert_eq!(starter.yard().name.0, starter.name());
        }
    }
}
