//! What findings are about.

use super::{
    Case, Finding, bars,
    give_away::{day, lamplight},
    glass, leak, lens_through, overspill,
    remedy::Proposal,
    room_through, screen, unmeasured, word, wrong_way,
};
use serde::Serialize;

/// Declares the matters, each with its word and with the file that looks for it and proposes remedies.
macro_rules! matters {
    ($( $(#[$meta:meta])* $Matter:ident = $word:literal in $file:ident; )*) => {
        /// What a finding is about, the gravest first.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
        #[serde(rename_all = "snake_case")]
        pub enum Matter {
            $( $(#[$meta])* $Matter, )*
        }

        impl Matter {
            /// Every one.
            pub const ALL: &[Self] = &[$( Self::$Matter ),*];

            /// What it is called.
            pub const fn name(self) -> &'static str {
                match self {
                    $( Self::$Matter => $word, )*
                }
            }

            pub(super) fn look(self, case: &Case) -> Vec<Finding> {
                match self {
                    $( Self::$Matter => $file::look(case), )*
                }
            }

            pub(super) fn propose(self, case: &Case, finding: &Finding) -> Vec<Proposal> {
                match self {
                    $( Self::$Matter => $file::propose(case, finding), )*
                }
            }
        }
    };
}

matters! {
    /// The figure is lost or faint from a viewing spot.
    Word = "hard to see" in word;
    /// Some of the figure misses its target.
    Overspill = "beside the target" in overspill;
    /// The lens itself shows through a film or a sheet.
    LensThrough = "the lens shows through" in lens_through;
    /// What lies behind a film or a sheet shows through it.
    RoomThrough = "what is behind shows through" in room_through;
    /// Light gets out beside a film.
    Leak = "light beside a film" in leak;
    /// Glazing bars cut the figure.
    Bars = "glazing bars" in bars;
    /// An insect screen takes light.
    Screen = "insect screen" in screen;
    /// Glass throws light back to the street.
    Glass = "thrown back by glass" in glass;
    /// The picture is seen turned left for right.
    WrongWay = "the wrong way round" in wrong_way;
    /// A cloth, or a post that it hangs from, gives itself away by day.
    ShowsByDay = "shows by day" in day;
    /// A cloth, or a post that it hangs from, gives itself away by lamplight.
    ShowsByLamplight = "shows by lamplight" in lamplight;
    /// The word hangs on a value that nobody measured.
    Unmeasured = "not measured" in unmeasured;
}
